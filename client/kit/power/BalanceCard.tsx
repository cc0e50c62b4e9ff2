import { useMemo } from 'react'
import { balancePlugs } from '../../../shared-core/kit/balance.ts'
import { plugHeads } from '../../../shared-core/kit/plugEdit.ts'
import { MOST_CIRCUIT_PERCENT } from '../../../shared-core/predict/supply.ts'
import type { RigEdit } from '../../../shared-core/rig/rig.ts'
import { useRig, useRigStore } from '../../rig/useRig.ts'
import { useBoard } from '../../session/useBoard.ts'
import { usePlanEdit } from '../../session/usePlanEdit.ts'

/** Which plug to change so that the worst circuit carries least, as if everything were switched on. */
export function BalanceCard() {
  const plan = useBoard((board) => board.plan)
  const lookId = useBoard((board) => board.lookId)
  const mayEdit = useBoard((board) => board.mayEdit)
  const appliances = useRig(({ rig }) => rig.appliances)
  const rig = useRigStore()
  const edit = usePlanEdit()
  const found = useMemo(() => {
    const look = plan.looks[lookId]
    return look ? balancePlugs(plan, look, appliances) : null
  }, [plan, lookId, appliances])
  if (found === null) return null
  const { moves, worstPercent, worstPercentBefore, sharing } = found

  function plugSo(): void {
    const heads = moves.filter(({ plug }) => plug.kind === 'head').map(({ plug, toCircuitId }) => ({ lightId: plug.id, circuitId: toCircuitId }))
    const others = moves.flatMap(({ plug, toCircuitId }): readonly RigEdit[] => {
      const entry = plug.kind === 'appliance' ? appliances[plug.id] : undefined
      return entry ? [{ kind: 'appliances', key: plug.id, entry: { ...entry, circuitId: toCircuitId } }] : []
    })
    if (heads.length > 0 && !edit((now, look) => plugHeads(now, look, heads))) return
    if (others.length > 0) rig.getState().write(others)
  }

  return (
    <section className="page-panel kit-card" aria-label="Spread over the circuits">
      <h3>Spread over the circuits</h3>
      {moves.length === 0
        ? <p>No other way to plug carries less on the worst circuit: {Math.round(worstPercent)} % with everything on.</p>
        : (
          <>
            <p>
              With everything on, the worst circuit would carry <b>{Math.round(worstPercent)} %</b>
              {worstPercentBefore - worstPercent > 0.5 ? ` instead of ${Math.round(worstPercentBefore)} %` : ''}:
            </p>
            <ul className="power-moves">
              {moves.map(({ plug, toCircuitId }) => <li key={`${plug.kind} ${plug.id}`}><b>{plug.label}</b> into {plan.room.circuits[toCircuitId]?.label || 'the other circuit'}</li>)}
            </ul>
            {mayEdit && <button type="button" className="button button-main" onClick={plugSo}>Plug so</button>}
          </>
        )}
      {worstPercent > MOST_CIRCUIT_PERCENT && <p className="circuit-care">Even so a circuit is past the line: bring in another, or leave something off while heads recycle.</p>}
      {sharing > 0 && <p className="page-soft">{sharing} {sharing === 1 ? 'head shares' : 'heads share'} a circuit with what wants one to itself: there are too few.</p>}
      {!found.isExact && <p className="page-soft">There are too many plugs to weigh every way; this is the best of those weighed.</p>}
    </section>
  )
}
