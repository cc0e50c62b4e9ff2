import { formatLength } from '../../../shared-core/plan/entry/length.ts'
import { thingAt } from '../../floor/gestures/hit.ts'
import type { LaidTape } from '../../floor/tapes/layTapes.ts'
import type { Thing, ThingKey } from '../../floor/things.ts'
import { project, type ViewKind } from '../../floor/view/projection.ts'
import { metresAt, pixelAt, type PanelSize, type ViewTransform } from '../../floor/view/viewTransform.ts'
import { useBoard } from '../../session/useBoard.ts'
import type { Pin } from '../../../shared-core/notes/pin.ts'
import { NoteMark } from './NoteMark.tsx'
import type { FramePlace } from './framePlace.ts'
import { beginNote, usePencil } from './pencilStore.ts'
import { PencilSurface, type PressedAt } from './PencilSurface.tsx'
import './PinnedMarks.css'
import { useNoteList } from './useNoteList.ts'

interface FloorNotesProps {
  readonly view: ViewKind
  readonly transform: ViewTransform
  readonly panel: PanelSize
  readonly things: readonly Thing[]
  readonly tapes: readonly LaidTape[]
}

const REACH_PIXELS = 9

/** The notes on the Floor: at their spot, or at the tape of the light or piece they hang on; and the pencil while it is on. */
export function FloorNotes({ view, transform, panel, things, tapes }: FloorNotesProps) {
  const isOn = usePencil((state) => state.isOn)
  const { threads, isNew } = useNoteList()
  const lookId = useBoard((board) => board.lookId)
  const units = useBoard((board) => board.units)
  const here = threads.filter((thread) => thread.note.lookId === lookId && (thread.state !== 'closed' || isNew(thread)))

  function placeOf(pin: Pin): { readonly at: readonly [number, number]; readonly isSpot: boolean } | null {
    if (pin.on === 'floor') return view === 'floor' ? { at: pixelAt(transform, project('floor', [pin.xMetres, pin.yMetres, 0])), isSpot: true } : null
    const id = pin.on === 'light' || pin.on === 'gel' ? pin.lightId : pin.on === 'piece' ? pin.pieceId : null
    const tape = id === null ? undefined : tapes.find(({ thing, shown }) => shown && 'id' in thing.key && thing.key.id === id)
    return tape === undefined ? null : { at: [tape.bounds.right - 8, tape.bounds.top - 12], isSpot: false }
  }

  function press({ frameX, frameY }: FramePlace, at: PressedAt): void {
    const pixel = [frameX * panel.width, frameY * panel.height] as const
    const onTape = tapes.find(({ shown, bounds }) => shown && pixel[0] >= bounds.left && pixel[0] <= bounds.right && pixel[1] >= bounds.top && pixel[1] <= bounds.bottom)
    const pin = pinOfThing(onTape?.thing.key ?? thingAt(things, view, transform, pixel, REACH_PIXELS)) ?? (view === 'floor' ? spotAt(pixel) : null)
    if (pin !== null) beginNote({ lookId, pin, colour: null, ...at })
  }

  function spotAt(pixel: readonly [number, number]): Pin {
    const [x, y] = metresAt(transform, pixel)
    return { on: 'floor', xMetres: toCentimetre(x), yMetres: toCentimetre(-y) }
  }

  function wordsAt({ frameX, frameY }: FramePlace): string {
    const pin = spotAt([frameX * panel.width, frameY * panel.height])
    if (pin.on !== 'floor') return ''
    return `${formatLength(Math.abs(pin.xMetres), units)} ${pin.xMetres < 0 ? 'left' : 'right'}, ${formatLength(Math.abs(pin.yMetres), units)} ${pin.yMetres < 0 ? 'in front' : 'behind'}`
  }

  return (
    <>
      {isOn && <PencilSurface on="the Floor" onPress={press} wordsAt={wordsAt} tone="" />}
      <div className="floor-notes">
        {here.map((thread) => {
          const place = placeOf(thread.note.pin)
          if (place === null) return null
          const [x, y] = place.at
          return (
            <span key={thread.id} style={{ transform: `translate(${Math.round(x)}px, ${Math.round(y)}px)` }}>
              {place.isSpot && <span className="floor-notes-dot" data-note-place={thread.id} aria-hidden />}
              <NoteMark thread={thread} isNew={isNew(thread)} />
            </span>
          )
        })}
      </div>
    </>
  )
}

function pinOfThing(key: ThingKey | null): Pin | null {
  if (key?.kind === 'light') return { on: 'light', lightId: key.id }
  return key?.kind === 'piece' ? { on: 'piece', pieceId: key.id } : null
}

function toCentimetre(metres: number): number {
  return Math.round(metres * 100) / 100
}
