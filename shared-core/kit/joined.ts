import type { CutSize } from './cutSize.ts'
import type { Item } from './packing/rectangle.ts'

/** Of the pieces of one cut; a cut of more is no longer worth taping (common practice, no source). */
const MOST_JOINED_PIECES = 6
/** Narrower strips do not hold tape (common practice, no source). */
const LEAST_STRIP_MILLIMETRES = 50

/**
 * The pieces that, laid edge to edge and joined with clear tape, make up a cut that no single sheet covers: whole ones
 * first, with the sheet laid either way round. The way of fewest pieces comes first; ways that take too many are left
 * out. Pieces' ids are the cut's with a number.
 */
export function joinedWays(cutId: string, size: CutSize, sheet: { readonly width: number; readonly height: number }): readonly (readonly Item[])[] {
  const ways = [[sheet.width, sheet.height], [sheet.height, sheet.width]] as const
  return ways.map(([along, across]) => {
    const lengths = strips(size.longMillimetres, along)
    const widths = strips(size.shortMillimetres, across)
    return lengths.flatMap((width) => widths.map((height) => ({ width, height })))
      .map((piece, index) => ({ id: `${cutId}/${index + 1}`, ...piece }))
  }).filter((pieces) => pieces.length <= MOST_JOINED_PIECES).sort((a, b) => a.length - b.length)
}

function strips(length: number, most: number): readonly number[] {
  const count = Math.ceil(length / most)
  const last = length - (count - 1) * most
  if (count === 1 || last >= LEAST_STRIP_MILLIMETRES) return [...Array.from({ length: count - 1 }, () => most), last]
  const short = most - (LEAST_STRIP_MILLIMETRES - last)
  return [...Array.from({ length: count - 2 }, () => most), short, LEAST_STRIP_MILLIMETRES]
}
