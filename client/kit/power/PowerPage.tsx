import { useMemo } from 'react'
import { batteryStates } from '../../../shared-core/kit/batteries.ts'
import { circuitStates, plugsOf } from '../../../shared-core/kit/circuits.ts'
import { FullPage } from '../../controls/FullPage.tsx'
import { useRig } from '../../rig/useRig.ts'
import { useBoard } from '../../session/useBoard.ts'
import { ApplianceList } from './ApplianceList.tsx'
import { BalanceCard } from './BalanceCard.tsx'
import { BatteryList } from './BatteryList.tsx'
import { CircuitRow } from './CircuitRow.tsx'
import { PlugRow } from './PlugRow.tsx'
import '../kit.css'
import './power.css'

/** What hangs on which circuit of the room, at the worst moment of a frame of the look on the board. */
export function PowerPage({ onClose }: { readonly onClose: () => void }) {
  const plan = useBoard((board) => board.plan)
  const lookId = useBoard((board) => board.lookId)
  const cautions = useBoard((board) => board.prediction.cautions)
  const appliances = useRig(({ rig }) => rig.appliances)
  const look = plan.looks[lookId]
  const circuits = useMemo(() => (look ? circuitStates(plan, look, appliances) : []), [plan, look, appliances])
  const loose = useMemo(() => (look ? plugsOf(plan, look, appliances).filter(({ circuitId }) => circuitId === '') : []), [plan, look, appliances])
  const batteries = useMemo(() => (look ? batteryStates(plan, look) : []), [plan, look])
  if (look === undefined) return null
  return (
    <FullPage
      onClose={onClose} title={`Power · ${look.name}`}
      words="Just after a frame, when all heads recycle at once. The line stands at 80 % of each breaker, as is usual to plan on."
    >
      <div className="page-column kit-page">
        <div className="power-rows">
          {circuits.map((state) => <CircuitRow key={state.circuitId} state={state} />)}
          {circuits.length === 0 && <p className="page-panel kit-card">The room has no circuits yet: add them in the room’s own sheet, one for each breaker.</p>}
          {loose.length > 0 && (
            <section className="page-panel kit-card" aria-label="Not plugged in">
              <h3>Not plugged in</h3>
              <ul>{loose.map((plug) => <PlugRow key={plug.id} plug={plug} />)}</ul>
            </section>
          )}
        </div>
        <p className="kit-care">
          {cautions.filter(({ kind }) => kind === 'circuit' || kind === 'capacitor').map(({ message }) => message).join(' ')}
        </p>
        <div className="power-more">
          <BalanceCard />
          <ApplianceList />
          <BatteryList batteries={batteries} framesPlanned={look.framesPlanned} />
        </div>
      </div>
    </FullPage>
  )
}
