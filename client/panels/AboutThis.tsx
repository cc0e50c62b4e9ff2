import { useBoard } from '../session/useBoard.ts'
import { CautionNote } from '../snags/CautionNote.tsx'
import { SnagLine } from '../snags/SnagLine.tsx'

/** Snags and cautions about one thing, at the moment it is in the hand. */
export function AboutThis({ id }: { readonly id: string }) {
  const snags = useBoard((board) => board.prediction.snags)
  const cautions = useBoard((board) => board.prediction.cautions)
  const snagsHere = snags.filter((snag) => snag.about.includes(id))
  const cautionsHere = cautions.filter((caution) => caution.about.includes(id))
  if (snagsHere.length + cautionsHere.length === 0) return null
  return (
    <ul className="panel-about" aria-label="What to know about this">
      {snagsHere.map((snag) => (
        <li key={snag.key}>
          <SnagLine snag={snag} />
        </li>
      ))}
      {cautionsHere.map((caution) => (
        <li key={caution.key}>
          <CautionNote caution={caution} />
        </li>
      ))}
    </ul>
  )
}
