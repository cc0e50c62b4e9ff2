import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { knifeLines } from '../../shared-core/kit/packing/knifeLines.ts'
import { packSheets, type PackedSheet, type Stock } from '../../shared-core/kit/packing/packSheets.ts'
import type { Placed, Rectangle } from '../../shared-core/kit/packing/rectangle.ts'

const sheet: Stock = { id: 'new', width: 500, height: 600, isRoll: false }
const roll: Stock = { id: 'roll', width: 1_220, height: 7_620, isRoll: true }

const items = fc.array(fc.record({ width: fc.integer({ min: 50, max: 700 }), height: fc.integer({ min: 50, max: 700 }) }), { minLength: 1, maxLength: 12 })
  .map((sizes) => sizes.map((size, index) => ({ id: `cut-${index}`, ...size })))
const offcuts = fc.array(fc.record({ width: fc.integer({ min: 80, max: 500 }), height: fc.integer({ min: 80, max: 600 }) }), { maxLength: 3 })
  .map((sizes): Stock[] => sizes.map((size, index) => ({ id: `offcut-${index}`, isRoll: false, ...size })))

function overlap(a: Rectangle, b: Rectangle): boolean {
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height
}

/** The definition itself, apart from the program: some straight line from edge to edge misses every piece, on both sides again. */
function knifeReaches(region: Rectangle, placed: readonly Rectangle[]): boolean {
  if (placed.length === 0) return true
  const isCut = (a: Rectangle, b: Rectangle) => knifeReaches(a, within(placed, a)) && knifeReaches(b, within(placed, b))
  for (const piece of placed) {
    for (const x of [piece.x, piece.x + piece.width]) {
      if (x <= region.x || x >= region.x + region.width || placed.some((other) => other.x < x && x < other.x + other.width)) continue
      return isCut({ ...region, width: x - region.x }, { ...region, x, width: region.x + region.width - x })
    }
    for (const y of [piece.y, piece.y + piece.height]) {
      if (y <= region.y || y >= region.y + region.height || placed.some((other) => other.y < y && y < other.y + other.height)) continue
      return isCut({ ...region, height: y - region.y }, { ...region, y, height: region.y + region.height - y })
    }
  }
  return placed.length === 1 && placed[0]!.width === region.width && placed[0]!.height === region.height
}

function within(placed: readonly Rectangle[], region: Rectangle): readonly Rectangle[] {
  return placed.filter((piece) => piece.x >= region.x && piece.y >= region.y &&
    piece.x + piece.width <= region.x + region.width && piece.y + piece.height <= region.y + region.height)
}

function expectSound({ stock, placed, usedHeight }: PackedSheet): void {
  const region = { x: 0, y: 0, width: stock.width, height: usedHeight }
  expect(usedHeight).toBeLessThanOrEqual(stock.height)
  expect(within(placed, region)).toHaveLength(placed.length)
  placed.forEach((one, index) => placed.slice(index + 1).forEach((other) => expect(overlap(one, other)).toBe(false)))
  expect(knifeReaches(region, placed)).toBe(true)
}

const sorted = ({ width, height }: { width: number; height: number }) => [width, height].sort((a, b) => a - b)

describe('cuts on sheets', () => {
  it('never overlap, stay on the sheet, keep their size, are all there once, and a straight knife gets them', () => {
    fc.assert(fc.property(items, offcuts, fc.boolean(), (wanted, inHand, hasRoll) => {
      const packing = packSheets([...inHand, ...(hasRoll ? [roll] : [])], sheet, wanted)
      packing.sheets.forEach(expectSound)
      const placed = packing.sheets.flatMap((one) => one.placed)
      const ids = [...placed, ...packing.left].map(({ id }) => id).sort()
      expect(ids).toEqual(wanted.map(({ id }) => id).sort())
      for (const piece of placed) expect(sorted(piece)).toEqual(sorted(wanted.find(({ id }) => id === piece.id)!))
      // What is left over fits nothing at all; a roll of this length holds a dozen of these.
      for (const left of packing.left) {
        const [short, long] = sorted(left) as [number, number]
        expect(hasRoll || short > 500 || long > 600).toBe(true)
        expect(hasRoll).toBe(false)
      }
    }), { numRuns: 120, seed: 7 })
  })

  it('no sheet is begun without need: fewer sheets would be smaller than the cuts together', () => {
    fc.assert(fc.property(fc.integer({ min: 1, max: 9 }), (count) => {
      const quarters = Array.from({ length: count }, (_, index) => ({ id: `q${index}`, width: 250, height: 300 }))
      expect(packSheets([], sheet, quarters).sheets).toHaveLength(Math.ceil(count / 4))
    }), { seed: 7 })
  })

  it('offcuts are used before whole sheets, and whole ones before new', () => {
    const inHand: Stock[] = [{ id: 'offcut', width: 260, height: 310, isRoll: false }, { id: 'whole', width: 500, height: 600, isRoll: false }]
    const packing = packSheets(inHand, sheet, [1, 2, 3].map((n) => ({ id: `q${n}`, width: 250, height: 300 })))
    expect(packing.sheets.map(({ stock }) => stock.id)).toEqual(['offcut', 'whole'])
  })

  /**
   * Hopper and Turton, European Journal of Operational Research 128 (2001) 34-57, problem C1-P1: sixteen pieces that
   * make up a square of 20 exactly, so no strip of width 20 is shorter than 20.
   */
  it('a published strip of known least length is met within a tenth', () => {
    const sizes = [
      [2, 12], [7, 12], [8, 6], [3, 6], [3, 5], [5, 5], [3, 12], [3, 7], [5, 7], [2, 6], [3, 2], [4, 2], [3, 4], [4, 4], [9, 2], [11, 2],
    ] as const
    const pieces = sizes.map(([width, height], index) => ({ id: `p${index}`, width, height }))
    expect(pieces.reduce((sum, { width, height }) => sum + width * height, 0)).toBe(400)
    const { sheets: [strip], left } = packSheets([{ id: 'strip', width: 20, height: 100, isRoll: true }], null, pieces)
    expect(left).toEqual([])
    expectSound(strip!)
    expect(strip!.usedHeight).toBeGreaterThanOrEqual(20)
    expect(strip!.usedHeight).toBeLessThanOrEqual(22)
  })
})

describe('the order of the knife', () => {
  it('leaves just the pieces and the offcuts, which together make up the sheet', () => {
    fc.assert(fc.property(items, (wanted) => {
      for (const { stock, placed, usedHeight } of packSheets([], sheet, wanted).sheets) {
        const work = knifeLines({ x: 0, y: 0, width: stock.width, height: usedHeight }, placed)!
        const parts = [...placed, ...work.offcuts]
        expect(parts.reduce((sum, { width, height }) => sum + width * height, 0)).toBe(stock.width * usedHeight)
        parts.forEach((one, index) => parts.slice(index + 1).forEach((other) => expect(overlap(one, other)).toBe(false)))
        expect(fewestParts(stock, work.lines)).toBe(parts.length)
      }
    }), { numRuns: 60, seed: 11 })
  })

  it('cuts off first what leaves the largest piece whole', () => {
    const work = knifeLines({ x: 0, y: 0, width: 500, height: 600 }, [{ id: 'cut', x: 0, y: 0, width: 300, height: 300 }])!
    // Beside it 200 × 600 or above it 500 × 300 could be left whole: the second is larger.
    expect(work.offcuts).toEqual([{ x: 0, y: 300, width: 500, height: 300 }, { x: 300, y: 0, width: 200, height: 300 }])
    expect(work.lines[0]).toEqual({ x1: 0, y1: 300, x2: 500, y2: 300 })
  })

  it('gives up on a pinwheel, which no straight knife can cut', () => {
    const pinwheel: Placed[] = [
      { id: 'a', x: 0, y: 0, width: 2, height: 1 }, { id: 'b', x: 2, y: 0, width: 1, height: 2 },
      { id: 'c', x: 1, y: 2, width: 2, height: 1 }, { id: 'd', x: 0, y: 1, width: 1, height: 2 },
    ]
    const square = { x: 0, y: 0, width: 3, height: 3 }
    expect(knifeReaches(square, pinwheel)).toBe(false)
    expect(knifeLines(square, pinwheel)).toBeNull()
  })
})

/** Cuts a sheet as told, line by line: each line has to run from edge to edge of a part there is by then. */
function fewestParts(stock: Stock, lines: readonly { x1: number; y1: number; x2: number; y2: number }[]): number {
  const parts: Rectangle[] = [{ x: 0, y: 0, width: stock.width, height: stock.height }]
  for (const { x1, y1, x2, y2 } of lines) {
    const at = parts.findIndex((part) => (x1 === x2
      ? x1 > part.x && x1 < part.x + part.width && y1 === part.y && y2 === part.y + part.height
      : y1 > part.y && y1 < part.y + part.height && x1 === part.x && x2 === part.x + part.width))
    expect(at).toBeGreaterThanOrEqual(0)
    const part = parts[at]!
    parts.splice(at, 1, ...(x1 === x2
      ? [{ ...part, width: x1 - part.x }, { ...part, x: x1, width: part.x + part.width - x1 }]
      : [{ ...part, height: y1 - part.y }, { ...part, y: y1, height: part.y + part.height - y1 }]))
  }
  return parts.length
}
