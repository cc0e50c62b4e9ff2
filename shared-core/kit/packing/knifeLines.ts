import { areaOf, type Placed, type Rectangle } from './rectangle.ts'

/** One straight cut from edge to edge of the piece in hand. */
export interface KnifeLine {
  readonly x1: number
  readonly y1: number
  readonly x2: number
  readonly y2: number
}

export interface KnifeWork {
  /** In the order of cutting. */
  readonly lines: readonly KnifeLine[]
  /** What is left between the cuts, the largest first. */
  readonly offcuts: readonly Rectangle[]
}

/**
 * In which order a knife cuts the pieces out of a region by straight lines from edge to edge. Each time that line comes
 * first which sets free the largest empty piece, so that offcuts stay large. Null when no such order exists.
 */
export function knifeLines(region: Rectangle, placed: readonly Placed[]): KnifeWork | null {
  const only = placed[0]
  if (only === undefined) return { lines: [], offcuts: [region] }
  if (placed.length === 1 && areaOf(only) === areaOf(region)) return { lines: [], offcuts: [] }
  const division = divisionsOf(region, placed).sort((a, b) => b.freed - a.freed || areaOf(b.one) - areaOf(a.one))[0]
  if (division === undefined) return null
  const { line, one, other } = division
  const [first, second] = [one, other].map((part) => knifeLines(part, placed.filter((piece) => isInside(piece, part))))
  if (!first || !second) return null
  return {
    lines: [line, ...first.lines, ...second.lines],
    offcuts: [...first.offcuts, ...second.offcuts].sort((a, b) => areaOf(b) - areaOf(a)),
  }
}

interface RegionDivision {
  readonly line: KnifeLine
  readonly one: Rectangle
  readonly other: Rectangle
  /** Area of an empty side; 0 with pieces on both. */
  readonly freed: number
}

function divisionsOf(region: Rectangle, placed: readonly Placed[]): RegionDivision[] {
  const { x, y, width, height } = region
  const upright = edges(placed, (piece) => [piece.x, piece.x + piece.width], x, x + width)
    .filter((at) => placed.every((piece) => piece.x + piece.width <= at || piece.x >= at))
    .map((at) => divided(placed, { x1: at, y1: y, x2: at, y2: y + height },
      { ...region, width: at - x }, { ...region, x: at, width: x + width - at }))
  const level = edges(placed, (piece) => [piece.y, piece.y + piece.height], y, y + height)
    .filter((at) => placed.every((piece) => piece.y + piece.height <= at || piece.y >= at))
    .map((at) => divided(placed, { x1: x, y1: at, x2: x + width, y2: at },
      { ...region, height: at - y }, { ...region, y: at, height: y + height - at }))
  return [...upright, ...level]
}

function edges(placed: readonly Placed[], of: (piece: Placed) => readonly number[], from: number, to: number): number[] {
  return [...new Set(placed.flatMap(of))].filter((at) => at > from && at < to)
}

function divided(placed: readonly Placed[], line: KnifeLine, one: Rectangle, other: Rectangle): RegionDivision {
  const empty = [one, other].filter((part) => !placed.some((piece) => isInside(piece, part)))
  return { line, one, other, freed: empty.reduce((sum, part) => sum + areaOf(part), 0) }
}

function isInside(piece: Rectangle, part: Rectangle): boolean {
  return piece.x >= part.x && piece.y >= part.y &&
    piece.x + piece.width <= part.x + part.width && piece.y + piece.height <= part.y + part.height
}
