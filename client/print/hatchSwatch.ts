import { hatchLines, type Hatch } from './hatch.ts'
import type { Paper, PaperPoint } from './paper.ts'

/** A square of a gel's hatch, to stand beside its name. */
export function hatchSwatch(paper: Paper, x: number, y: number, size: number, hatch: Hatch): void {
  const outline: PaperPoint[] = [[x, y], [x + size, y], [x + size, y + size], [x, y + size]]
  paper.area(outline, 1, 0, 0.6)
  for (const line of hatchLines(outline, hatch)) paper.line(line, 0.5)
}
