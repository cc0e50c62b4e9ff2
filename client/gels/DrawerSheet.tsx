import { Trash2 } from 'lucide-react'
import { changeGel, removeGel } from '../../shared-core/plan/edits/kit.ts'
import type { Gel } from '../../shared-core/plan/schema/kit.ts'
import { Stepper } from '../controls/Stepper.tsx'
import { usePlanEdit } from '../session/usePlanEdit.ts'
import { useBoard } from '../session/useBoard.ts'

/** How many of a sheet there are, and taking it out of the drawer. */
export function DrawerSheet({ gelId, gel }: { readonly gelId: string; readonly gel: Gel }) {
  const mayEdit = useBoard((board) => board.mayEdit)
  const edit = usePlanEdit()
  if (!mayEdit) return null
  return (
    <div className="drawer-sheet">
      <Stepper
        label={`Sheets of ${gel.name}`}
        stepWords="by one"
        atLowest={gel.sheets === 0}
        onStep={(direction) => edit((plan) => changeGel(plan, gelId, { sheets: Math.max(0, gel.sheets + direction) }))}
      >
        <output>{gel.sheets}</output>
      </Stepper>
      <button type="button" className="button button-bare" aria-label={`Take ${gel.name} out of the drawer`} onClick={() => edit((plan) => removeGel(plan, gelId))}>
        <Trash2 size={15} aria-hidden />
      </button>
    </div>
  )
}
