import { Plus, Trash2 } from 'lucide-react'
import { addColumn, changeColumn, removeColumn } from '../../../shared-core/plan/edits/room.ts'
import type { Room } from '../../../shared-core/plan/schema/room.ts'
import { TextField } from '../../controls/TextField.tsx'
import { useBoard } from '../../session/useBoard.ts'
import { usePlanEdit, type MakeEdit } from '../../session/usePlanEdit.ts'
import { LengthField } from '../planFields.tsx'

type Column = Room['columns'][string]

/** Columns that stand in the way, each by its centre and its size. */
export function RoomColumns({ columns }: { readonly columns: Room['columns'] }) {
  const mayEdit = useBoard((board) => board.mayEdit)
  const edit = usePlanEdit()
  return (
    <>
      {Object.entries(columns).map(([id, column]) => {
        const set = (key: 'xMetres' | 'yMetres' | 'widthMetres' | 'depthMetres') => (metres: number): MakeEdit => (plan) => changeColumn(plan, id, { [key]: metres })
        return (
          <fieldset key={id} className="panel-place">
            <legend>{column.label === '' ? 'Column' : column.label}</legend>
            <div className="panel-grid">
              <TextField label="Name" value={column.label} maxLength={120} disabled={!mayEdit} onDone={(label) => edit((plan) => changeColumn(plan, id, { label }))} />
              <LengthField label="To camera right" value={column.xMetres} change={set('xMetres')} />
              <LengthField label="Towards the backdrop" value={column.yMetres} change={set('yMetres')} />
              <LengthField label="Width" value={column.widthMetres} change={set('widthMetres')} />
              <LengthField label="Depth" value={column.depthMetres} change={set('depthMetres')} />
              {mayEdit && (
                <button type="button" className="button panel-remove" onClick={() => edit((plan) => removeColumn(plan, id))}>
                  <Trash2 size={15} aria-hidden /> Remove
                </button>
              )}
            </div>
          </fieldset>
        )
      })}
      {mayEdit && (
        <button type="button" className="button button-lined panel-add" onClick={() => edit((plan) => addColumn(plan, nextColumn(columns)))}>
          <Plus size={15} aria-hidden /> Add a column
        </button>
      )}
    </>
  )
}

function nextColumn(columns: Room['columns']): Column {
  return { label: `Column ${Object.keys(columns).length + 1}`, xMetres: 1.5, yMetres: 1, widthMetres: 0.4, depthMetres: 0.4 }
}
