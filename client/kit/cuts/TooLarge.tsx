import type { TooLarge, Way } from '../../../shared-core/kit/cutLayout.ts'
import type { GelCut } from '../../../shared-core/kit/gelCuts.ts'
import { changeLight } from '../../../shared-core/plan/edits/lights.ts'
import type { PlanChange } from '../../../shared-core/plan/edit.ts'
import { Choice } from '../../controls/Choice.tsx'
import { useBoard } from '../../session/useBoard.ts'
import { usePlanEdit, type MakeEdit } from '../../session/usePlanEdit.ts'
import { chooseTooLarge, useTooLarge } from '../useLayouts.ts'
import { sizeText } from './sizeText.ts'

/** A cut that fits no sheet, with each way that does. */
export function CannotRow({ cut, ways }: { readonly cut: GelCut; readonly ways: readonly Way[] }) {
  const units = useBoard((board) => board.units)
  const mayEdit = useBoard((board) => board.mayEdit)
  const edit = usePlanEdit()
  const what = cut.isSpare ? `The spare for ${cut.letters}` : cut.letters
  return (
    <div className="cuts-care">
      <p>
        <b>{what}: {sizeText(cut.longMillimetres, cut.shortMillimetres, units)} fits no sheet.</b> {ways.length === 0 ? 'Put the gel at the head, or use a smaller front.' : 'What does:'}
      </p>
      <div className="kit-row">
        {ways.map((way) => {
          switch (way.way) {
            case 'at-the-head':
              return mayEdit && !cut.isSpare && (
                <button key={way.way} type="button" className="button button-lined" onClick={() => edit(atTheHead(cut))}>
                  At the head: {sizeText(way.size.longMillimetres, way.size.shortMillimetres, units)}
                </button>
              )
            case 'roll':
              return <button key={way.way} type="button" className="button button-lined" onClick={() => chooseTooLarge(cut.gelId, 'roll')}>Off a roll</button>
            case 'join':
              return (
                <button key={way.way} type="button" className="button button-lined" onClick={() => chooseTooLarge(cut.gelId, 'join')}>
                  {way.pieces} pieces joined
                </button>
              )
          }
        })}
      </div>
      {ways.some(({ way }) => way === 'join') && <p className="page-soft">Joined with clear tape, edge to edge: the join shows on a bright box in the picture.</p>}
    </div>
  )
}

const choices = [
  { value: 'say', label: 'Sheets only' },
  { value: 'join', label: 'Joined' },
  { value: 'roll', label: 'Off a roll' },
] as const

/** Once a way was chosen, the way back. */
export function TooLargeChoice({ gelId, isAsked }: { readonly gelId: string; readonly isAsked: boolean }) {
  const choice: TooLarge = useTooLarge(gelId)
  if (isAsked || choice === 'say') return null
  return <Choice label="Cuts larger than a sheet" value={choice} options={choices} onChoose={(next) => chooseTooLarge(gelId, next)} />
}

/** In every look that uses the cut, as one edit. */
function atTheHead(cut: GelCut): MakeEdit {
  return (plan) => {
    const changes: PlanChange[] = []
    for (const { lookId, lightId } of cut.uses) {
      const one = changeLight(plan, lookId, lightId, { gelPlace: 'at-the-head' })
      if (!one.ok) return one
      changes.push(...one.edit.changes)
    }
    return { ok: true, edit: { name: 'changeLight', changes } }
  }
}
