import { changeLight } from '../../../shared-core/plan/edits/lights.ts'
import { planes, type Light } from '../../../shared-core/plan/schema/look.ts'
import { ChoiceList } from '../../controls/ChoiceList.tsx'
import { useBoard } from '../../session/useBoard.ts'
import { usePlanEdit } from '../../session/usePlanEdit.ts'
import { QuantityField } from '../planFields.tsx'
import { plainQuantity } from '../quantities.ts'

const planeOptions = planes.map((plane) => ({ value: plane, label: plane.replace('-', ' ') }))

/** What the light is there for: its plane, the area it is metered at, its turn in setting up. */
export function LightTask({ lightId, light }: { readonly lightId: string; readonly light: Light }) {
  const areas = useBoard((board) => board.prediction.areas)
  const mayEdit = useBoard((board) => board.mayEdit)
  const edit = usePlanEdit()
  return (
    <div className="panel-grid">
      <ChoiceList
        label="Plane"
        value={light.plane}
        options={planeOptions}
        disabled={!mayEdit}
        onChoose={(plane) => edit((plan, lookId) => changeLight(plan, lookId, lightId, { plane }))}
      />
      <ChoiceList
        label="Metered at"
        value={light.serves}
        options={areas.map(({ id, label }) => ({ value: id as string, label }))}
        disabled={!mayEdit}
        onChoose={(serves) => edit((plan, lookId) => changeLight(plan, lookId, lightId, { serves }))}
      />
      <QuantityField
        label="Turn in setting up"
        value={light.setUpOrder}
        quantity={plainQuantity('', 1)}
        change={(setUpOrder) => (plan, lookId) => changeLight(plan, lookId, lightId, { setUpOrder })}
      />
    </div>
  )
}
