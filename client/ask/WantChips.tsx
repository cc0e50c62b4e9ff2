import { X } from 'lucide-react'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { wantSubject } from '../../shared-core/ask/parseWants.ts'
import type { Want } from '../../shared-core/ask/want.ts'
import { wantWords } from '../../shared-core/ask/wantWords.ts'

interface WantChipsProps {
  readonly plan: Plan
  readonly lookId: string
  readonly wants: readonly Want[]
  readonly onRemove: (want: Want) => void
}

/** All that is wanted together; each can be taken out by itself. */
export function WantChips({ plan, lookId, wants, onRemove }: WantChipsProps) {
  const look = plan.looks[lookId]
  if (!look || wants.length === 0) return null
  return (
    <ul className="ask-chips" aria-label="Wanted together">
      {wants.map((want) => {
        const words = wantWords(want, plan, look)
        return (
          <li key={wantSubject(want)} className="ask-chip">
            <span>{words}</span>
            <button type="button" className="ask-chip-out" aria-label={`Take out ${words}`} onClick={() => onRemove(want)}>
              <X size={14} aria-hidden />
            </button>
          </li>
        )
      })}
    </ul>
  )
}
