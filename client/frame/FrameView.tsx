import { useCallback, useMemo, useRef, useState, type PointerEvent, type ReactNode } from 'react'
import type { PictureView } from '../../shared-core/picture/views.ts'
import { Choice } from '../controls/Choice.tsx'
import { useBoard, useBoardStore } from '../session/useBoard.ts'
import { AreaMarks } from './AreaMarks.tsx'
import { colourAlone } from './colourAlone.ts'
import { FormPicture } from './FormPicture.tsx'
import './FrameView.css'
import { PictureCanvas } from './picture/PictureCanvas.tsx'
import { readingAt, type LinearPicture, type Reading } from './picture/reading.ts'
import { ReadingLine } from './ReadingLine.tsx'
import { ClippingLegend, StopsLegend } from './StopsLegend.tsx'
import { useElementSize } from './useElementSize.ts'
import { backgroundInWords } from './verdictWords.ts'

/** Sharp enough for the biggest print on the easel, and still quick to sum on every move of a hand. */
const WIDEST_PIXELS = 440

const views = [
  { value: 'picture', label: 'Picture' },
  { value: 'stops', label: 'Stops' },
  { value: 'clipping', label: 'Clipping' },
] as const satisfies readonly { value: PictureView; label: string }[]

/** The predicted picture at the camera's crop, on mid-grey, with what it reads as in words under it. */
export function FrameView() {
  const prediction = useBoard((board) => board.prediction)
  const intent = useBoard((board) => board.shown.looks[board.lookId]?.backdrop.intent ?? 'free')
  const soloLightId = useBoard((board) => board.soloLightId)
  const [allAreas, setAllAreas] = useState(false)
  const [view, setView] = useState<PictureView>('picture')
  const easel = useRef<HTMLDivElement>(null)
  const room = useElementSize(easel)

  const { framing } = prediction
  const solo = prediction.lights.find((light) => light.id === soloLightId)
  const aspect = framing.atSubjectWidthMetres / framing.atSubjectHeightMetres
  const width = room ? Math.floor(Math.min(room.widthPixels, room.heightPixels * aspect)) : 0
  const verdict = solo ? `${solo.letter} alone: ${solo.summary}` : backgroundInWords(prediction, intent)

  return (
    <section className="frame" aria-label="Frame">
      <div ref={easel} className="frame-easel">
        {width > 0 && (
          <Print widthPixels={width} heightPixels={Math.floor(width / aspect)} view={view} description={`Predicted picture of ${prediction.lookName}. ${verdict}.`}>
            <AreaMarks allShown={allAreas} />
          </Print>
        )}
      </div>
      <footer className="frame-caption">
        <p className="frame-words">{verdict}</p>
        <div className="frame-views">
          <Choice label="Look at the picture as" labelHidden value={view} options={views} onChoose={setView} />
          <button type="button" className="button frame-toggle" aria-pressed={allAreas} onClick={() => setAllAreas(!allAreas)}>
            Areas
          </button>
        </div>
      </footer>
    </section>
  )
}

interface PrintProps {
  /** Of the print on the screen, in its own pixels. */
  readonly widthPixels: number
  readonly heightPixels: number
  readonly view: PictureView
  readonly description: string
  readonly children: ReactNode
}

/** The picture itself, what a pointer reads off it, and the key of the view. */
function Print({ widthPixels, heightPixels, view, description, children }: PrintProps) {
  const store = useBoardStore()
  const prediction = useBoard((board) => board.prediction)
  const stature = useBoard((board) => board.shown.looks[board.lookId]?.subject.heightMetres ?? 1.7)
  const finish = useBoard((board) => board.shown.looks[board.lookId]?.finish)
  const soloLightId = useBoard((board) => board.soloLightId)
  const linear = useRef<LinearPicture | null>(null)
  const [reading, setReading] = useState<Reading | null>(null)
  const keepLinear = useCallback((next: LinearPicture) => { linear.current = next }, [])

  const { areas, framing, taking } = prediction
  const solo = prediction.lights.find((light) => light.id === soloLightId)
  const colours = useMemo(
    () => areas.map((area) => (solo && finish ? colourAlone(area, solo.id, taking, finish) : area.colour.display)),
    [areas, solo, taking, finish],
  )
  const pixels = Math.min(WIDEST_PIXELS, Math.round(widthPixels * devicePixelRatio))
  const fadeKey = `${soloLightId ?? ''} ${view} ${prediction.lights.map(({ on, gel }) => `${on} ${gel.name}`).join()}`

  function read(event: PointerEvent<HTMLDivElement>): void {
    const { plan, lookId } = store.getState()
    const look = plan.looks[lookId]
    const box = event.currentTarget.getBoundingClientRect()
    if (linear.current === null || look === undefined) return
    setReading(readingAt(linear.current, (event.clientX - box.x) / box.width, (event.clientY - box.y) / box.height, look.camera, look.finish))
  }

  return (
    <div className="frame-print" style={{ width: widthPixels, height: heightPixels }} onPointerMove={read} onPointerLeave={() => setReading(null)}>
      <PictureCanvas
        kind="frame"
        soloLightId={soloLightId}
        widthPixels={pixels}
        heightPixels={Math.round((pixels * heightPixels) / widthPixels)}
        fadeKey={fadeKey}
        view={view}
        onLinear={keepLinear}
        description={description}
      >
        <FormPicture areas={areas} framing={framing} statureMetres={stature} colours={colours} widthPixels={pixels} fadeKey={fadeKey} description={description} />
      </PictureCanvas>
      {children}
      {view === 'stops' && <StopsLegend />}
      {view === 'clipping' && <ClippingLegend />}
      {view !== 'clipping' && <ReadingLine reading={reading} />}
    </div>
  )
}
