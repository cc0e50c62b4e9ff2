import { useEffect, useMemo } from 'react'
import type { Vector } from '../../../shared-core/arithmetic/vector.ts'
import type { Plan } from '../../../shared-core/plan/schema/plan.ts'
import { pictureDesk } from '../../frame/picture/pictureDesk.ts'
import { useBoard, useBoardAtOnce } from '../../session/useBoard.ts'
import { useNotes } from '../useNotes.ts'
import { strokesOf, type DrawnStroke } from '../engine/threads.ts'
import { framePlaceOfPin, framePlacesOf, isInsideFrame, vectorOfRest, type FramePlace } from './framePlace.ts'
import type { NumberedThread } from './noteOrder.ts'
import { pencilStore, usePencil } from './pencilStore.ts'
import { useNoteList } from './useNoteList.ts'

export interface FrameMark {
  readonly thread: NumberedThread
  readonly place: FramePlace
  readonly isNew: boolean
}

export interface FrameStroke {
  readonly id: string
  readonly stroke: DrawnStroke
  /** Pieces of the line that are seen, in shares of the Frame. */
  readonly pieces: readonly (readonly FramePlace[])[]
}

/** A hand that rests this long is asked what hides behind what. */
const REST_MS = 100

/** The notes pinned in the Frame of this look and the lines drawn there, where they are now; what hides is left out. */
export function useFrameMarks(): { readonly marks: readonly FrameMark[]; readonly strokes: readonly FrameStroke[] } {
  const { threads, isNew } = useNoteList()
  const lookId = useBoardAtOnce((board) => board.lookId)
  const look = useBoardAtOnce((board) => board.shown.looks[board.lookId])
  const areas = useBoard((board) => board.prediction.areas)
  const notes = useNotes((board) => board.notes.strokes)
  const allNotes = useNotes((board) => board.notes)
  // eslint-disable-next-line react-hooks/exhaustive-deps -- of the notes only the strokes
  const strokes = useMemo(() => strokesOf(allNotes, lookId), [notes, lookId])
  const openId = usePencil((state) => state.openId)
  const here = useMemo(() => threads.filter(({ note }) => note.lookId === lookId), [threads, lookId])
  const hiddenIds = usePencil((state) => state.hiddenIds)
  const hiddenPoints = useHiding(here, strokes, lookId)

  return useMemo(() => {
    if (look === undefined) return { marks: [], strokes: [] }
    const marks = here.flatMap((thread): FrameMark[] => {
      if (hiddenIds.has(thread.id) || (thread.state === 'closed' && thread.id !== openId && !isNew(thread))) return []
      const place = framePlaceOfPin(thread.note.pin, look, areas)
      return place === null || !isInsideFrame(place) ? [] : [{ thread, place, isNew: isNew(thread) }]
    })
    return { marks, strokes: strokes.map(({ id, stroke }) => ({ id, stroke, pieces: piecesOf(stroke, look, (point) => hiddenPoints.has(`${id} ${point}`)) })) }
  }, [look, here, strokes, areas, hiddenIds, hiddenPoints, openId, isNew])
}

function piecesOf({ line }: DrawnStroke, look: Plan['looks'][string], isHidden: (point: number) => boolean): readonly (readonly FramePlace[])[] {
  if (line.on === 'frame') return [line.points.map(([frameX, frameY]) => ({ frameX, frameY }))]
  const pieces: FramePlace[][] = [[]]
  framePlacesOf(look, line.points.map(vectorOfRest)).forEach((place, point) => {
    if (place === null || isHidden(point)) pieces.push([])
    else pieces.at(-1)!.push(place)
  })
  return pieces.filter((piece) => piece.length > 0)
}

/** Asks the picture's worker what of all this the camera does not see, whenever a hand rests. @returns hidden points of strokes */
function useHiding(here: readonly NumberedThread[], strokes: readonly { readonly id: string; readonly stroke: DrawnStroke }[], lookId: string): ReadonlySet<string> {
  const shown = useBoard((board) => board.shown)
  const hiddenPoints = usePencil((state) => state.hiddenPoints)
  useEffect(() => {
    const asked: { readonly noteId: string | null; readonly pointKey: string | null; readonly place: Vector }[] = []
    for (const { id, note: { pin } } of here) if (pin.on === 'subject') asked.push({ noteId: id, pointKey: null, place: vectorOfRest(pin.place) })
    for (const { id, stroke: { line } } of strokes) {
      if (line.on === 'surface') line.points.forEach((point, i) => asked.push({ noteId: null, pointKey: `${id} ${i}`, place: vectorOfRest(point) }))
    }
    if (asked.length === 0) return
    let wanted = true
    const timer = setTimeout(() => {
      pictureDesk()?.askPlaces({ slot: 'notes seen', kind: 'places', plan: shown, lookId, under: [], places: asked.map(({ place }) => place) }, (found) => {
        if (!wanted || found === null) return
        const hidden = asked.filter((_, i) => found.seen[i] === false)
        pencilStore.setState({
          hiddenIds: new Set(hidden.flatMap(({ noteId }) => noteId ?? [])),
          hiddenPoints: new Set(hidden.flatMap(({ pointKey }) => pointKey ?? [])),
        })
      })
    }, REST_MS)
    return () => {
      wanted = false
      clearTimeout(timer)
    }
  }, [here, strokes, shown, lookId])
  return hiddenPoints
}
