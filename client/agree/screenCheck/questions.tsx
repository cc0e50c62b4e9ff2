import { useState, type ReactNode } from 'react'
import { dealt, hueRow } from './patches.ts'
import type { GreyLook } from './screenFaults.ts'

interface QuestionProps<Value> {
  readonly onAnswer: (value: Value) => void
}

/** What is asked, what is looked at, and the answers to touch. */
function Question<Value>({ question, words, options, onAnswer, children }: QuestionProps<Value> & {
  readonly question: string
  readonly words: string
  readonly options: readonly (readonly [value: Value, words: string])[]
  readonly children?: ReactNode
}) {
  return (
    <section className="screen-question" aria-label={question}>
      <h3>{question}</h3>
      <p>{words}</p>
      {children}
      <div className="screen-answers">
        {options.map(([value, answer]) => (
          <button key={answer} type="button" className="screen-answer" onClick={() => onAnswer(value)}>{answer}</button>
        ))}
      </div>
    </section>
  )
}

export function SurroundQuestion({ onAnswer }: QuestionProps<boolean>) {
  return (
    <Question
      question="Is anything coloured around this screen?" onAnswer={onAnswer}
      words="A coloured wall, a lamp in the evening, a window at sunset, sunglasses: all of them shift what you see."
      options={[[true, 'Nothing coloured'], [false, 'Something is']]}
    />
  )
}

export function GreyQuestion({ onAnswer }: QuestionProps<GreyLook>) {
  return (
    <Question
      question="Is this grey?" onAnswer={onAnswer} words="Look at it for a moment, beside plain paper if there is some."
      options={[['neutral', 'Plain grey'], ['yellowish', 'Yellowish'], ['bluish', 'Bluish'], ['greenish', 'Greenish'], ['pinkish', 'Pinkish']]}
    >
      <div className="grey-patches" aria-hidden>
        {[48, 84, 160, 208].map((code) => <span key={code} style={{ background: `rgb(${code} ${code} ${code})` }} />)}
      </div>
    </Question>
  )
}

export function PaperQuestion({ onAnswer }: QuestionProps<boolean>) {
  return (
    <Question
      question="Hold plain paper beside this patch" onAnswer={onAnswer} words="In the light of your room, how bright is the patch?"
      options={[[false, 'About as bright, or brighter'], [true, 'Clearly darker than the paper']]}
    >
      <div className="paper-patch" aria-hidden />
    </Question>
  )
}

/** Patches touched in their order: who cannot tell two neighbours puts them wrong. */
export function HueQuestion({ onAnswer }: QuestionProps<readonly number[]>) {
  const [order, setOrder] = useState<readonly number[]>([])
  function touch(patch: number): void {
    if (order.includes(patch)) return setOrder(order.filter((each) => each !== patch))
    const next = [...order, patch]
    setOrder(next)
    if (next.length === hueRow.length) onAnswer(next)
  }
  return (
    <section className="screen-question" aria-label="Hues">
      <h3>Touch them from the bluest to the reddest</h3>
      <p role="status">{order.length === 0 ? 'A second touch takes one back.' : `${order.length} of ${hueRow.length}`}</p>
      <div className="hue-patches" role="group" aria-label="Patches as dealt">
        {dealt.map((patch, at) => {
          const place = order.indexOf(patch)
          return (
            <button
              key={patch} type="button" className="hue-patch" style={{ background: hueRow[patch] }} aria-pressed={place >= 0}
              aria-label={place >= 0 ? `Patch ${at + 1}, put ${place + 1}` : `Patch ${at + 1}`} onClick={() => touch(patch)}
            >
              {place >= 0 && <span className="hue-place">{place + 1}</span>}
            </button>
          )
        })}
      </div>
    </section>
  )
}
