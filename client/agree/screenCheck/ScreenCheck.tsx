import { useState } from 'react'
import type { ScreenResult } from '../../../shared-core/notes/screenCheck.ts'
import { FullPage } from '../../controls/FullPage.tsx'
import { useNotes } from '../../notes/useNotes.ts'
import { darkWedge, lightWedge } from './patches.ts'
import { GreyQuestion, HueQuestion, PaperQuestion, SurroundQuestion } from './questions.tsx'
import { faultWords, screenFaults, type GreyLook } from './screenFaults.ts'
import './ScreenCheck.css'
import { keptPhoto } from './keptPhoto.ts'
import { SwatchPhoto, type MeasuredPhoto } from './SwatchPhoto.tsx'
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
  const [measured, setMeasured] = useState<MeasuredPhoto | null>(null)
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
        {byPhoto ? <SwatchPhoto onMeasured={setMeasured} /> : (
          <>
            {at === 0 && <SurroundQuestion onAnswer={(neutralSurround) => answer({ neutralSurround })} />}
            {at === 1 && <Wedge question="Touch the faintest mark you can see in black" none="I see none" patches={darkWedge} onAnswer={(darkStepsSeen) => answer({ darkStepsSeen })} />}
            {at === 2 && <Wedge question="Touch the faintest mark you can see in white" none="I see none" patches={lightWedge} onAnswer={(lightStepsSeen) => answer({ lightStepsSeen })} />}
            {at === 3 && <GreyQuestion onAnswer={(grey) => answer({ grey })} />}
            {at === 4 && <PaperQuestion onAnswer={(tooDim) => answer({ tooDim })} />}
            {at === 5 && <HueQuestion onAnswer={(hueOrder) => answer({ hueOrder })} />}
            {at === QUESTIONS && <Result answered={answered} measured={measured} onAgain={() => setAt(0)} onClose={onClose} />}
          </>
        )}
      </div>
    </FullPage>
  )
}

interface ResultProps {
  readonly answered: Answered
  readonly measured: MeasuredPhoto | null
  readonly onAgain: () => void
  readonly onClose: () => void
}

function Result({ answered, measured, onAgain, onClose }: ResultProps) {
  const send = useNotes((notes) => notes.send)
  const seatId = useNotes((notes) => notes.seat.seatId)
  const [screenWords, setScreenWords] = useState('')
  const [state, setState] = useState<'asked' | 'keeping' | 'kept' | 'kept-without-photo'>('asked')
  const kept = state === 'kept' || state === 'kept-without-photo'
  const { neutralSurround = false, darkStepsSeen = 0, lightStepsSeen = 0, grey = 'neutral', tooDim = false, hueOrder = [] } = answered
  const faults = screenFaults({ neutralSurround, darkStepsSeen, lightStepsSeen, grey, tooDim, hueOrder: [...hueOrder] })
  async function keep(): Promise<void> {
    setState('keeping')
    const swatchPhotoHash = measured && await keptPhoto(seatId, measured.photo)
    const result: ScreenResult = {
      neutralSurround, darkStepsSeen, lightStepsSeen, hueOrder: [...hueOrder],
      nightTint: grey === 'yellowish', tooDim, swatchPhotoHash, screenWords: screenWords.trim(),
    }
    if (send({ do: 'screen-check', result }) === null) setState('asked')
    else setState(measured !== null && swatchPhotoHash === null ? 'kept-without-photo' : 'kept')
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
      {measured !== null && <p>The photographed swatch: {measured.words}</p>}
      {kept ? (
        <p role="status">Kept with this job{state === 'kept-without-photo' && ', but without the photograph: it could not be sent'}.</p>
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
          : <button type="button" className="screen-answer screen-answer-main" disabled={state === 'keeping'} onClick={() => void keep()}>Keep this result</button>}
      </div>
    </section>
  )
}
