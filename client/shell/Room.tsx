import { lazy, Suspense } from 'react'
import { Details } from './Details.tsx'
import './Room.css'
import { Part } from './faults/Part.tsx'

// The canvas is the heaviest part of the page; picture and instrument can be read before it is here.
const FloorView = lazy(async () => ({ default: (await import('../floor/FloorView.tsx')).FloorView }))

/** The room, with what is picked in it at its foot. */
export function Room() {
  return (
    <div className="room">
      <div className="room-floor">
        <Part name="The floor">
          <Suspense fallback={<p className="heard">The floor is on its way</p>}>
            <FloorView />
          </Suspense>
        </Part>
      </div>
      <Details />
    </div>
  )
}
