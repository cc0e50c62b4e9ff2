import { fillSheet, habits, type Filled, type Habit } from './fillSheet.ts'
import { areaOf, fitsIn, type Item, type Placed } from './rectangle.ts'

/** A sheet, an offcut or a roll to cut from. A roll's height is its length. */
export interface Stock {
  readonly id: string
  readonly width: number
  readonly height: number
  readonly isRoll: boolean
}

export interface PackedSheet {
  readonly stock: Stock
  readonly placed: readonly Placed[]
  /** Of a roll: what is cut off it before anything else. Of a sheet: all of it. */
  readonly usedHeight: number
}

export interface Packing {
  readonly sheets: readonly PackedSheet[]
  readonly left: readonly Item[]
}

/**
 * Places items on the sheets in hand, and on as many new ones as it takes. Many ways of working are tried, and for each
 * sheet alone as well as throughout; the one with the least left over, then the least area of gel begun, is kept. What fits nothing stays `left`. Sheets are taken in the order given; `newSheet` may be null.
 */
export function packSheets(inHand: readonly Stock[], newSheet: Stock | null, items: readonly Item[]): Packing {
  const onRoll = remembered(shortestLength)
  const packings = [...habits.map(pickByHabit), pickFullest].map((pick) =>
    packWith(inHand, newSheet, items, (stock, left) => (stock.isRoll ? onRoll(stock, left) : pick(stock, left))))
  return packings.reduce((best, one) => (isBetter(one, best) ? one : best))
}

type Pick = (stock: Stock, items: readonly Item[]) => Filled

const pickByHabit = (habit: Habit): Pick => (stock, items) => fillSheet(stock, items, habit)

const pickFullest: Pick = (stock, items) => {
  const filled = habits.map((habit) => fillSheet(stock, items, habit))
  return filled.reduce((best, one) => (placedArea(one) > placedArea(best) ? one : best))
}

function packWith(inHand: readonly Stock[], newSheet: Stock | null, items: readonly Item[], pick: Pick): Packing {
  const sheets: PackedSheet[] = []
  let left = items
  for (const stock of inHand) {
    if (left.length === 0) break
    left = begin(sheets, stock, left, pick)
  }
  const canBeNew = left.filter((item) => newSheet !== null && fitsIn(item, newSheet))
  const cannot = left.filter((item) => !canBeNew.includes(item))
  left = canBeNew
  for (let number = 1; left.length > 0 && newSheet !== null; number++) {
    left = begin(sheets, { ...newSheet, id: `${newSheet.id}.${number}` }, left, pick)
  }
  return { sheets, left: cannot }
}

function begin(sheets: PackedSheet[], stock: Stock, items: readonly Item[], pick: Pick): readonly Item[] {
  const filled = pick(stock, items)
  if (filled.placed.length === 0) return items
  const end = Math.max(...filled.placed.map(({ y, height }) => y + height))
  sheets.push({ stock, placed: filled.placed, usedHeight: stock.isRoll ? end : stock.height })
  return filled.left
}

/** Of a roll, the shortest length that holds all that fit on it; found by trying every habit at ever shorter lengths. */
function shortestLength(roll: Stock, items: readonly Item[]): Filled {
  const able = items.filter((item) => fitsIn(item, roll))
  const other = items.filter((item) => !able.includes(item))
  let best = pickFullest(roll, able)
  if (best.left.length === 0 && able.length > 0) {
    let [tooShort, length] = [Math.floor(areaSum(able) / roll.width) - 1, roll.height]
    while (length - tooShort > 1) {
      const middle = Math.floor((tooShort + length) / 2)
      const filled = pickFullest({ ...roll, height: middle }, able)
      if (filled.left.length === 0) [best, length] = [filled, middle]
      else tooShort = middle
    }
  }
  return { placed: best.placed, left: [...best.left, ...other] }
}

/** The way of working does not matter to a roll, so the same items need to be tried on it once only. */
function remembered(pick: Pick): Pick {
  const known = new Map<string, Filled>()
  return (stock, items) => {
    const key = [stock.id, ...items.map(({ id }) => id).sort()].join(' ')
    const filled = known.get(key) ?? pick(stock, items)
    known.set(key, filled)
    return filled
  }
}

function isBetter(one: Packing, best: Packing): boolean {
  const fewer = areaSum(best.left) - areaSum(one.left)
  return fewer !== 0 ? fewer > 0 : begunArea(one) < begunArea(best)
}

/** What is begun anew beyond what is in hand counts here, too: it is begun only when that is full. */
function begunArea({ sheets }: Packing): number {
  return sheets.reduce((sum, { stock, usedHeight }) => sum + stock.width * usedHeight, 0)
}

const placedArea = ({ placed }: Filled): number => placed.reduce((sum, one) => sum + areaOf(one), 0)
const areaSum = (items: readonly Item[]): number => items.reduce((sum, item) => sum + areaOf(item), 0)
