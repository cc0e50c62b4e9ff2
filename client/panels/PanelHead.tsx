import type { ReactNode } from 'react'
import { useBoard } from '../session/useBoard.ts'

interface PanelHeadProps {
  /** Letter on tape, for lights. */
  readonly letter?: string
  readonly title: string
  /** One quiet line under the title. */
  readonly gist?: string
  readonly children?: ReactNode
}

/** What the sheet is about, what can be done with it as a whole, and why nothing can when that is so. */
export function PanelHead({ letter, title, gist, children }: PanelHeadProps) {
  const because = useBoard((board) => (board.mayEdit ? null : board.mayNotBecause))
  return (
    <header className="panel-head">
      <h2 className="panel-title">
        {letter !== undefined && <span className="tape panel-letter">{letter}</span>}
        {title}
      </h2>
      {gist !== undefined && <p className="panel-gist">{gist}</p>}
      {because !== null && <p className="panel-locked">{because}. You can read everything here.</p>}
      {children !== undefined && because === null && <div className="panel-work">{children}</div>}
    </header>
  )
}
