import { formatLength } from '../../../shared-core/plan/entry/length.ts'
import { formatSize } from '../../../shared-core/plan/entry/size.ts'
import type { OrderLine } from '../../../shared-core/kit/orderLine.ts'
import type { Packed } from '../../../shared-core/rig/packed.ts'
import { useRigStore } from '../../rig/useRig.ts'
import { useBoard } from '../../session/useBoard.ts'
import type { Units } from '../../session/board.ts'
import { isPacked, toPack } from './packedState.ts'

interface OrderRowProps {
  readonly line: OrderLine
  readonly lookNames: readonly string[]
  readonly entry: Packed | undefined
}

/** One thing to bring: ticked with the whole row, since it is done with a glove on. */
export function OrderRow({ line, lookNames, entry }: OrderRowProps) {
  const units = useBoard((board) => board.units)
  const mayEdit = useBoard((board) => board.mayEdit)
  const rig = useRigStore()
  const packed = isPacked(line, entry)

  function tick(on: boolean): void {
    const { write, writtenBy } = rig.getState()
    write([{ kind: 'packed', key: line.key, entry: on ? { count: toPack(line), by: writtenBy() } : null }])
  }

  return (
    <li>
      <label className="order-row" data-packed={packed}>
        <input type="checkbox" checked={packed} disabled={!mayEdit} onChange={(event) => tick(event.currentTarget.checked)} />
        <span className="order-count">{toPack(line)}</span>
        <span className="order-words">
          <span className="order-name">{line.name}{line.size === null ? '' : `, ${sizeText(line.size, units)}`}</span>
          <span className="page-soft">{[...counts(line, lookNames), line.note, ...tickWords(line, entry)].filter((words) => words !== '').join(' · ')}</span>
        </span>
        {line.missing !== null && line.missing > 0 && (
          <span className="order-missing">{line.missing} {line.case === 'Gels' ? 'to buy' : 'to hire'}</span>
        )}
      </label>
    </li>
  )
}

function counts({ case: from, needed, spare, owned, byLook }: OrderLine, lookNames: readonly string[]): readonly string[] {
  return [
    spare > 0 ? `${needed} and ${spare} spare` : '',
    byLookWords(byLook, lookNames),
    owned === null ? '' : from === 'Gels' ? `${owned} from the drawer` : `own ${owned}`,
  ]
}

/** Says the exception, whichever is shorter: "not in Look 2", "only in Look 2", "3 in Look 2". */
function byLookWords(byLook: readonly number[], lookNames: readonly string[]): string {
  const most = Math.max(...byLook)
  const named = (keep: (count: number) => boolean) => lookNames.filter((_, index) => keep(byLook[index]!)).join(' and ')
  const fewer = [...new Set(byLook)].filter((count) => count < most).sort((a, b) => b - a)
  if (fewer.length === 0) return ''
  const isRare = byLook.filter((count) => count === most).length <= byLook.length / 2
  if (isRare && fewer.length === 1) return `${fewer[0] === 0 ? 'only' : most} in ${named((count) => count === most)}${fewer[0] === 0 ? '' : `, else ${fewer[0]}`}`
  return fewer.map((count) => `${count === 0 ? 'not' : count} in ${named((other) => other === count)}`).join(', ')
}

function tickWords(line: OrderLine, entry: Packed | undefined): readonly string[] {
  if (entry === undefined) return []
  return [isPacked(line, entry) ? `packed by ${entry.by.name}` : `${entry.count} packed by ${entry.by.name}, ${toPack(line)} needed by now`]
}

function sizeText({ widthMetres, heightMetres }: NonNullable<OrderLine['size']>, units: Units): string {
  return heightMetres === null ? `${formatLength(widthMetres, units)} wide` : formatSize(widthMetres, heightMetres, units)
}
