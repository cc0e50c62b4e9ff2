import { Plus, Trash2 } from 'lucide-react'
import { newId } from '../../../shared-core/plan/newId.ts'
import type { Appliance } from '../../../shared-core/rig/appliances.ts'
import { NumberField } from '../../controls/NumberField.tsx'
import { Switch } from '../../controls/Switch.tsx'
import { TextField } from '../../controls/TextField.tsx'
import { plainQuantity } from '../../panels/quantities.ts'
import { useRig, useRigStore } from '../../rig/useRig.ts'
import { useBoard } from '../../session/useBoard.ts'

/** What usually hangs on a studio's circuits besides the heads; the label on the thing itself rules (common practice, no source). */
const usual: readonly Pick<Appliance, 'name' | 'watts'>[] = [
  { name: 'Steamer', watts: 2_000 }, { name: 'Hair dryer', watts: 2_000 }, { name: 'Kettle', watts: 2_000 }, { name: 'Tether station', watts: 300 },
]

const watts = plainQuantity('W', 100)

/** Steamer, dryer, kettle and the tether station: what they draw, and whether they are on. */
export function ApplianceList() {
  const appliances = useRig(({ rig }) => rig.appliances)
  const mayEdit = useBoard((board) => board.mayEdit)
  const rig = useRigStore()
  const add = (one: Pick<Appliance, 'name' | 'watts'>) =>
    rig.getState().write([{ kind: 'appliances', key: newId(), entry: { ...one, circuitId: '', on: true, apart: true } }])
  return (
    <section className="page-panel kit-card" aria-label="What else is plugged in">
      <h3>What else is plugged in</h3>
      {Object.entries(appliances).map(([id, entry]) => <ApplianceFields key={id} id={id} entry={entry} />)}
      {mayEdit && (
        <div className="kit-row">
          {usual.map((one) => (
            <button key={one.name} type="button" className="button button-lined" onClick={() => add(one)}>
              <Plus size={15} aria-hidden /> {one.name}
            </button>
          ))}
        </div>
      )}
      <p className="page-soft">Watts are on the label of each. Steamers, dryers and kettles want a circuit to themselves, and no water near blocks and cables.</p>
    </section>
  )
}

function ApplianceFields({ id, entry }: { readonly id: string; readonly entry: Appliance }) {
  const mayEdit = useBoard((board) => board.mayEdit)
  const rig = useRigStore()
  const set = (patch: Partial<Appliance>) => rig.getState().write([{ kind: 'appliances', key: id, entry: { ...entry, ...patch } }])
  return (
    <div className="appliance" role="group" aria-label={entry.name}>
      <TextField label="Name" value={entry.name} maxLength={120} disabled={!mayEdit} onDone={(name) => set({ name })} />
      <NumberField
        label="Draws" value={entry.watts} format={watts.format} parse={watts.parse} step={watts.step} disabled={!mayEdit}
        onDone={(value) => set({ watts: Math.min(20_000, Math.max(1, value)) })}
      />
      <Switch label="Switched on" on={entry.on} disabled={!mayEdit} onTurn={(on) => set({ on })} />
      <Switch label="Apart from heads" on={entry.apart} disabled={!mayEdit} onTurn={(apart) => set({ apart })} />
      {mayEdit && (
        <button type="button" className="button button-bare" aria-label={`Remove ${entry.name}`} onClick={() => rig.getState().write([{ kind: 'appliances', key: id, entry: null }])}>
          <Trash2 size={16} aria-hidden />
        </button>
      )}
    </div>
  )
}
