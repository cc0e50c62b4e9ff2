import { ArrowRight } from 'lucide-react'
import { useState } from 'react'
import { Choice } from '../controls/Choice.tsx'
import { FullPage } from '../controls/FullPage.tsx'
import { looksInOrder } from '../session/looksInOrder.ts'
import { useBoard } from '../session/useBoard.ts'
import { ask } from '../session/pageStore.ts'
import { useAwake } from '../rig/useAwake.ts'
import { LookPick } from './LookPick.tsx'
import { MoveCard } from './MoveCard.tsx'
import { minutesText } from './minutesText.ts'
import { useLookChange, type LookChangeNow } from './useLookChange.ts'
import './moves.css'

type Person = 'first' | 'second'

/** From one look to the next: who does what in which order, then what is to be read again. */
export function LookChange({ onClose }: { readonly onClose: () => void }) {
  const plan = useBoard((board) => board.plan)
  const lookHere = useBoard((board) => board.lookId)
  const ids = looksInOrder(plan).map(([id]) => id)
  const [fromId, setFrom] = useState(lookHere)
  const [toId, setTo] = useState(() => ids[ids.indexOf(lookHere) + 1] ?? ids.find((id) => id !== lookHere) ?? lookHere)
  const now = useLookChange(fromId, toId)
  useAwake()
  const options = ids.map((id) => ({ value: id, label: plan.looks[id]!.name }))
  return (
    <FullPage onClose={onClose} title="Look change" words="The least work for two people, in an order that never leaves the talent in the dark.">
      <div className="page-column moves-page">
        <div className="moves-looks">
          <LookPick label="From" value={fromId} options={options} onChoose={setFrom} />
          <ArrowRight size={20} aria-hidden />
          <LookPick label="To" value={toId} options={options} onChoose={setTo} />
        </div>
        {now === null ? <p className="page-panel moves-card">One of the two looks is no longer in the job.</p> : <Change now={now} />}
      </div>
    </FullPage>
  )
}

function Change({ now }: { readonly now: LookChangeNow }) {
  const [mine, setMine] = useState<Person>('first')
  const { change, readings, tickOf } = now
  const { moves } = change
  const readingMinutes = readings.reduce((sum, { minutes }) => sum + minutes, 0)
  const done = moves.filter(({ id }) => tickOf(id) !== undefined).length
  if (moves.length === 0) return <p className="page-panel moves-card">Nothing has to be moved: both looks stand alike.{readings.length === 0 ? '' : ' What is to be read again stands below.'}<Readings now={now} /></p>
  return (
    <>
      <section className="page-panel moves-card moves-sum" aria-label="In all">
        <p className="moves-total"><b>{moves.length}</b> moves, <b>{minutesText(change.minutes + readingMinutes)}</b> for two</p>
        <p className="page-soft">
          {minutesText(change.minutes)} of moves{readings.length > 0 && `, ${minutesText(readingMinutes)} for ${readings.length} ${readings.length === 1 ? 'reading' : 'readings'}`}; one
          after the other {minutesText(change.serialMinutes)}. Minutes are common practice, not yours. {talentWords(now)}
        </p>
        <p className="page-soft" role="status">{done} of {moves.length} done</p>
      </section>
      <div className="page-panel moves-switch">
        <Choice label="Whose moves" labelHidden value={mine} onChoose={setMine} options={[{ value: 'first', label: 'Mine' }, { value: 'second', label: 'Theirs' }]} />
      </div>
      <div className="moves-columns" data-mine={mine}>
        {(['first', 'second'] as const).map((person) => (
          <section key={person} className="page-panel moves-column" data-person={person} aria-label={person === 'first' ? 'First person' : 'Second person'}>
            <h3>{person === 'first' ? 'First person' : 'Second person'}</h3>
            <ol>
              {moves.filter(({ hands }) => hands === person || hands === 'both').map((move) => (
                <MoveCard key={move.id} move={move} now={now} />
              ))}
            </ol>
          </section>
        ))}
      </div>
      <Readings now={now} />
      <p className="page-soft moves-defer">The cautions are the usual care. The equipment’s manual, the studio’s rules and local code come first; rigging over people is for those trained to do it.</p>
    </>
  )
}

function Readings({ now: { readings } }: { readonly now: LookChangeNow }) {
  return (
    <section className="page-panel moves-card" aria-label="Readings">
      <h3>Then read</h3>
      {readings.length === 0 ? <p>Nothing that a meter reads could have changed.</p> : (
        <ol className="moves-readings">
          {readings.map(({ lights, place, predictedStops, why }) => (
            <li key={`${lights} ${place}`}>
              <b>{lights}</b> at the {place}<span className="page-soft">{predictedStops === null ? 'nothing arrives' : `planned ${stopsText(predictedStops)}`}; {why}</span>
            </li>
          ))}
        </ol>
      )}
      <button type="button" className="button button-lined moves-book" onClick={() => ask({ kind: 'meter-book' })}>Open the meter book</button>
    </section>
  )
}

function talentWords({ change: { talentLight } }: LookChangeNow): string {
  switch (talentLight.by) {
    case 'kept': return talentLight.letters.length === 0 ? '' : `The lamp of ${talentLight.letters.join(', ')} stays on the talent throughout.`
    case 'turns': return `${talentLight.down} goes down only when ${talentLight.up} is up, so the talent keeps a lamp.`
    case 'working-light': return 'No lamp of the set can stay on the talent: the working light does.'
  }
}

function stopsText(stops: number): string {
  return `${stops < -0.05 ? '−' : stops > 0.05 ? '+' : ''}${Math.abs(stops).toFixed(1)}`
}
