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
          <span className="kit-soft">{[...counts(line, lookNames), line.note, ...tickWords(line, entry)].filter((words) => words !== '').join(' · ')}</span>
        </span>
        {line.missing !== null && line.missing > 0 && (
          <span className="order-missing">{line.missing} {line.case === 'Gels' ? 'to buy' : 'to hire'}</span>
        )}
      </label>
    </li>
  )
}

function counts({ needed, spare, owned, byLook }: OrderLine, lookNames: readonly string[]): readonly string[] {
  const differs = new Set(byLook).size > 1
  return [
    spare > 0 ? `${needed} and ${spare} spare` : '',
    differs ? byLook.map((count, index) => `${lookNames[index]}: ${count}`).join(', ') : '',
    owned === null ? '' : `own ${owned}`,
  ]
}

function tickWords(line: OrderLine, entry: Packed | undefined): readonly string[] {
  if (entry === undefined) return []
  return [isPacked(line, entry) ? `packed by ${entry.by.name}` : `${entry.count} packed by ${entry.by.name}, ${toPack(line)} needed by now`]
}

function sizeText({ widthMetres, heightMetres }: NonNullable<OrderLine['size']>, units: Units): string {
  return heightMetres === null ? `${formatLength(widthMetres, units)} wide` : formatSize(widthMetres, heightMetres, units)
}
