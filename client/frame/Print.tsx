import { useCallback, useMemo, useRef, useState } from 'react'
import type { PictureView } from '../../shared-core/picture/views.ts'
import { FramePointers } from '../agree/call/FramePointers.tsx'
import { useFramePointer } from '../agree/call/useFramePointer.ts'
import { useBoard, useBoardAtOnce } from '../session/useBoard.ts'
import { FramePencil } from '../notes/pencil/FramePencil.tsx'
import { AreaMarks } from './AreaMarks.tsx'
import { colourAlone } from './colourAlone.ts'
import { EyeInset } from './eyes/EyeInset.tsx'
import { FormPicture } from './FormPicture.tsx'
import { PictureCanvas } from './picture/PictureCanvas.tsx'
import { pictureDesk } from './picture/pictureDesk.ts'
import type { PictureLetter } from './picture/pictureOrders.ts'
import { keepShownFrame } from './picture/shownFrame.ts'
import type { ShownPicture } from './picture/reading.ts'
import { ReadingCard } from './reading/ReadingCard.tsx'
import { useReading } from './reading/useReading.ts'
import { useReadingHand } from './reading/useReadingHand.ts'
import { useLeaderTints } from './useLeaderTints.ts'
import './Print.css'
import { ViewLegend } from './ViewLegend.tsx'

/** Sharp enough for the biggest print on the easel, and still quick to sum on every move of a hand. */
const WIDEST_PIXELS = 440
/** The form stands for a moment, until the worker's picture comes: the page must not be busy with it then. */
const FORM_PIXELS = 132

interface PrintProps {
  /** Of the print on the screen, in its own pixels. */
  readonly widthPixels: number
  readonly heightPixels: number
  readonly view: PictureView
  readonly allAreas: boolean
  readonly eyesShown: boolean
  readonly description: string
  /** Nothing is read off it: no areas, no numbers. */
  readonly isPlain?: boolean
}

/** The picture itself, what is read off it, the letters and the key of its view, and the eyes in a corner. */
export function Print({ widthPixels, heightPixels, view, allAreas, eyesShown, description, isPlain = false }: PrintProps) {
  const prediction = useBoard((board) => board.prediction)
  const stature = useBoard((board) => board.shown.looks[board.lookId]?.subject.heightMetres ?? 1.7)
  const finish = useBoard((board) => board.shown.looks[board.lookId]?.finish)
  const soloLightId = useBoard((board) => board.soloLightId)
  const seesBefore = useBoard((board) => board.seesBefore)
  const beforeKept = useBoard((board) => board.beforeKept)
  const beforeOf = useBoard((board) => board.beforeOfAnother?.name ?? null)
  // At once, as the picture: one drawn with another gel must not be laid before it is known that it has to fade.
  const lamps = useBoardAtOnce((board) => Object.values(board.shown.looks[board.lookId]?.lights ?? {}).map(({ on, gelIds }) => `${on} ${gelIds.join('+')}`).join())
  const [letters, setLetters] = useState<readonly PictureLetter[]>([])
  const tints = useLeaderTints()
  const frame = useRef<HTMLDivElement>(null)
  const { taken, readAt, pictureCame } = useReading()
  const hand = useReadingHand(frame, { taken, readAt })
  useFramePointer(frame)
  const onLinear = useCallback((shown: ShownPicture) => {
    pictureCame(shown)
    keepShownFrame(shown)
  }, [pictureCame])
  const onLetters = useCallback((now: readonly PictureLetter[]) => setLetters((last) => (last.length === 0 && now.length === 0 ? last : now)), [])

  const { areas, framing, taking } = prediction
  const solo = prediction.lights.find((light) => light.id === soloLightId)
  const colours = useMemo(
    () => areas.map((area) => (solo && finish ? colourAlone(area, solo.id, taking, finish) : area.colour.display)),
    [areas, solo, taking, finish],
  )
  const pixels = Math.min(WIDEST_PIXELS, Math.round(widthPixels * devicePixelRatio))
  const lit = `${soloLightId ?? ''} ${seesBefore} ${lamps}`
  const fadeKey = `${view} ${lit}`

  return (
    <div ref={frame} className="frame-print" style={{ width: widthPixels, height: heightPixels }} data-before={seesBefore} {...(isPlain ? {} : hand)}>
      <PictureCanvas
        kind="frame"
        soloLightId={soloLightId}
        widthPixels={pixels}
        heightPixels={Math.round((pixels * heightPixels) / widthPixels)}
        fadeKey={fadeKey}
        view={view}
        tints={view === 'leaders' ? tints : undefined}
        // Of the clipping view the legend says whether anything clips.
        isRead={taken !== null || view === 'clipping'}
        onLinear={onLinear}
        onLetters={onLetters}
        description={seesBefore ? `As it was before. ${description}` : description}
      >
        <FormPicture areas={areas} framing={framing} statureMetres={stature} colours={colours} widthPixels={pictureDesk() === null ? pixels : FORM_PIXELS} fadeKey={fadeKey} description={description} />
      </PictureCanvas>
      {!isPlain && <AreaMarks allShown={allAreas} onReached={(area) => readAt({ frameX: area.frameX, frameY: area.frameY, by: 'keys' })} />}
      {letters.length > 0 && (
        <ul className="picture-letters" aria-hidden>
          {letters.map(({ text, frameX, frameY }) => (
            <li key={`${text} ${frameX} ${frameY}`} className="picture-letter" style={{ left: `${frameX * 100}%`, top: `${frameY * 100}%` }}>{text}</li>
          ))}
        </ul>
      )}
      {eyesShown && <EyeInset frameWidthPixels={widthPixels} frameHeightPixels={heightPixels} fadeKey={lit} />}
      <ViewLegend view={view} />
      {seesBefore && <p className="before-word">{isPlain ? 'Before' : beforeOf !== null ? `Before, as ${beforeOf} sees it` : beforeKept ? 'Before, as kept' : 'Before your last change'}</p>}
      <FramePencil widthPixels={widthPixels} heightPixels={heightPixels} />
      <FramePointers />
      {!isPlain && <ReadingCard taken={taken} />}
    </div>
  )
}
