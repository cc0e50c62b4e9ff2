import type { ReactNode } from 'react'
import './Section.css'

export interface SectionProps {
  readonly title: string
  /** One line on what is inside, readable while it is shut. */
  readonly gist?: string
  readonly open?: boolean
  readonly children: ReactNode
}

/** A part of a sheet that can be shut; its gist stays readable. */
export function Section({ title, gist, open = false, children }: SectionProps) {
  return (
    <details className="section" open={open}>
      <summary className="section-summary">
        <h3 className="section-title">{title}</h3>
        {gist !== undefined && <span className="section-gist">{gist}</span>}
      </summary>
      <div className="section-body">{children}</div>
    </details>
  )
}
