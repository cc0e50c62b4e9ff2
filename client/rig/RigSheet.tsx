import { Check, ChevronLeft, ChevronRight } from 'lucide-react'
import { useEffect, useMemo, useRef } from 'react'
import { MARKS_ID } from '../../shared-core/stands/builtAs.ts'
import { sinceTick } from '../../shared-core/stands/sinceTick.ts'
import { standsOf, type Stand } from '../../shared-core/stands/stand.ts'
import { tickKey, type Tick } from '../../shared-core/rig/ticks.ts'
import { FullPage } from '../controls/FullPage.tsx'
import { useBoard } from '../session/useBoard.ts'
import { LightCard } from './LightCard.tsx'
import { MarksCard } from './MarksCard.tsx'
import { PieceCard } from './PieceCard.tsx'
import { RigWarnings } from './RigWarnings.tsx'
import { useStandHere } from './standHere.ts'
import { useAwake } from './useAwake.ts'
import { useRig } from './useRig.ts'
import { useTickStand } from './useTicks.ts'
import './rig.css'

interface Entry {
  readonly id: string
  readonly name: string
  readonly words: string
  readonly stand: Stand | null
}

/** One stand at a time, for one hand in the dark: where it goes, what is on it, and a big button when it stands. */
export function RigSheet({ onClose }: { readonly onClose: () => void }) {
  const plan = useBoard((board) => board.plan)
  const lookId = useBoard((board) => board.lookId)
  const prediction = useBoard((board) => board.prediction)
  const entries = useMemo(
    () => (prediction.lookId === lookId && plan.looks[lookId] !== undefined ? entriesOf(standsOf(plan, lookId, prediction)) : []),
    [plan, lookId, prediction],
  )
  const ticks = useRig(({ rig }) => rig.ticks)
  const [at, goTo] = useStandHere(lookId, entries.map(({ id }) => id))
  const tickStand = useTickStand()
  const mayEdit = useBoard((board) => board.mayEdit)
  const card = useRef<HTMLDivElement>(null)
  useAwake()
  const entry = entries[at]
  const entryId = entry?.id
  useEffect(() => card.current?.scrollTo(0, 0), [entryId])
  if (entry === undefined) return null
  const tickOf = (id: string): Tick | undefined => ticks[tickKey(lookId, id)]
  const tick = tickOf(entry.id)
  const doneCount = entries.filter(({ id }) => tickOf(id) !== undefined).length

  function done(): void {
    tickStand(lookId, entry!.id, true)
    // On to the next that is not built, once round.
    const next = [...entries.keys()].map((i) => (at + 1 + i) % entries.length).find((i) => i !== at && tickOf(entries[i]!.id) === undefined)
    if (next !== undefined) goTo(next)
  }

  return (
    <FullPage onClose={onClose} title="Rig sheet" words={`${doneCount} of ${entries.length} done`}>
      <div className="rig">
        <RigWarnings />
        <ol className="rig-stands" aria-label="Stands">
          {entries.map(({ id, name }, i) => (
            <li key={id}>
              <button type="button" className="rig-stand-tab" aria-current={i === at ? 'step' : undefined} data-done={tickOf(id) !== undefined} onClick={() => goTo(i)}>
                {tickOf(id) !== undefined && <Check size={14} aria-hidden />}
                <span className="heard">{tickOf(id) !== undefined ? 'Done: ' : 'To build: '}</span>{name}
              </button>
            </li>
          ))}
        </ol>
        {/* eslint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- it scrolls, and has to by keys, too */}
        <div className="rig-scroll" ref={card} tabIndex={0} role="group" aria-label={entry.name}>
          <div className="rig-head">
            <span className="rig-letter tape">{entry.name}</span>
            <span className="rig-head-words">{entry.words}</span>
          </div>
          {tick !== undefined && <Ticked tick={tick} />}
          {entry.stand === null ? <MarksCard /> : entry.stand.kind === 'light' ? <LightCard stand={entry.stand} /> : <PieceCard stand={entry.stand} />}
        </div>
        <nav className="rig-bar" aria-label="Stand by stand">
          <button type="button" className="button button-lined rig-step-button" aria-label="The stand before" aria-disabled={at === 0} onClick={() => at > 0 && goTo(at - 1)}>
            <ChevronLeft size={28} aria-hidden />
          </button>
          {tick === undefined
            ? <button type="button" className="button button-main rig-done" aria-disabled={!mayEdit} onClick={() => mayEdit && done()}>{entry.name} done</button>
            : <StandDone tick={tick} mayEdit={mayEdit} onAgain={() => tickStand(lookId, entry.id, true)} onBack={() => tickStand(lookId, entry.id, false)} />}
          <button type="button" className="button button-lined rig-step-button" aria-label="The next stand" aria-disabled={at === entries.length - 1} onClick={() => at < entries.length - 1 && goTo(at + 1)}>
            <ChevronRight size={28} aria-hidden />
          </button>
        </nav>
      </div>
    </FullPage>
  )
}

/** After its tick: one button, which is what there is to do. */
function StandDone({ tick, mayEdit, onAgain, onBack }: {
  readonly tick: Tick; readonly mayEdit: boolean; readonly onAgain: () => void; readonly onBack: () => void
}) {
  const since = useSince(tick)
  const isMoved = since.length > 0
  return (
    <button type="button" className={`button rig-done ${isMoved ? 'button-main' : 'button-lined'}`} aria-disabled={!mayEdit} onClick={() => mayEdit && (isMoved ? onAgain() : onBack())}>
      {isMoved ? 'Done as it is now' : 'Not done after all'}
    </button>
  )
}

/** Who built it, and what the plan wants otherwise since. */
function Ticked({ tick }: { readonly tick: Tick }) {
  const since = useSince(tick)
  const by = `${tick.by.name}, ${timeOf(tick.by.atMs)}`
  if (since.length === 0) return <p className="rig-ticked"><Check size={16} aria-hidden /> Done by {by}</p>
  return (
    <section className="rig-since" aria-label="Changed since it was built">
      <h3>The plan moved since this was done</h3>
      <ul>{since.map((words) => <li key={words}>{words}</li>)}</ul>
      <p className="rig-words">Done by {by}.</p>
    </section>
  )
}

function useSince(tick: Tick): readonly string[] {
  const plan = useBoard((board) => board.plan)
  const look = useBoard((board) => board.plan.looks[board.lookId])
  const units = useBoard((board) => board.units)
  return useMemo(() => (look === undefined ? [] : sinceTick(tick, plan, look, units)), [tick, plan, look, units])
}

function entriesOf(stands: readonly Stand[]): readonly Entry[] {
  return [
    { id: MARKS_ID, name: 'Marks', words: 'T, camera and paper', stand: null },
    ...stands.map((stand): Entry => ({
      id: stand.id, name: stand.name, stand,
      words: stand.kind === 'light' ? `${stand.light.plane.replace('-', ' ')} · ${stand.modifier?.name ?? 'bare head'}` : stand.piece.kind.replace('v-flat', 'V-flat'),
    })),
  ]
}

function timeOf(atMs: number): string {
  return new Date(atMs).toLocaleTimeString([], { hour: '2-digit', minute: '2-digit' })
}
