import { useState } from 'react'
import type { ScreenResult } from '../../../shared-core/notes/screenCheck.ts'
import { FullPage } from '../../controls/FullPage.tsx'
import { useNotes } from '../../notes/useNotes.ts'
import { darkWedge, lightWedge } from './patches.ts'
import { GreyQuestion, HueQuestion, PaperQuestion, SurroundQuestion } from './questions.tsx'
import { faultWords, screenFaults, type GreyLook } from './screenFaults.ts'
import './ScreenCheck.css'
import { SwatchPhoto } from './SwatchPhoto.tsx'
import { Wedge } from './Wedge.tsx'

interface Answered {
  readonly neutralSurround?: boolean
  readonly darkStepsSeen?: number
  readonly lightStepsSeen?: number
  readonly grey?: GreyLook
  readonly tooDim?: boolean
  readonly hueOrder?: readonly number[]
}

const QUESTIONS = 6

/** Six touches, and what this screen shows of colour is named; kept with a yes that is given on it. */
export function ScreenCheck({ onClose }: { readonly onClose: () => void }) {
  const [answered, setAnswered] = useState<Answered>({})
  const [at, setAt] = useState(0)
  const [byPhoto, setByPhoto] = useState(false)
  const answer = (more: Answered): void => {
    setAnswered({ ...answered, ...more })
    setAt(at + 1)
  }
  return (
    <FullPage
      onClose={onClose} title="Screen check"
      words={byPhoto ? 'A posted swatch, photographed beside a grey card' : at < QUESTIONS ? `${at + 1} of ${QUESTIONS}, by touch. Look as you will look at the pictures` : 'What your answers say of this screen'}
      tools={(
        <div className="screen-check-tools">
          {!byPhoto && at > 0 && <button type="button" className="button" onClick={() => setAt(at - 1)}>Back</button>}
          <button type="button" className="button button-lined" onClick={() => setByPhoto(!byPhoto)}>{byPhoto ? 'By touch' : 'By a photograph'}</button>
        </div>
      )}
    >
      <div className="screen-check">
        {byPhoto ? <SwatchPhoto /> : (
          <>
            {at === 0 && <SurroundQuestion onAnswer={(neutralSurround) => answer({ neutralSurround })} />}
            {at === 1 && <Wedge question="Touch the faintest mark you can see in black" none="I see none" patches={darkWedge} onAnswer={(darkStepsSeen) => answer({ darkStepsSeen })} />}
            {at === 2 && <Wedge question="Touch the faintest mark you can see in white" none="I see none" patches={lightWedge} onAnswer={(lightStepsSeen) => answer({ lightStepsSeen })} />}
            {at === 3 && <GreyQuestion onAnswer={(grey) => answer({ grey })} />}
            {at === 4 && <PaperQuestion onAnswer={(tooDim) => answer({ tooDim })} />}
            {at === 5 && <HueQuestion onAnswer={(hueOrder) => answer({ hueOrder })} />}
            {at === QUESTIONS && <Result answered={answered} onAgain={() => setAt(0)} onClose={onClose} />}
          </>
        )}
      </div>
    </FullPage>
  )
}

function Result({ answered, onAgain, onClose }: { readonly answered: Answered; readonly onAgain: () => void; readonly onClose: () => void }) {
  const send = useNotes((notes) => notes.send)
  const [screenWords, setScreenWords] = useState('')
  const [kept, setKept] = useState(false)
  const { neutralSurround = false, darkStepsSeen = 0, lightStepsSeen = 0, grey = 'neutral', tooDim = false, hueOrder = [] } = answered
  const faults = screenFaults({ neutralSurround, darkStepsSeen, lightStepsSeen, grey, tooDim, hueOrder: [...hueOrder] })
  function keep(): void {
    const result: ScreenResult = {
      neutralSurround, darkStepsSeen, lightStepsSeen, hueOrder: [...hueOrder],
      nightTint: grey === 'yellowish', tooDim, swatchPhotoHash: null, screenWords: screenWords.trim(),
    }
    setKept(send({ do: 'screen-check', result }) !== null)
  }
  return (
    <section className="screen-question" aria-label="Result">
      <div role="status"><h3>{faultWords(faults)}</h3></div>
      {faults.length > 0 && (
        <ul className="screen-faults">
          {faults.map(({ key, words, remedy }) => <li key={key}><strong>{words}.</strong> {remedy}</li>)}
        </ul>
      )}
      <p>{darkStepsSeen} of {darkWedge.length} dark steps and {lightStepsSeen} of {lightWedge.length} light ones told apart. Your own word; nothing was measured.</p>
      {kept ? (
        <p role="status">Kept with this job, and with the next yes that you give on this screen.</p>
      ) : (
        <label className="screen-words">
          <span>What screen is it? (a phone, the studio monitor)</span>
          <input value={screenWords} maxLength={120} onChange={({ target }) => setScreenWords(target.value)} />
        </label>
      )}
      <div className="screen-answers">
        <button type="button" className="screen-answer" onClick={onAgain}>Check again</button>
        {kept
          ? <button type="button" className="screen-answer" onClick={onClose}>Done</button>
          : <button type="button" className="screen-answer screen-answer-main" onClick={keep}>Keep this result</button>}
      </div>
    </section>
  )
}
