import type { MarkedPatch } from './patches.ts'

interface WedgeProps {
  readonly question: string
  readonly none: string
  readonly patches: readonly MarkedPatch[]
  /** How many steps are told apart. */
  readonly onAnswer: (steps: number) => void
}

/** Marks that grow fainter; the faintest seen is touched. */
export function Wedge({ question, none, patches, onAnswer }: WedgeProps) {
  return (
    <section className="screen-question" aria-label={question}>
      <h3>{question}</h3>
      <p>They grow fainter to the right and downwards. Do not look for long.</p>
      <div className="wedge" role="group" aria-label="Marks, the plainest first">
        {patches.map(({ ground, mark, steps }) => (
          <button key={steps} type="button" className="wedge-patch" style={{ background: ground }} aria-label={`Mark ${steps}`} onClick={() => onAnswer(steps)}>
            <span className="wedge-mark" style={{ background: mark }} />
          </button>
        ))}
      </div>
      <div className="screen-answers">
        <button type="button" className="screen-answer" onClick={() => onAnswer(0)}>{none}</button>
      </div>
    </section>
  )
}
