import { changeLight } from '../../../shared-core/plan/edits/lights.ts'
import type { Light } from '../../../shared-core/plan/schema/look.ts'
import { Choice } from '../../controls/Choice.tsx'
import { ChoiceList } from '../../controls/ChoiceList.tsx'
import { useBoard } from '../../session/useBoard.ts'
import { usePlanEdit } from '../../session/usePlanEdit.ts'
import { QuantityField } from '../planFields.tsx'
import { angleQuantity } from '../quantities.ts'

const grids = [
  { value: 'none', label: 'None' },
  { value: 'honeycomb', label: 'Honeycomb' },
  { value: 'fabric', label: 'Fabric' },
] as const

/** What is on the head: the modifier and its grid. */
export function LightShape({ lightId, light }: { readonly lightId: string; readonly light: Light }) {
  const modifiers = useBoard((board) => board.shown.modifiers)
  const mayEdit = useBoard((board) => board.mayEdit)
  const edit = usePlanEdit()
  return (
    <div className="panel-grid">
      <ChoiceList
        label="Modifier"
        value={light.modifierId}
        options={Object.entries(modifiers).map(([value, { name }]) => ({ value, label: name }))}
        disabled={!mayEdit}
        onChoose={(modifierId) => edit((plan, lookId) => changeLight(plan, lookId, lightId, { modifierId }))}
      />
      <Choice
        label="Grid"
        value={light.grid.kind}
        options={grids}
        disabled={!mayEdit}
        onChoose={(kind) => edit((plan, lookId) => changeLight(plan, lookId, lightId, { grid: { kind } }))}
      />
      {light.grid.kind !== 'none' && (
        <QuantityField
          label="Grid, degrees printed on it"
          value={light.grid.openingDegrees}
          quantity={angleQuantity}
          change={(openingDegrees) => (plan, lookId) => changeLight(plan, lookId, lightId, { grid: { openingDegrees } })}
        />
      )}
      <QuantityField
        label="Roll about its axis"
        value={light.rollDegrees}
        quantity={angleQuantity}
        change={(rollDegrees) => (plan, lookId) => changeLight(plan, lookId, lightId, { rollDegrees })}
      />
    </div>
  )
}
