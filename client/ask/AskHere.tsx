import { useEffect, useId, useState, type KeyboardEvent } from 'react'
import { parseWants } from '../../shared-core/ask/parseWants.ts'
import type { Look } from '../../shared-core/plan/schema/look.ts'
import { useBoard, useBoardStore } from '../session/useBoard.ts'
import { askDesk } from './pageDesk.ts'
import type { AnswerFound, WayFound } from './askOrders.ts'
import './AskHere.css'

const SLOT = 'ask-panel'

/** An answer stands for the look it was found for, and for no other. */
interface Answered {
  readonly look: Look | undefined
  readonly found: AnswerFound
}

/** What is wanted, typed in a line, and up to three ways to it: each can be looked at, and one applied. */
export function AskHere({ firstWords }: { readonly firstWords: string }) {
  const store = useBoardStore()
  const mayEdit = useBoard((board) => board.mayEdit)
  const fieldId = useId()
  const [text, setText] = useState(firstWords)
  const [share, setShare] = useState<number | null>(null)
  const [answered, setAnswered] = useState<Answered | null>(null)
  const [trouble, setTrouble] = useState('')
  const [seen, setSeen] = useState<WayFound | null>(null)
  const present = useBoard(({ plan, lookId }) => plan.looks[lookId])
  const isPast = answered !== null && answered.look !== present
  const answer = isPast ? null : answered?.found

  useEffect(() => {
    if (isPast) store.getState().hold(null)
  }, [store, isPast])

  useEffect(() => () => {
    askDesk().cancel(SLOT)
    store.getState().hold(null)
  }, [store])

  function look(way: WayFound | null): void {
    setSeen(way)
    store.getState().hold(way?.edit ?? null)
  }

  function find(): void {
    const { plan, lookId } = store.getState()
    const read = parseWants(text, plan, plan.looks[lookId]!)
    look(null)
    setAnswered(null)
    setTrouble(read.ok ? '' : read.message)
    if (!read.ok) return
    setShare(0)
    askDesk().order<'ask'>({ slot: SLOT, kind: 'ask', plan, lookId, wants: read.wants, isPowersOnly: false }, {
      progress: setShare,
      answered: (found) => {
        setShare(null)
        setAnswered({ look: plan.looks[lookId], found })
      },
      failed: (words) => {
        setShare(null)
        setTrouble(words)
      },
    })
  }

  function apply(way: WayFound): void {
    setSeen(null)
    setAnswered(null)
    store.getState().hold(null)
    store.getState().edit(way.edit)
  }

  /** Escape first lets go of what is only looked at; then it means the sheet. */
  function onKeyDown(event: KeyboardEvent): void {
    if (event.key !== 'Escape' || seen === null) return
    event.stopPropagation()
    look(null)
  }

  return (
    <form className="ask" onSubmit={(event) => { event.preventDefault(); find() }}>
      <label htmlFor={fieldId}>Ask for</label>
      <div className="ask-line">
        <input id={fieldId} className="number-field-input" value={text} maxLength={600} onChange={(event) => setText(event.currentTarget.value)} />
        {share === null
          ? <button type="submit" className="button button-lined">Ask</button>
          : <button type="button" className="button button-lined" onClick={() => askDesk().stop(SLOT)}>Stop ({Math.round(share * 100)} %)</button>}
      </div>
      <p role="status" className="ask-words">
        {trouble || (isPast ? 'The look has changed since: ask again.' : [answer?.limit, ...(answer?.furtherLimits ?? [])].flatMap((limit) => limit?.words ?? []).join('; '))}
      </p>
      <ol>
        {answer?.ways.map((way) => (
          <li key={way.by} className="ask-way">
            <h3>{way.title}</h3>
            <p className="ask-words">{way.outcomes.map(({ words, isMet }) => `${isMet ? 'Met' : 'Missed'}: ${words}`).join('; ')}</p>
            {[...way.moves, ...way.costs].map((words) => <p key={words} className="ask-words">{words}</p>)}
            {mayEdit && (
              <>
                <button type="button" className="button button-lined" aria-pressed={seen === way} onKeyDown={onKeyDown} onClick={() => look(seen === way ? null : way)}>Look at it</button>
                <button type="button" className="button" onClick={() => apply(way)}>Apply</button>
              </>
            )}
          </li>
        ))}
      </ol>
    </form>
  )
}
