import { pictureDesk } from '../../frame/picture/pictureDesk.ts'
import { shownFrame } from '../../frame/picture/shownFrame.ts'
import type { Pin } from '../../../shared-core/notes/pin.ts'
import { useBoard, useBoardStore } from '../../session/useBoard.ts'
import { useNotesStore } from '../useNotes.ts'
import { nearestAreaId, restOfVector, type FramePlace } from './framePlace.ts'
import { FrameMarks } from './FrameMarks.tsx'
import { beginNote, usePencil } from './pencilStore.ts'
import { PencilSurface, type PressedAt } from './PencilSurface.tsx'
import { placeColour } from './placeColour.ts'
import { Strokes } from './Strokes.tsx'
import { toneOf } from './tones.ts'
import { useFrameMarks } from './useFrameMarks.ts'

/** Of the Frame's height: a grease pencil on a small print. */
const STROKE_WIDTH_SHARE = 0.007
/** An area within this share of the Frame is what the cross is on. */
const NEAR_SHARE = 0.05
let pressCount = 0

/** What was pinned and drawn on the Frame, and the pencil itself while it is on. */
export function FramePencil({ widthPixels, heightPixels }: { readonly widthPixels: number; readonly heightPixels: number }) {
  const isOn = usePencil((state) => state.isOn)
  const areas = useBoard((board) => board.prediction.areas)
  const board = useBoardStore()
  const notes = useNotesStore()
  const { marks, strokes } = useFrameMarks()
  const tone = toneOf(notes.getState().seat.seatId)

  /** What lies there is the worker's to say; without one the note hangs on the place in the Frame. */
  function ask(points: readonly FramePlace[], told: (found: readonly (readonly [number, number, number] | null)[]) => void): void {
    const { shown, lookId } = board.getState()
    const desk = pictureDesk()
    const nothing = points.map(() => null)
    if (desk === null) return told(nothing)
    pressCount += 1
    desk.askPlaces(
      { slot: `pencil ${pressCount}`, kind: 'places', plan: shown, lookId, under: points.map(({ frameX, frameY }) => [frameX, frameY]), places: [] },
      (found) => told(found?.under ?? nothing),
    )
  }

  function press(place: FramePlace, at: PressedAt): void {
    const { lookId, shown } = board.getState()
    const picture = shownFrame()
    const look = shown.looks[lookId]
    const colour = picture?.isFull === true && look && picture.lookId === lookId ? placeColour(picture, place, look.camera, look.finish) : null
    ask([place], ([rest]) => {
      const pin: Pin = rest
        ? { on: 'subject', place: restOfVector(rest), areaId: nearestAreaId(rest) }
        : { on: 'frame', xShare: place.frameX, yShare: place.frameY }
      beginNote({ lookId, pin, colour, ...at })
    })
  }

  function draw(points: readonly FramePlace[]): void {
    const { lookId } = board.getState()
    ask(points, (found) => {
      const places = found.flatMap((rest) => (rest === null ? [] : [restOfVector(rest)]))
      notes.getState().send({
        do: 'stroke.add', lookId, colour: tone, widthShare: STROKE_WIDTH_SHARE,
        line: places.length < points.length
          ? { on: 'frame', points: points.map(({ frameX, frameY }) => [frameX, frameY]) }
          : { on: 'surface', points: places },
      })
    })
  }

  function wordsAt({ frameX, frameY }: FramePlace): string {
    const aspect = widthPixels / heightPixels
    const near = areas.filter(({ inFrame }) => inFrame).map((area) => {
      const [dx, dy] = [(area.frameX - frameX) * aspect, area.frameY - frameY]
      return { area, share: Math.sqrt(dx * dx + dy * dy) }
    }).sort((a, b) => a.share - b.share)[0]
    const where = `${Math.round(frameX * 100)} % from the left, ${Math.round(frameY * 100)} % from the top`
    return near === undefined || near.share > NEAR_SHARE ? where : `${near.area.label}, ${where}`
  }

  return (
    <>
      <Strokes strokes={strokes} widthPixels={widthPixels} heightPixels={heightPixels} />
      {isOn && <PencilSurface on="the Frame" onPress={press} onDrawn={draw} wordsAt={wordsAt} tone={tone} />}
      <FrameMarks marks={marks} widthPixels={widthPixels} heightPixels={heightPixels} />
    </>
  )
}
