import { chooseHead, changeLight, setPower } from '../../../shared-core/plan/edits/lights.ts'
import { formatPower } from '../../../shared-core/plan/entry/power.ts'
import { powerNotations } from '../../../shared-core/plan/schema/kit.ts'
import type { Light } from '../../../shared-core/plan/schema/look.ts'
import { ChoiceList } from '../../controls/ChoiceList.tsx'
import { useBoard } from '../../session/useBoard.ts'
import { usePlanEdit } from '../../session/usePlanEdit.ts'
import { QuantityField } from '../planFields.tsx'
import { powerOf, stopsQuantity } from '../quantities.ts'

/** Power as this head writes it and as others say it, the head itself, and what was wanted. */
export function LightPower({ lightId, light }: { readonly lightId: string; readonly light: Light }) {
  const heads = useBoard((board) => board.shown.heads)
  const mayEdit = useBoard((board) => board.mayEdit)
  const edit = usePlanEdit()
  const head = heads[light.headId]
  const wanted = (wantedStops: number | null) => (plan: Parameters<typeof changeLight>[0], lookId: string) => changeLight(plan, lookId, lightId, { wantedStops })

  return (
    <>
      <div className="panel-grid">
        {head && (
          <QuantityField
            label="Power"
            value={light.energyJoules}
            quantity={powerOf(head)}
            change={(joules) => (plan, lookId) => setPower(plan, lookId, lightId, joules)}
          />
        )}
        {light.wantedStops === null ? (
          <div className="panel-open">
            <span className="number-field-label">Wanted</span>
            <button type="button" className="button button-lined" aria-disabled={!mayEdit} onClick={() => mayEdit && edit(wanted(0))}>
              Set a level
            </button>
          </div>
        ) : (
          <QuantityField label="Wanted, from the aperture" value={light.wantedStops} quantity={stopsQuantity} change={wanted} />
        )}
        <ChoiceList
          label="Head"
          value={light.headId}
          options={Object.entries(heads).map(([value, { name }]) => ({ value, label: name }))}
          disabled={!mayEdit}
          onChoose={(headId) => edit((plan, lookId) => chooseHead(plan, lookId, lightId, headId))}
        />
      </div>
      {head && (
        <p className="panel-words">
          The same power is also said{' '}
          {powerNotations
            .filter((notation) => notation !== head.powerNotation)
            .map((powerNotation) => saidAs(formatPower(light.energyJoules, { ...head, powerNotation }), powerNotation))
            .join(' · ')}
          {light.wantedStops !== null && mayEdit && (
            <button type="button" className="panel-link" onClick={() => edit(wanted(null))}>
              Leave the wanted level open
            </button>
          )}
        </p>
      )}
    </>
  )
}

function saidAs(text: string, notation: (typeof powerNotations)[number]): string {
  if (notation === 'stops-from-full') return text === 'full' ? 'full' : `${text} from full`
  return notation === 'scale-of-ten' ? `${text} on a scale of ten` : text
}
