import type { PaperPoint } from './paper.ts'

/** How gels are told apart without colour: by the way their lines run, and how close. */
export interface Hatch {
  readonly degrees: number
  readonly gap: number
  readonly crossed: boolean
}

const HATCHES: readonly Hatch[] = [
  { degrees: 45, gap: 3, crossed: false }, { degrees: 45, gap: 3.6, crossed: true }, { degrees: 90, gap: 2.6, crossed: false },
  { degrees: 0, gap: 2.6, crossed: false }, { degrees: -45, gap: 3, crossed: false }, { degrees: 0, gap: 3.4, crossed: true },
  { degrees: 45, gap: 5, crossed: false }, { degrees: 0, gap: 5, crossed: false },
]

/** The n-th gel's; past the eighth they come again, and the name beside each tells them apart. */
export function hatchOf(index: number): Hatch {
  return HATCHES[index % HATCHES.length]!
}

/** The lines of a hatch inside a convex outline. */
export function hatchLines(outline: readonly PaperPoint[], hatch: Hatch): readonly (readonly [PaperPoint, PaperPoint])[] {
  const once = linesAt(outline, hatch.degrees, hatch.gap)
  return hatch.crossed ? [...once, ...linesAt(outline, hatch.degrees + 90, hatch.gap)] : once
}

function linesAt(outline: readonly PaperPoint[], degrees: number, gap: number): (readonly [PaperPoint, PaperPoint])[] {
  const angle = (degrees * Math.PI) / 180
  const along: PaperPoint = [Math.cos(angle), Math.sin(angle)]
  const across: PaperPoint = [-along[1], along[0]]
  const distances = outline.map(([x, y]) => x * across[0] + y * across[1])
  const lines: (readonly [PaperPoint, PaperPoint])[] = []
  for (let at = Math.ceil(Math.min(...distances) / gap) * gap; at < Math.max(...distances); at += gap) {
    const ends = outline.flatMap((point, i): PaperPoint[] => {
      const next = outline[(i + 1) % outline.length]!
      const [here, there] = [distances[i]! - at, distances[(i + 1) % outline.length]! - at]
      if ((here < 0) === (there < 0)) return []
      const share = here / (here - there)
      return [[point[0] + share * (next[0] - point[0]), point[1] + share * (next[1] - point[1])]]
    })
    if (ends.length === 2) lines.push([ends[0]!, ends[1]!])
  }
  return lines
}
