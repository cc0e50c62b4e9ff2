import { useCallback, useState } from 'react'
import { formatLength } from '../../shared-core/plan/entry/length.ts'
import { Choice, type Option } from '../controls/Choice.tsx'
import { useBoard } from '../session/useBoard.ts'
import { FloorBoard } from './FloorBoard.tsx'
import './floor.css'
import type { Placing } from './gestures/placing.ts'
import { FloorList } from './list/FloorList.tsx'
import { PlaceMenu } from './PlaceMenu.tsx'
import type { ThrowHeight } from './throw/throwHeight.ts'
import type { ViewKind } from './view/projection.ts'

type Page = ViewKind | 'list'

const pages = [
  { value: 'floor', label: 'Floor' },
  { value: 'side', label: 'From the side', face: <><span className="floor-wide">From the </span><span className="floor-name">side</span></> },
  { value: 'camera', label: 'From the camera', face: <><span className="floor-wide">From the </span><span className="floor-name">camera</span></> },
  { value: 'list', label: 'List' },
] as const satisfies readonly Option<Page>[]

const heights = [
  { value: 'head', label: 'At the head', face: 'Head' },
  { value: 'floor', label: 'On the floor', face: 'Floor' },
] as const satisfies readonly Option<ThrowHeight>[]

/** The set to scale, with the camera at the bottom edge: what is left on the Floor is left in the Frame. */
export function FloorView() {
  const [page, setPage] = useState<Page>('floor')
  const [throwHeight, setThrowHeight] = useState<ThrowHeight>('head')
  const [placing, setPlacing] = useState<Placing | null>(null)
  const endPlacing = useCallback(() => setPlacing(null), [])
  return (
    <section className="floor" aria-label="Floor">
      <header className="floor-head">
        <Choice label="Look at the set" labelHidden value={page} options={pages} onChoose={setPage} />
        <RoomSize />
        <PlaceMenu onPlacing={(next) => { setPlacing(next); if (page === 'list') setPage('floor') }} />
      </header>
      <div className="floor-body">
        {page === 'list' ? <FloorList /> : (
          <>
            <FloorBoard view={page} throwHeight={throwHeight} placing={placing} onPlaced={endPlacing} />
            {page === 'floor' && (
              <div className="floor-throw-height">
                <span aria-hidden>Light at</span>
                <Choice label="Height at which the light is shown" labelHidden value={throwHeight} options={heights} onChoose={setThrowHeight} />
              </div>
            )}
          </>
        )}
      </div>
    </section>
  )
}

/** Length, width and height of the room. */
function RoomSize() {
  const room = useBoard((board) => board.shown.room)
  const units = useBoard((board) => board.units)
  const sides = [room.lengthMetres, room.widthMetres, room.heightMetres].map((side) => formatLength(side, units))
  const words = units === 'metric' ? `${sides.map((side) => side.replace(' m', '')).join(' × ')} m` : sides.join(' × ')
  return <span className="floor-room-size">{words}</span>
}
