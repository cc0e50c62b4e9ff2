import type { Place } from '../../../shared-core/plan/schema/quantities.ts'
import { changeLight } from '../../../shared-core/plan/edits/lights.ts'
import { aimLight, moveLight, turnLight } from '../../../shared-core/plan/edits/placing.ts'
import type { Light } from '../../../shared-core/plan/schema/look.ts'
import type { LightPrediction } from '../../../shared-core/predict/prediction.ts'
import { Choice } from '../../controls/Choice.tsx'
import { Switch } from '../../controls/Switch.tsx'
import { useBoard } from '../../session/useBoard.ts'
import { usePlanEdit } from '../../session/usePlanEdit.ts'
import { atDistance, tiltDegreesOf } from '../beam.ts'
import { LengthField, QuantityField } from '../planFields.tsx'
import { PlaceFields } from '../PlaceFields.tsx'
import { angleQuantity } from '../quantities.ts'

const supports = [
  { value: 'stand', label: 'Stand' },
  { value: 'low-stand', label: 'Low stand' },
  { value: 'boom', label: 'Boom' },
] as const

interface LightPlaceProps {
  readonly lightId: string
  readonly light: Light
  readonly predicted: LightPrediction
}

/** Where the front is, where it points, and the two as a rigger says them: distance, height, tilt. */
export function LightPlace({ lightId, light, predicted }: LightPlaceProps) {
  const served = useBoard((board) => board.prediction.areas.find(({ id }) => id === predicted.serves))
  const circuits = useBoard((board) => board.shown.room.circuits)
  const mayEdit = useBoard((board) => board.mayEdit)
  const edit = usePlanEdit()
  const move = (place: Partial<Place>) => (plan: Parameters<typeof moveLight>[0], lookId: string) => moveLight(plan, lookId, lightId, place)
  const tilt = tiltDegreesOf(light.place, light.aim)

  return (
    <>
      <div className="panel-grid">
        {served && (
          <LengthField
            label={`Front of it to the ${served.label}`}
            value={predicted.distanceMetres}
            change={(metres) => move(atDistance(light.place, served.place, metres))}
          />
        )}
        <LengthField label="Height of its centre" value={light.place.zMetres} change={(zMetres) => move({ zMetres })} />
        <QuantityField
          label="Tilt, down is minus"
          value={tilt}
          quantity={angleQuantity}
          change={(degrees) => (plan, lookId) => turnLight(plan, lookId, lightId, { tiltDegrees: degrees - tilt })}
        />
        <Choice
          label="Stands on"
          value={light.support}
          options={supports}
          disabled={!mayEdit}
          onChoose={(support) => edit((plan, lookId) => changeLight(plan, lookId, lightId, { support }))}
        />
        <Switch label="Sandbag" on={light.sandbag} disabled={!mayEdit} onTurn={(sandbag) => edit((plan, lookId) => changeLight(plan, lookId, lightId, { sandbag }))} />
        <Switch label="Safety cable" on={light.safetyCable} disabled={!mayEdit} onTurn={(safetyCable) => edit((plan, lookId) => changeLight(plan, lookId, lightId, { safetyCable }))} />
        <Choice
          label="Plugged into"
          value={Object.hasOwn(circuits, light.circuitId) ? light.circuitId : ''}
          options={[{ value: '', label: 'Not said' }, ...Object.entries(circuits).map(([value, { label }]) => ({ value, label: label || 'Circuit' }))]}
          disabled={!mayEdit}
          onChoose={(circuitId) => edit((plan, lookId) => changeLight(plan, lookId, lightId, { circuitId }))}
        />
      </div>
      <PlaceFields title="Front of the modifier" place={light.place} heightHidden change={move} />
      <PlaceFields title="Aimed at" place={light.aim} change={(place) => (plan, lookId) => aimLight(plan, lookId, lightId, place)} />
    </>
  )
}
