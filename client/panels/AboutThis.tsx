import { useState } from 'react'
import { useBoard } from '../session/useBoard.ts'
import { CautionNote } from '../snags/CautionNote.tsx'
import { cautionWords } from '../snags/cautionWords.ts'
import { SnagLine } from '../snags/SnagLine.tsx'

/** The snags about one thing. */
export function SnagsHere({ id }: { readonly id: string }) {
  const snags = useBoard((board) => board.prediction.snags)
  const here = snags.filter((snag) => snag.about.includes(id))
  if (here.length === 0) return null
  return (
    <ul className="panel-about" aria-label="Snags here">
      {here.map((snag) => (
        <li key={snag.key}>
          <SnagLine snag={snag} />
        </li>
      ))}
    </ul>
  )
}

/** Cautions this person has had before their eyes since the page was opened. */
const seen = new Set<string>()

/**
 * The usual care with one thing: open the first time the thing is in the hand, which is when it is placed; a single line
 * after that, so that care is not nagging.
 */
export function CareHere({ id }: { readonly id: string }) {
  const cautions = useBoard((board) => board.prediction.cautions)
  // What holds for every light at once is said once, under Snags.
  const here = cautions.filter(({ about }) => about.length === 1 && about.includes(id))
  const [isNew] = useState(() => here.some(({ key }) => !seen.has(key)))
  here.forEach(({ key }) => seen.add(key))
  if (here.length === 0) return null
  return (
    <details className="panel-care" open={isNew}>
      <summary>
        <span>Care</span> {[...new Set(here.map(({ kind }) => cautionWords[kind]))].join(' · ')}
      </summary>
      <ul>
        {here.map((caution) => (
          <li key={caution.key}>
            <CautionNote caution={caution} />
          </li>
        ))}
      </ul>
    </details>
  )
}
