import type { ReactNode } from 'react'
import { FaultNet } from './FaultNet.tsx'
import './Part.css'

interface Props {
  /** "The floor" */
  readonly name: string
  readonly children: ReactNode
}

/** One part of the board behind a net of its own: a fault in it leaves the others standing. */
export function Part({ name, children }: Props) {
  return <FaultNet broken={(trouble, again) => <BrokenPart name={name} trouble={trouble} again={again} />}>{children}</FaultNet>
}

function BrokenPart({ name, trouble, again }: { readonly name: string, readonly trouble: string, readonly again: () => void }) {
  return (
    <div className="part-broken" role="alert">
      <p>{name} broke. The fault is ours; the plan is safe, and the rest of the board goes on.</p>
      <p className="part-broken-trouble">{trouble}</p>
      <div>
        <button type="button" className="button button-lined" onClick={again}>
          Draw it again
        </button>
        <button type="button" className="button" onClick={() => location.reload()}>
          Load the page again
        </button>
      </div>
    </div>
  )
}
