import type { Plug } from '../../../shared-core/kit/circuits.ts'
import { plugHeads } from '../../../shared-core/kit/plugEdit.ts'
import { ChoiceList } from '../../controls/ChoiceList.tsx'
import { useRig, useRigStore } from '../../rig/useRig.ts'
import { useBoard } from '../../session/useBoard.ts'
import { usePlanEdit } from '../../session/usePlanEdit.ts'

/** One plug, and into which circuit it goes. */
export function PlugRow({ plug }: { readonly plug: Plug }) {
  const circuits = useBoard((board) => board.plan.room.circuits)
  const mayEdit = useBoard((board) => board.mayEdit)
  const entry = useRig(({ rig }) => rig.appliances[plug.id])
  const rig = useRigStore()
  const edit = usePlanEdit()
  const named = Object.entries(circuits).map(([value, { label }]) => ({ value, label: label || 'Circuit' }))
  const options = plug.isPlugged ? named : [{ value: '', label: 'nobody has said' }, ...named]

  function moveTo(circuitId: string): void {
    if (circuitId === '') return
    if (plug.kind === 'head') edit((plan, lookId) => plugHeads(plan, lookId, [{ lightId: plug.id, circuitId }]))
    else if (entry) rig.getState().write([{ kind: 'appliances', key: plug.id, entry: { ...entry, circuitId } }])
  }

  return (
    <li className="plug" data-on={plug.on}>
      {plug.kind === 'head' ? <span className="tape plug-letter">{plug.label}</span> : <span className="plug-name">{plug.label}</span>}
      <span className="page-soft">
        {Math.round(plug.watts)} W, {plug.amps.toFixed(1)} A{plug.on ? '' : ', off'}
        {plug.kind === 'head' && !plug.isPlugged && plug.circuitId !== '' ? '; counted where there is most room' : ''}
      </span>
      <ChoiceList
        label={`Circuit of ${plug.label}`} labelHidden value={plug.isPlugged ? plug.circuitId : ''} options={options}
        disabled={!mayEdit} onChoose={moveTo}
      />
    </li>
  )
}
