import qrcode from 'qrcode-generator'
import type { Paper } from './paper.ts'

/** Light round a mark, in modules (ISO/IEC 18004 asks for four). */
const QUIET_MODULES = 4

/** Draws a QR code with its quiet zone inside a square. Medium error correction: a torn edge or a thumb on it may be missing. */
export function drawScanMark(paper: Paper, address: string, x: number, y: number, size: number): void {
  const code = qrcode(0, 'M')
  code.addData(address, 'Byte')
  code.make()
  const count = code.getModuleCount()
  const module = size / (count + 2 * QUIET_MODULES)
  const squares: { x: number; y: number; width: number; height: number }[] = []
  for (let row = 0; row < count; row++) {
    for (let column = 0; column < count; column++) {
      if (!code.isDark(row, column)) continue
      let run = 1
      while (column + run < count && code.isDark(row, column + run)) run++
      squares.push({ x: x + (QUIET_MODULES + column) * module, y: y + (QUIET_MODULES + row) * module, width: run * module, height: module })
      column += run - 1
    }
  }
  paper.marks.push({ kind: 'squares', squares })
}
