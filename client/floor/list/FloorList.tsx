import { useMemo } from 'react'
import { setPower, switchLight } from '../../../shared-core/plan/edits/lights.ts'
import { QuantityField } from '../../panels/planFields.tsx'
import { powerOf } from '../../panels/quantities.ts'
import { usePlanEdit } from '../../session/usePlanEdit.ts'
import { useBoard, useBoardStore } from '../../session/useBoard.ts'
import { keyText, type ThingKey } from '../things.ts'
import { lightRows, type LightColumn } from './lightRows.ts'
import { NumbersTable, type TableColumn } from './NumbersTable.tsx'
import { backdropRows, cameraRows, pieceRows, pointRows, subjectRows } from './otherRows.ts'

/** The Floor without a drawing: everything on it, every number to be typed. */
export function FloorList() {
  // Numbers are edited from the plan without hands, so that a number under somebody's hand does not run away.
  const look = useBoard((board) => board.plan.looks[board.lookId])
  const prediction = useBoard((board) => board.prediction)
  const columns = useMemo(
    () =>
      prediction.lights.flatMap((predicted): TableColumn<LightColumn>[] => {
        const light = look?.lights[predicted.id]
        if (light === undefined) return []
        const served = prediction.areas.find((area) => area.id === light.serves)?.place ?? null
        const name = `Light ${light.letter}`
        return [{ id: predicted.id, name, heading: <ThingHead thing={{ kind: 'light', id: predicted.id }} letter={light.letter} words={predicted.summary} />, item: { id: predicted.id, light, served } }]
      }),
    [look, prediction],
  )
  if (look === undefined) return null
  return (
    <div className="floor-list">
      <NumbersTable
        caption="Lights"
        columns={columns}
        rows={lightRows}
        firstRows={[
          { label: 'Light', cellOf: ({ item, name }) => <OnOff id={item.id} on={item.light.on} name={name} /> },
          { label: 'Power', cellOf: ({ item, name }) => <Power column={item} name={name} /> },
        ]}
      />
      <NumbersTable
        caption="Flags, V-flats, boards and scrims"
        columns={Object.entries(look.pieces).map(([id, piece]) => ({
          id, name: piece.label, heading: <ThingHead thing={{ kind: 'piece', id }} words={piece.label} />, item: { id, piece },
        }))}
        rows={pieceRows}
      />
      <div className="floor-list-row">
        <NumbersTable caption="Camera" columns={[{ id: 'camera', name: 'Camera', heading: <ThingHead thing={{ kind: 'camera' }} words={`${look.camera.focalLengthMillimetres} mm`} />, item: look.camera }]} rows={cameraRows} />
        <NumbersTable caption="Subject" columns={[{ id: 'subject', name: 'Subject', heading: <ThingHead thing={{ kind: 'subject' }} words={look.subject.name || 'Subject'} />, item: look.subject }]} rows={subjectRows} />
        {look.backdrop.kind === 'paper' && (
          <NumbersTable caption="Paper" columns={[{ id: 'backdrop', name: 'Paper', heading: <ThingHead thing={{ kind: 'backdrop' }} words="Paper" />, item: look.backdrop }]} rows={backdropRows} />
        )}
        <NumbersTable
          caption="Meter points"
          columns={Object.entries(look.points).map(([id, point]) => ({
            id, name: point.label, heading: <ThingHead thing={{ kind: 'point', id }} words={point.label} />, item: { id, point },
          }))}
          rows={pointRows}
        />
      </div>
      <p className="floor-list-words">
        Everything is measured from the T. A turn of 0° faces the camera, 90° camera right. Tilts and chin are positive upwards.
      </p>
    </div>
  )
}

interface ThingHeadProps {
  readonly thing: ThingKey
  readonly letter?: string
  readonly words: string
}

/** Selects its thing, as a press on the Floor does. */
function ThingHead({ thing, letter, words }: ThingHeadProps) {
  const store = useBoardStore()
  const chosen = useBoard((board) => board.selection !== null && keyText(board.selection as ThingKey) === keyText(thing))
  return (
    <button type="button" className="floor-table-head" aria-pressed={chosen} onClick={() => store.getState().select(chosen ? null : thing)}>
      {letter !== undefined && <span className="tape floor-table-letter">{letter}</span>}
      <span>{words}</span>
    </button>
  )
}

function OnOff({ id, on, name }: { readonly id: string; readonly on: boolean; readonly name: string }) {
  const write = usePlanEdit()
  const mayEdit = useBoard((board) => board.mayEdit)
  return (
    <button
      type="button"
      className="button floor-table-switch"
      role="switch"
      aria-checked={on}
      aria-label={name}
      aria-disabled={!mayEdit}
      onClick={() => mayEdit && write((plan, lookId) => switchLight(plan, lookId, id, !on))}
    >
      {on ? 'on' : 'off'}
    </button>
  )
}

/** As the head's own panel writes it; nothing for a light without a head. */
function Power({ column: { id, light }, name }: { readonly column: LightColumn; readonly name: string }) {
  const head = useBoard((board) => board.plan.heads[light.headId])
  if (head === undefined) return null
  return (
    <QuantityField
      label={`${name}: power`}
      labelHidden
      value={light.energyJoules}
      quantity={powerOf(head)}
      change={(joules) => (plan, lookId) => setPower(plan, lookId, id, joules)}
    />
  )
}
