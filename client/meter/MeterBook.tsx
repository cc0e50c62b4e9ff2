import { useEffect, useState } from 'react'
import { exactFNumber } from '../../shared-core/exposure/aperture.ts'
import { FullPage } from '../controls/FullPage.tsx'
import { useRig } from '../rig/useRig.ts'
import { useBoard } from '../session/useBoard.ts'
import { AnswerCard } from './AnswerCard.tsx'
import { LearnedList } from './LearnedList.tsx'
import { firesWords, stateWords } from './meterWords.ts'
import { QuestionCard } from './QuestionCard.tsx'
import { ReadingEntry } from './ReadingEntry.tsx'
import { ReadingsList } from './ReadingsList.tsx'
import { useMeterBook } from './useMeterBook.ts'
import './meter.css'

interface Answered {
  readonly key: string
  readonly plannedFNumber: number
}

/** One reading at a time in the best order, what each says at once, and what all of them taught. */
export function MeterBook({ onClose }: { readonly onClose: () => void }) {
  const book = useMeterBook()
  const lookName = useBoard(({ plan, lookId }) => plan.looks[lookId]?.name ?? '')
  const takenAt = useBoard(({ plan, lookId }) => plan.looks[lookId]?.camera.fNumber ?? 8)
  const mayEdit = useBoard((board) => board.mayEdit)
  const isHere = useRig((rig) => rig.isHere)
  const [pickedId, setPicked] = useState<string | null>(null)
  const [answered, setAnswered] = useState<Answered | null>(null)
  const nowMs = useMinutes()
  const open = book.questions.filter(({ state }) => state === 'ask' || state === 'again')
  const asked = book.questions.find(({ id }) => id === pickedId) ?? open[0] ?? null
  const judged = answered && book.learned.readings.find(({ key }) => key === answered.key)

  function pick(id: string): void {
    setPicked(id)
    setAnswered(null)
  }

  return (
    <FullPage onClose={onClose} title={`Meter book · ${lookName}`} words={isHere ? `${open.length} to read` : 'Fetching what was read'}>
      <div className="page-column meter-page">
        <div className="meter-now">
          {judged ? (
            <AnswerCard
              judged={judged} plannedFNumber={answered.plannedFNumber} learned={book.learned}
              onAccept={() => book.accept(answered.key)}
              onWithdraw={() => {
                book.withdraw(answered.key)
                setAnswered(null)
              }}
              next={asked === null ? 'All is read' : `Next: ${firesWords(asked)}`} onNext={() => setAnswered(null)}
            />
          ) : <section className="page-panel meter-card" aria-label="Reading to take">
            {asked === null ? <p className="meter-done">All is read or sure enough. Nothing to take.</p> : (
              <>
                <QuestionCard question={asked} />
                {mayEdit && (
                  <ReadingEntry
                    key={asked.id} takenAtFNumber={exactFNumber(takenAt)}
                    onRead={(fNumber, said) => {
                      setAnswered({ key: book.take(asked, fNumber, said), plannedFNumber: asked.plannedFNumber })
                      setPicked(null)
                    }}
                  />
                )}
              </>
            )}
          </section>}
        </div>
        <div className="meter-kept">
          <section className="page-panel meter-card" aria-label="All readings of the look">
            <h3>In this order</h3>
            <ol className="meter-order">
              {book.questions.map((question) => (
                <li key={question.id}>
                  <button type="button" className="button" aria-current={question.id === asked?.id ? 'step' : undefined} onClick={() => pick(question.id)}>
                    <b>{firesWords(question)}</b>
                    <span className="page-soft">{question.areaLabel} · {stateWords[question.state]}</span>
                  </button>
                </li>
              ))}
            </ol>
          </section>
          <ReadingsList learned={book.learned} nowMs={nowMs} onWithdraw={book.withdraw} />
          <LearnedList learned={book.learned} />
        </div>
      </div>
    </FullPage>
  )
}

const MINUTE_MS = 60_000

/** The time, renewed each minute: enough for "4 min ago". */
function useMinutes(): number {
  const [nowMs, setNow] = useState(() => Date.now())
  useEffect(() => {
    const timer = setInterval(() => setNow(Date.now()), MINUTE_MS)
    return () => clearInterval(timer)
  }, [])
  return nowMs
}
