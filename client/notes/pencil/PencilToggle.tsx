import { Pencil } from 'lucide-react'
import { beginNote, setPencil, usePencil } from './pencilStore.ts'
import './PencilBar.css'
import { useBoard, useBoardStore } from '../../session/useBoard.ts'
import { useNotes, useNotesStore } from '../useNotes.ts'
import { strokesOf } from '../engine/threads.ts'

/** Turns presses into notes, and drags on the Frame into strokes, until it is put down. */
export function PencilToggle() {
  const isOn = usePencil((state) => state.isOn)
  return (
    <button type="button" className="button frame-toggle pencil-toggle" data-pencil-own aria-pressed={isOn} aria-keyshortcuts="n" onClick={() => setPencil(!isOn)}>
      <Pencil size={14} aria-hidden />
      <span className="pencil-toggle-word">Pencil</span>
    </button>
  )
}

/** While the pencil is on: what it does, a note on the look as a whole, and one's own last stroke rubbed out. */
export function PencilBar() {
  const isOn = usePencil((state) => state.isOn)
  const board = useBoardStore()
  const store = useNotesStore()
  const lookId = useBoard((state) => state.lookId)
  const seatId = useNotes((state) => state.seat.seatId)
  const ownLast = useNotes((state) => strokesOf(state.notes, lookId).findLast(({ stroke }) => stroke.by.seatId === seatId)?.id ?? null)
  if (!isOn) return null
  return (
    <div className="pencil-bar" role="group" aria-label="Pencil" data-pencil-own>
      <p className="pencil-bar-words">Press to pin, drag to draw</p>
      <button
        type="button"
        className="button button-lined"
        onClick={(event) => {
          const { x, y } = event.currentTarget.getBoundingClientRect()
          beginNote({ lookId: board.getState().lookId, pin: { on: 'look' }, colour: null, byKeys: event.detail === 0, clientX: x, clientY: y - 160 })
        }}
      >
        Whole look
      </button>
      {ownLast !== null && (
        <button type="button" className="button button-lined" aria-label="Rub out my last stroke" onClick={() => store.getState().send({ do: 'stroke.remove', strokeId: ownLast })}>
          Rub out
        </button>
      )}
    </div>
  )
}
