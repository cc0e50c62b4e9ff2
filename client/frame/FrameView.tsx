import { useRef, useState } from 'react'
import type { PictureView } from '../../shared-core/picture/views.ts'
import { ThatOneButton } from '../agree/lock/ThatOneButton.tsx'
import { Choice, type Option } from '../controls/Choice.tsx'
import { PencilBar, PencilToggle } from '../notes/pencil/PencilToggle.tsx'
import { usePencil } from '../notes/pencil/pencilStore.ts'
import { useBoard } from '../session/useBoard.ts'
import { setSheet } from '../session/pageStore.ts'
import { BeforeButtons } from './before/BeforeButtons.tsx'
import './FrameView.css'
import { Print } from './Print.tsx'
import { useElementSize } from './useElementSize.ts'
import { ViewLegend } from './ViewLegend.tsx'
import { backgroundInWords } from './backgroundWords.ts'

const views = [
  { value: 'picture', label: 'Picture' },
  { value: 'stops', label: 'Stops' },
  { value: 'leaders', label: 'Who lights what', face: 'Lights' },
  { value: 'clipping', label: 'Clipping' },
] as const satisfies readonly Option<PictureView>[]

/** The predicted picture at the camera's crop, on mid-grey, with what it reads as in words under it. */
export function FrameView() {
  const prediction = useBoard((board) => board.prediction)
  const intent = useBoard((board) => board.shown.looks[board.lookId]?.backdrop.intent ?? 'free')
  const select = useBoard((board) => board.select)
  const soloLightId = useBoard((board) => board.soloLightId)
  const [allAreas, setAllAreas] = useState(false)
  const [eyesShown, setEyesShown] = useState(false)
  const view = useBoard((board) => board.frameView)
  const setView = useBoard((board) => board.lookAs)
  const pencilOn = usePencil((state) => state.isOn)
  const easel = useRef<HTMLDivElement>(null)
  const room = useElementSize(easel)

  const { framing } = prediction
  const solo = prediction.lights.find((light) => light.id === soloLightId)
  const aspect = framing.atSubjectWidthMetres / framing.atSubjectHeightMetres
  const width = room ? Math.floor(Math.min(room.widthPixels, room.heightPixels * aspect)) : 0
  const background = backgroundInWords(prediction, intent)
  const alone = solo ? `${solo.letter} alone: ${solo.summary}` : null

  /** What white would take, and what hangs there. */
  function openBackdrop(): void {
    select({ kind: 'backdrop' })
    setSheet('low')
  }

  return (
    <section className="frame" aria-label="Frame">
      <div ref={easel} className="frame-easel">
        {width > 0 && (
          <Print
            widthPixels={width}
            heightPixels={Math.floor(width / aspect)}
            view={view}
            allAreas={allAreas}
            eyesShown={eyesShown}
            description={`Predicted picture of ${prediction.lookName}. ${alone ?? background}.`}
          />
        )}
      </div>
      <footer className="frame-caption">
        {pencilOn ? <PencilBar /> : (
          <p className="frame-words" data-alone={alone !== null}>
            <button type="button" className="frame-verdict" onClick={openBackdrop}>
              {background}
            </button>
            {alone !== null && <span>{alone}</span>}
          </p>
        )}
        <PencilToggle />
        <ThatOneButton />
        <div className="frame-caption-legend"><ViewLegend view={view} /></div>
        <div className="frame-views">
          <Choice label="Look at the picture as" labelHidden value={view} options={views} onChoose={setView} />
          <button type="button" className="button frame-toggle" aria-pressed={allAreas} onClick={() => setAllAreas(!allAreas)}>
            Areas
          </button>
          <button type="button" className="button frame-toggle" aria-pressed={eyesShown} onClick={() => setEyesShown(!eyesShown)}>
            Eyes
          </button>
        </div>
        <BeforeButtons />
      </footer>
    </section>
  )
}
