import type { ReactNode } from 'react'
import { NumberField } from '../../controls/NumberField.tsx'
import { usePlanEdit } from '../../session/usePlanEdit.ts'
import { useBoard } from '../../session/useBoard.ts'
import { formatNumber, parseNumber, stepNumber, type NumberRow } from './numbers.ts'
import './list.css'

/** One thing in the list. */
export interface TableColumn<Item> {
  readonly id: string
  /** What its column is headed with. */
  readonly heading: ReactNode
  /** Its name as read out before each of its numbers. */
  readonly name: string
  readonly item: Item
}

interface NumbersTableProps<Item> {
  readonly caption: string
  readonly columns: readonly TableColumn<Item>[]
  readonly rows: readonly NumberRow<Item>[]
  /** Rows before the numbers whose cells are of their own making, such as switches. */
  readonly firstRows?: readonly { readonly label: string; readonly cellOf: (column: TableColumn<Item>) => ReactNode }[]
}

/** Things side by side, their numbers below one another, each to be typed or stepped. */
export function NumbersTable<Item>({ caption, columns, rows, firstRows = [] }: NumbersTableProps<Item>) {
  const units = useBoard((board) => board.units)
  const mayEdit = useBoard((board) => board.mayEdit)
  const because = useBoard((board) => board.mayNotBecause)
  const write = usePlanEdit()
  if (columns.length === 0) return null
  return (
    <div className="floor-table-scroll">
      <table className="floor-table">
        <caption>{caption}</caption>
        <thead>
          <tr>
            <td />
            {columns.map((column) => <th key={column.id} scope="col">{column.heading}</th>)}
          </tr>
        </thead>
        <tbody>
          {firstRows.map(({ label, cellOf }) => (
            <tr key={label}>
              <th scope="row">{label}</th>
              {columns.map((column) => <td key={column.id}>{cellOf(column)}</td>)}
            </tr>
          ))}
          {rows.map((row) => (
            <tr key={row.label}>
              <th scope="row">{row.label}</th>
              {columns.map((column) => {
                const number = row.numberOf(column.item)
                if (number === null) return <td key={column.id} className="floor-table-none">–</td>
                return (
                  <td key={column.id}>
                    <NumberField
                      label={`${column.name}: ${row.spoken}`}
                      labelHidden
                      value={number.value}
                      format={formatNumber(number, units)}
                      parse={parseNumber(number, units)}
                      step={stepNumber(number)}
                      onHold={(value) => write.hold(value === null ? null : (plan, lookId) => number.edit(plan, lookId, value))}
                      onDone={(value) => write((plan, lookId) => number.edit(plan, lookId, value))}
                      disabled={!mayEdit}
                      because={because}
                    />
                  </td>
                )
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}
