import type { BatteryState } from '../../../shared-core/kit/batteries.ts'
import { MOST_BATTERY_PERCENT } from '../../../shared-core/predict/supply.ts'

interface BatteryListProps {
  readonly batteries: readonly BatteryState[]
  readonly framesPlanned: number | null
}

/** Battery heads of the look: frames a charge gives at this power, against the frames planned. */
export function BatteryList({ batteries, framesPlanned }: BatteryListProps) {
  if (batteries.length === 0) return null
  return (
    <section className="page-panel kit-card" aria-label="Batteries">
      <h3>Batteries</h3>
      <ul>
        {batteries.map(({ lightId, letter, headName, flashesPerCharge, percent, charges }) => (
          <li key={lightId} className="plug">
            <span className="tape plug-letter">{letter}</span>
            <span>
              {Math.floor(flashesPerCharge)} frames a charge <span className="page-soft">{headName}</span>
              {framesPlanned !== null && (
                <span className={percent > MOST_BATTERY_PERCENT ? 'circuit-care' : 'page-soft'}>
                  {' '}· {framesPlanned} planned, {Math.round(percent)} % of it{percent > MOST_BATTERY_PERCENT ? `: pack ${charges} charged` : ''}
                </span>
              )}
            </span>
          </li>
        ))}
      </ul>
      {framesPlanned === null && <p className="page-soft">Nobody has said yet how many frames are planned for this look.</p>}
    </section>
  )
}
