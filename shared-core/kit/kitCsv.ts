import type { Plan } from '../plan/schema/plan.ts'
import { csvText, type Cell } from './csv.ts'
import type { GelLayout, LaidCut, LaidSheet } from './cutLayout.ts'
import type { OrderLine } from './orderLine.ts'

/** The order list for a kit house: a row a thing, a column a look. Sizes in centimetres, as sheets and boxes are ordered. */
export function orderCsv(lines: readonly OrderLine[], lookNames: readonly string[]): string {
  const head = ['Case', 'Item', 'Width cm', 'Height cm', ...lookNames, 'At once', 'Spare', 'Own', 'Missing', 'Note']
  return csvText([head, ...lines.map((line): Cell[] => [
    line.case, line.name, line.size ? centimetres(line.size.widthMetres) : '', line.size?.heightMetres ? centimetres(line.size.heightMetres) : '',
    ...line.byLook, line.needed, line.spare, line.owned ?? '', line.missing ?? '', line.note,
  ])])
}

/** The cuts, sheet by sheet: what is cut where, measured from the sheet's corner. Cuts that fit no sheet come last. */
export function cutsCsv(plan: Plan, layouts: readonly GelLayout[]): string {
  const head = ['Gel', 'Sheet', 'Sheet cm', 'Batch', 'For', 'Cut cm', 'Piece', 'From left cm', 'From top cm']
  const rows = layouts.flatMap(({ gelId, sheets, cannot }) => {
    const name = plan.gels[gelId]?.name ?? ''
    return [
      ...sheets.flatMap((sheet, index) => sheet.cuts.map((cut) => cutRow(name, sheet, index + 1, cut))),
      ...cannot.map(({ cut }): Cell[] => [
        name, 'fits no sheet', '', '', marks(cut.letters, cut.isSpare), `${cut.longMillimetres / 10} × ${cut.shortMillimetres / 10}`, '', '', '',
      ]),
    ]
  })
  return csvText([head, ...rows])
}

function cutRow(name: string, { stock }: LaidSheet, number: number, laid: LaidCut): Cell[] {
  const form = stock.isRoll ? 'Roll' : 'Sheet'
  return [
    name, `${form} ${number}${stock.isOwned ? '' : ', to buy'}`, `${stock.width / 10} × ${stock.height / 10}`, stock.batch,
    marks(laid.cut.letters, laid.cut.isSpare), `${laid.width / 10} × ${laid.height / 10}`,
    laid.pieces > 1 ? `${laid.piece} of ${laid.pieces}, joined` : '', laid.x / 10, laid.y / 10,
  ]
}

const marks = (letters: string, isSpare: boolean): string => (isSpare ? `spare for ${letters}` : letters)
const centimetres = (metres: number): number => Math.round(metres * 1_000) / 10
