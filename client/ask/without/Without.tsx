import { useEffect, useRef, useState } from 'react'
import { NumberField } from '../../controls/NumberField.tsx'
import { lengthIn } from '../../panels/quantities.ts'
import type { Units } from '../../session/board.ts'
import { useBoard } from '../../session/useBoard.ts'
import '../answers.css'
import { ceilingAt, insteadOf, lackChoices, usualWidths, wallsApart, type LackChoice, type WithoutWhat } from './lackChoices.ts'
import { LooksLeft } from './LooksLeft.tsx'
import { useLooksLeft, type LooksLeftQuestion } from './useLooksLeft.ts'
import './without.css'

/** Nobody lights a person in less. */
const LEAST_ROOM_METRES = 0.5

/** What is missing, picked from what the look burns and carries; then the best look that is left, to look at and apply. */
export function Without({ what }: { readonly what: WithoutWhat }) {
  const plan = useBoard((board) => board.plan)
  const lookId = useBoard((board) => board.lookId)
  const question = useLooksLeft()
  const { asked, isPast } = question
  const answer = useRef<HTMLDivElement>(null)
  // Below a long list of what may be missing, an answer nobody sees would be none.
  useEffect(() => answer.current?.scrollIntoView({ block: 'nearest' }), [asked?.choice, asked?.found])
  const groups = lackChoices(plan, lookId, what)
  const lack = asked?.choice.lack
  const modifierId = what.kind === 'modifier' ? what.id : lack?.kind === 'modifier' ? lack.modifierId : null
  return (
    <section className="without" aria-label="Do without" data-wide={what.kind === 'anything'}>
      <div className="without-missing">
        {groups.map(({ title, choices }) => (
          <div key={title} className="without-group" role="group" aria-label={title || 'What is missing'}>
            {title !== '' && <h3 className="answer-title">{title}</h3>}
            <div className="without-choices">
              {choices.map((choice) => <Pick key={choice.words} choice={choice} question={question} />)}
            </div>
          </div>
        ))}
        {modifierId !== null && <Instead key={modifierId} modifierId={modifierId} question={question} />}
        {(what.kind === 'room' || what.kind === 'anything') && <OtherRoom question={question} />}
        {groups.length === 0 && what.kind !== 'room' && <p className="answer-words">This look does not burn it: nothing would change.</p>}
      </div>
      {asked && (
        <div ref={answer} className="without-answer">
          {asked.share !== null && (
            <p className="without-progress" role="status">
              <span className="answer-words">{asked.choice.words}: trying what is left, {Math.round(asked.share * 100)} %</span>
              <button type="button" className="button button-lined" onClick={question.stop}>Stop</button>
            </p>
          )}
          {asked.trouble !== '' && <p className="answer-words" role="status">{asked.trouble}</p>}
          {isPast && (
            <p className="answer-words" role="status">The look has changed since. <button type="button" className="button button-lined" onClick={() => question.ask(asked.choice)}>Ask again</button></p>
          )}
          {!isPast && asked.found && <LooksLeft found={asked.found} isCutShort={asked.isCutShort} onApplied={question.forget} />}
        </div>
      )}
    </section>
  )
}

function Pick({ choice, question }: { readonly choice: LackChoice; readonly question: LooksLeftQuestion }) {
  return (
    <button
      type="button"
      className="button button-lined"
      aria-pressed={question.asked?.choice.words === choice.words}
      aria-label={choice.words}
      onClick={() => question.ask(choice)}
    >
      {choice.face ?? choice.words}
    </button>
  )
}

/** What there is in place of a modifier that is missing: one of its kind in another size. */
function Instead({ modifierId, question }: { readonly modifierId: string; readonly question: LooksLeftQuestion }) {
  const plan = useBoard((board) => board.plan)
  const units = useBoard((board) => board.units)
  const modifier = plan.modifiers[modifierId]
  const [width, setWidth] = useState(modifier?.widthMetres ?? 1)
  if (!modifier) return null
  const ask = (widthMetres: number): void => {
    const choice = insteadOf(plan, modifierId, widthMetres, units)
    if (choice) question.ask(choice)
  }
  return (
    <div className="without-group" role="group" aria-label="There is only another size">
      <h3 className="answer-title">There is only another size</h3>
      <div className="without-choices">
        {usualWidths(modifier).map((each) => {
          const choice = insteadOf(plan, modifierId, each, units)
          return choice && <Pick key={each} choice={choice} question={question} />
        })}
        <NumberField
          label="Across"
          className="without-number"
          value={width}
          {...lengthIn(units)}
          onDone={(metres) => {
            if (metres <= 0) return
            setWidth(metres)
            ask(metres)
          }}
        />
      </div>
    </div>
  )
}

/** Another room, by the measures that stand in a light's way. */
function OtherRoom({ question }: { readonly question: LooksLeftQuestion }) {
  const { heightMetres, widthMetres } = useBoard((board) => board.plan.room)
  return (
    <div className="without-group" role="group" aria-label="Another room">
      <h3 className="answer-title">Another room</h3>
      <div className="without-choices">
        <Measure label="Ceiling at" now={heightMetres} choiceAt={ceilingAt} question={question} />
        <Measure label="Walls apart" now={widthMetres} choiceAt={wallsApart} question={question} />
      </div>
    </div>
  )
}

interface MeasureProps {
  readonly label: string
  /** In metres, in this room. */
  readonly now: number
  readonly choiceAt: (metres: number, units: Units) => LackChoice
  readonly question: LooksLeftQuestion
}

/** A length that asks as soon as it is typed or stepped to. */
function Measure({ label, now, choiceAt, question }: MeasureProps) {
  const units = useBoard((board) => board.units)
  const [value, setValue] = useState(now)
  return (
    <NumberField
      label={label}
      className="without-number"
      value={value}
      {...lengthIn(units)}
      onDone={(metres) => {
        if (metres < LEAST_ROOM_METRES) return
        setValue(metres)
        question.ask(choiceAt(metres, units))
      }}
    />
  )
}
