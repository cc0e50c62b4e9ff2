import { Check, TriangleAlert, Users } from 'lucide-react'
import type { MoveKind } from '../../shared-core/stands/moves/move.ts'
import type { ScheduledMove } from '../../shared-core/stands/lookChange.ts'
import { useBoard } from '../session/useBoard.ts'
import { minutesText } from './minutesText.ts'
import { saidOf, type LookChangeNow } from './useLookChange.ts'

const KIND_WORDS: Readonly<Record<MoveKind, string>> = {
  'working-light-on': 'on', 'working-light-off': 'off', marks: 'mark', camera: 'camera', backdrop: 'backdrop', 'power-down': 'power down', undress: 'take off',
  refit: 'refit', place: 'move', power: 'power up', build: 'build', strike: 'take away', 'piece-up': 'set up', 'piece-away': 'take away', 'piece-moved': 'move',
}

/** One move: what, how long, with its care, and a large tick. */
export function MoveCard({ move, now }: { readonly move: ScheduledMove; readonly now: LookChangeNow }) {
  const mayEdit = useBoard((board) => board.mayEdit)
  const tick = now.tickOf(move.id)
  const isStale = tick !== undefined && tick.said !== saidOf(move)
  const waits = tick === undefined ? now.change.dependencies.filter(({ after, before }) => after === move.id && now.tickOf(before) === undefined) : []
  const what = `${move.name}: ${KIND_WORDS[move.kind]}`
  return (
    <li className="move" data-done={tick !== undefined && !isStale}>
      <button
        type="button" className="move-tick" role="checkbox" aria-checked={tick !== undefined} aria-label={what} aria-disabled={!mayEdit}
        onClick={() => mayEdit && now.tick(move, tick === undefined || isStale)}
      >
        {tick !== undefined && <Check size={28} aria-hidden />}
      </button>
      <div className="move-what">
        <p className="move-head">
          <span className="tape move-letter">{move.name}</span> {KIND_WORDS[move.kind]}
          <span className="move-minutes">{move.hands === 'both' && <><Users size={16} aria-hidden /> both, </>}{minutesText(move.minutes)}</span>
        </p>
        <ul className="move-words">{move.words.filter((words) => words.toLowerCase() !== KIND_WORDS[move.kind]).map((words) => <li key={words}>{words}</li>)}</ul>
        {waits.length > 0 && <p className="page-soft">First: {[...new Set(waits.map((one) => waitWords(one, now)))].join('; ')}.</p>}
        {tick === undefined && move.cautions.map((words) => <p key={words} className="page-care move-care"><TriangleAlert size={16} aria-hidden /> {words}</p>)}
        {tick !== undefined && <p className="page-soft">{isStale ? 'The plan has moved since ' : 'Done by '}{tick.by.name}{isStale ? ' did this: do it as it stands here.' : `, ${timeOf(tick.by.atMs)}`}</p>}
      </div>
    </li>
  )
}

function waitWords({ before, why, lagMinutes }: LookChangeNow['change']['dependencies'][number], { change }: LookChangeNow): string {
  const other = change.moves.find(({ id }) => id === before)
  const lag = lagMinutes > 0 ? `, and ${minutesText(lagMinutes)} to cool` : ''
  return `${other === undefined ? before : `${other.name} ${KIND_WORDS[other.kind]}`}${lag} (${why})`
}

function timeOf(atMs: number): string {
  return new Date(atMs).toLocaleTimeString([], { hour: '2-digit', minute: '2-digit' })
}
