import type { LaidSheet } from '../../../shared-core/kit/cutLayout.ts'
import { newId } from '../../../shared-core/plan/newId.ts'
import type { RigEdit } from '../../../shared-core/rig/rig.ts'
import { useRig, useRigStore } from '../../rig/useRig.ts'
import { useBoard } from '../../session/useBoard.ts'

/** Puts what is left in the drawer in the sheet's place, once it has been cut. Only for sheets entered one by one. */
export function CutDone({ sheet, gelId, name }: { readonly sheet: LaidSheet; readonly gelId: string; readonly name: string }) {
  const mayEdit = useBoard((board) => board.mayEdit)
  const isReal = useRig(({ rig }) => Object.hasOwn(rig.sheets, sheet.stock.id))
  const rig = useRigStore()
  if (!mayEdit || !isReal) return null

  function keepRest(): void {
    const { batch, hoursUsed, id, isRoll } = sheet.stock
    const rest = sheet.offcuts.map((offcut): RigEdit => {
      const isRollsRest = isRoll && offcut.y >= sheet.usedHeight
      return {
        kind: 'sheets', key: isRollsRest ? id : newId(),
        entry: { gelId, form: isRollsRest ? 'roll' : 'sheet', widthMetres: offcut.width / 1_000, heightMetres: offcut.height / 1_000, batch, hoursUsed },
      }
    })
    const isGone = !rest.some(({ key }) => key === id)
    rig.getState().write([...(isGone ? [{ kind: 'sheets', key: id, entry: null } as const] : []), ...rest])
  }

  return (
    <button type="button" className="button button-lined" onClick={keepRest} aria-label={`${name} is cut: keep what is left in the drawer`}>
      It is cut: keep what is left
    </button>
  )
}
