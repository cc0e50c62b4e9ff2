import { changeRoom } from '../../../shared-core/plan/edits/job.ts'
import type { Room } from '../../../shared-core/plan/schema/room.ts'
import { WithoutHere } from '../../ask/without/WithoutHere.tsx'
import { Section } from '../../controls/Section.tsx'
import { TextField } from '../../controls/TextField.tsx'
import { formatLength } from '../../../shared-core/plan/entry/length.ts'
import { signedStops } from '../../ladder/areaNames.ts'
import { useBoard } from '../../session/useBoard.ts'
import { usePlanEdit, type MakeEdit } from '../../session/usePlanEdit.ts'
import { cameraEntries } from '../camera/cameraEntries.ts'
import { CareHere, SnagsHere } from '../AboutThis.tsx'
import { LengthField, PlanSwatch, QuantityField } from '../planFields.tsx'
import { PanelHead } from '../PanelHead.tsx'
import { plainQuantity } from '../quantities.ts'
import { wallSwatches } from '../usualSwatches.ts'
import { RoomCircuits } from './RoomCircuits.tsx'
import { RoomColumns } from './RoomColumns.tsx'

const surfaceNames: Readonly<Record<keyof Room['surfaces'], string>> = {
  leftWall: 'Wall, camera left',
  rightWall: 'Wall, camera right',
  rearWall: 'Wall behind the backdrop',
  frontWall: 'Wall behind the camera',
  ceiling: 'Ceiling',
  floor: 'Floor',
}

/** The room by a handful of tape measures, what its surfaces throw back, and what it has plugged in. */
export function RoomSheet() {
  const room = useBoard((board) => board.shown.room)
  const ambient = useBoard((board) => board.prediction.ambient)
  const units = useBoard((board) => board.units)
  const mayEdit = useBoard((board) => board.mayEdit)
  const edit = usePlanEdit()
  const set = <Key extends keyof Room>(key: Key) => (value: Room[Key]): MakeEdit => (plan) => changeRoom(plan, { [key]: value })
  const length = (metres: number) => formatLength(metres, units)

  return (
    <div className="panel">
      <PanelHead title={room.name === '' ? 'Room' : room.name} gist={`${length(room.lengthMetres)} long, ${length(room.widthMetres)} wide, ${length(room.heightMetres)} high`} />
      <SnagsHere id="room" />
      <CareHere id="room" />
      <WithoutHere what={{ kind: 'room' }} words="What is left in another room" />
      <Section title="Tape measures" open>
        <div className="panel-grid">
          <TextField label="Name" value={room.name} maxLength={120} disabled={!mayEdit} onDone={(name) => edit(set('name')(name))} />
          <LengthField label="Width" value={room.widthMetres} change={set('widthMetres')} />
          <LengthField label="Length" value={room.lengthMetres} change={set('lengthMetres')} />
          <LengthField label="Height" value={room.heightMetres} change={set('heightMetres')} />
          <LengthField label="T to the wall, camera left" value={room.markFromLeftWallMetres} change={set('markFromLeftWallMetres')} />
          <LengthField label="T to the wall behind" value={room.markFromRearWallMetres} change={set('markFromRearWallMetres')} />
        </div>
      </Section>
      <Section title="Surfaces" gist="they throw colour back">
        <div className="panel-grid panel-swatches">
          {(Object.keys(surfaceNames) as (keyof Room['surfaces'])[]).map((surface) => (
            <PlanSwatch
              key={surface}
              label={surfaceNames[surface]}
              value={room.surfaces[surface]}
              usual={wallSwatches}
              change={(swatch) => (plan) => changeRoom(plan, { surfaces: { [surface]: swatch } })}
            />
          ))}
        </div>
      </Section>
      <Section title="Light left on" gist={ambient.stops === null ? 'none' : `${signedStops(ambient.stops)} stops`} open>
        <div className="panel-grid">
          <QuantityField label="At the subject" value={room.ambientLux} quantity={plainQuantity('lux', 10)} change={set('ambientLux')} />
          <QuantityField label="Its colour" value={room.ambientKelvin} quantity={cameraEntries.whiteBalanceKelvin} change={set('ambientKelvin')} />
        </div>
      </Section>
      <Section title="Columns" gist={countOf(room.columns)}>
        <RoomColumns columns={room.columns} />
      </Section>
      <Section title="Circuits" gist={`${countOf(room.circuits)} at ${Math.round(room.mainsVolts)} V`}>
        <RoomCircuits room={room} />
      </Section>
    </div>
  )
}

function countOf(record: Readonly<Record<string, unknown>>): string {
  const count = Object.keys(record).length
  return count === 0 ? 'none' : String(count)
}
