import { lazy, Suspense } from 'react'
import { NotesSheet } from '../notes/pencil/NotesSheet.tsx'
import { usePencil } from '../notes/pencil/pencilStore.ts'
import { Details } from './Details.tsx'
import './Room.css'
import { Part } from './faults/Part.tsx'

// The canvas is the heaviest part of the page; picture and instrument can be read before it is here.
const FloorView = lazy(async () => ({ default: (await import('../floor/FloorView.tsx')).FloorView }))

/** The room, with what is picked in it at its foot. */
export function Room() {
  const notesShown = usePencil((state) => state.listShown)
  return (
    <div className="room">
      <div className="room-floor">
        <Part name="The floor">
          <Suspense fallback={<p className="heard">The floor is on its way</p>}>
            <FloorView />
          </Suspense>
        </Part>
      </div>
      {notesShown ? <NotesSheet /> : <Details />}
    </div>
  )
}
