import type { ReactNode } from 'react'

export interface Fact {
  readonly name: string
  readonly value: ReactNode
  /** A second, quieter line. */
  readonly note?: string
}

/** Numbers the board works out: read only, set apart from what can be typed. */
export function Facts({ facts, label }: { readonly facts: readonly Fact[]; readonly label: string }) {
  return (
    <dl className="facts" aria-label={label}>
      {facts.map(({ name, value, note }) => (
        <div key={name} className="fact">
          <dt>{name}</dt>
          <dd>
            {value}
            {note !== undefined && <span className="fact-note">{note}</span>}
          </dd>
        </div>
      ))}
    </dl>
  )
}
