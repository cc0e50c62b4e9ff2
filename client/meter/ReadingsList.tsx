import type { Learned } from '../../shared-core/meter/learn.ts'
import { whenWords } from '../notes/pencil/whenWords.ts'
import { useBoard } from '../session/useBoard.ts'
import { asRead } from './meterWords.ts'

const stateMarks = { learned: 'learned', 'held-back': 'does not fit', accepted: 'accepted', withdrawn: 'withdrawn' } as const

interface ReadingsListProps {
  readonly learned: Learned
  readonly nowMs: number
  readonly onWithdraw: (key: string) => void
}

/** All readings of the look, the newest first, with who took them and what became of them. */
export function ReadingsList({ learned, nowMs, onWithdraw }: ReadingsListProps) {
  const lookId = useBoard((board) => board.lookId)
  const mayEdit = useBoard((board) => board.mayEdit)
  const taken = learned.readings.filter(({ reading }) => reading.lookId === lookId).sort((a, b) => b.reading.by.atMs - a.reading.by.atMs)
  if (taken.length === 0) return null
  return (
    <section className="page-panel meter-card" aria-label="Readings taken">
      <h3>Readings taken</h3>
      <ul className="meter-list">
        {taken.map(({ key, reading, state }) => (
          <li key={key} className={state === 'withdrawn' ? 'meter-gone' : undefined}>
            <b>{reading.fired.map(({ letter }) => letter).join(' ')}</b>
            <span className="meter-number">{asRead(reading.fNumber)}</span>
            <span className="page-soft">
              {stateMarks[state]} · {reading.by.name}, {whenWords(reading.by.atMs, nowMs)}
            </span>
            {mayEdit && state !== 'withdrawn' && (
              <button type="button" className="button button-bare" aria-label={`Withdraw ${asRead(reading.fNumber)} of ${reading.fired.map(({ letter }) => letter).join(', ')}`} onClick={() => onWithdraw(key)}>
                Withdraw
              </button>
            )}
          </li>
        ))}
      </ul>
    </section>
  )
}
