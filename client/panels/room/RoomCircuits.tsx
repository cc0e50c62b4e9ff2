import { Plus, Trash2 } from 'lucide-react'
import { changeRoom } from '../../../shared-core/plan/edits/job.ts'
import { addCircuit, changeCircuit, removeCircuit } from '../../../shared-core/plan/edits/room.ts'
import type { Room } from '../../../shared-core/plan/schema/room.ts'
import { TextField } from '../../controls/TextField.tsx'
import { useBoard } from '../../session/useBoard.ts'
import { usePlanEdit } from '../../session/usePlanEdit.ts'
import { QuantityField } from '../planFields.tsx'
import { plainQuantity } from '../quantities.ts'

/** The mains and its breakers, with the share of each that is usually planned on. */
export function RoomCircuits({ room }: { readonly room: Room }) {
  const mayEdit = useBoard((board) => board.mayEdit)
  const edit = usePlanEdit()
  const circuits = Object.entries(room.circuits)
  return (
    <>
      <div className="panel-grid">
        <QuantityField label="Mains" value={room.mainsVolts} quantity={plainQuantity('V', 5)} change={(mainsVolts) => (plan) => changeRoom(plan, { mainsVolts })} />
      </div>
      {circuits.map(([id, circuit]) => (
        <div key={id} className="panel-grid">
          <TextField label="Circuit" value={circuit.label} maxLength={120} disabled={!mayEdit} onDone={(label) => edit((plan) => changeCircuit(plan, id, { label }))} />
          <QuantityField
            label={`Breaker; plan on ${Math.round(0.8 * circuit.breakerAmps * room.mainsVolts)} W`}
            value={circuit.breakerAmps}
            quantity={plainQuantity('A', 1)}
            change={(breakerAmps) => (plan) => changeCircuit(plan, id, { breakerAmps })}
          />
          {mayEdit && (
            <button type="button" className="button panel-remove" onClick={() => edit((plan) => removeCircuit(plan, id))}>
              <Trash2 size={15} aria-hidden /> Remove
            </button>
          )}
        </div>
      ))}
      {circuits.length > 0 && (
        <p className="panel-words">80 % of each breaker, as is usual; local code, the studio’s rules and licensed practice come first.</p>
      )}
      {mayEdit && (
        <button type="button" className="button button-lined panel-add" onClick={() => edit((plan) => addCircuit(plan, { label: `Circuit ${circuits.length + 1}`, breakerAmps: 16 }))}>
          <Plus size={15} aria-hidden /> Add a circuit
        </button>
      )}
    </>
  )
}
