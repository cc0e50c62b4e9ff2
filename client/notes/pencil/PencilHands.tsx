import { NoteComposer } from './NoteComposer.tsx'
import { useColourWatch } from './useColourWatch.ts'
import { usePencilPresses } from './usePencilPresses.ts'

/** What the notes need once a page: presses while the pencil is on, the eye on pinned colours, the note being written. */
export function PencilHands() {
  usePencilPresses()
  useColourWatch()
  return <NoteComposer />
}
