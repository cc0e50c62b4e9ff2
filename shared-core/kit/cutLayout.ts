import type { Plan } from '../plan/schema/plan.ts'
import type { GelSheet } from '../rig/sheets.ts'
import { usualCut, type CutSize } from './cutSize.ts'
import type { GelCut } from './gelCuts.ts'
import { newRoll, newSheet, ROLL_LENGTH_MILLIMETRES, ROLL_WIDTH_MILLIMETRES, stockOf, type GelStock } from './gelStock.ts'
import { joinedWays } from './joined.ts'
import { knifeLines, type KnifeLine } from './packing/knifeLines.ts'
import { packSheets, type PackedSheet } from './packing/packSheets.ts'
import { fitsIn, type Item, type Rectangle } from './packing/rectangle.ts'

/** What is done about a cut that no sheet covers: it is only said, it is joined, or a roll is bought. */
export type TooLarge = 'say' | 'join' | 'roll'

export interface LaidCut extends Rectangle {
  readonly cut: GelCut
  /** Of a joined cut: which piece of how many. 1 of 1 for a whole one. */
  readonly piece: number
  readonly pieces: number
}

export interface LaidSheet {
  readonly stock: GelStock
  /** Millimetres; of a roll, what is cut off it first. */
  readonly usedHeight: number
  readonly cuts: readonly LaidCut[]
  readonly lines: readonly KnifeLine[]
  /** Worth keeping, the largest first. */
  readonly offcuts: readonly Rectangle[]
}

/** A way that a cut too large for a sheet can be done. */
export type Way =
  | { readonly way: 'roll' }
  | { readonly way: 'join'; readonly pieces: number }
  | { readonly way: 'at-the-head'; readonly size: CutSize }

export interface GelLayout {
  readonly gelId: string
  readonly sheets: readonly LaidSheet[]
  readonly sheetsToBuy: number
  readonly rollsToBuy: number
  readonly cannot: readonly { readonly cut: GelCut; readonly ways: readonly Way[] }[]
  /** Looks in which two lights get this gel from different batches. */
  readonly mixedLookIds: readonly string[]
}

/** Smaller leftovers are scrap (common practice, no source). */
const LEAST_OFFCUT_MILLIMETRES = 100

/** Lays those of the cuts that are of one gel on what there is of it, and on new sheets where that is not enough. */
export function layOutGel(
  plan: Plan, gelId: string, allCuts: readonly GelCut[], sheets: Readonly<Record<string, GelSheet>>, tooLarge: TooLarge,
): GelLayout {
  const cuts = allCuts.filter((cut) => cut.gelId === gelId)
  const owned = stockOf(plan, gelId, sheets)
  const fresh = newSheet(plan, gelId)
  const whole = [...owned, fresh]
  const large = cuts.filter((cut) => !whole.some((stock) => fitsIn(itemOf(cut), stock)))
  const onRoll = tooLarge === 'roll' ? large.filter((cut) => fitsIn(itemOf(cut), newRoll())) : []
  const inHand = [...owned, ...(onRoll.length > 0 ? [newRoll()] : [])]
  const tried = (tooLarge === 'join' ? [0, 1] : [0]).map((way) => {
    const joined = tooLarge === 'join' ? joinedBy(way, large, fresh) : new Map<string, readonly Item[]>()
    const cannot = large.filter((cut) => !joined.has(cut.id) && !onRoll.includes(cut))
    const items = cuts.filter((cut) => !cannot.includes(cut)).flatMap((cut) => joined.get(cut.id) ?? [itemOf(cut)])
    return { joined, cannot, sheets: packed(inHand, fresh, items) }
  })
  // Of two ways to join that take as many sheets, the first has fewer pieces.
  const { joined, cannot, sheets: packedSheets } = tried.reduce((best, one) => (one.sheets.length < best.sheets.length ? one : best))
  const laid = packedSheets.map((sheet) => laidSheet(sheet, cuts, joined))
  return {
    gelId,
    sheets: laid,
    sheetsToBuy: laid.filter(({ stock }) => !stock.isOwned && !stock.isRoll).length,
    rollsToBuy: laid.filter(({ stock }) => !stock.isOwned && stock.isRoll).length,
    cannot: cannot.map((cut) => ({ cut, ways: waysFor(plan, cut, fresh) })),
    mixedLookIds: mixedLooks(laid),
  }
}

/** The pieces of every cut that can be joined, each by this way round of the sheet, or by the one way there is. */
function joinedBy(way: number, large: readonly GelCut[], fresh: GelStock): ReadonlyMap<string, readonly Item[]> {
  return new Map(large.flatMap((cut) => {
    const ways = joinedWays(cut.id, cut, fresh)
    const pieces = ways[way] ?? ways[0]
    return pieces ? [[cut.id, pieces] as const] : []
  }))
}

/** One batch throughout where that costs no more new sheets: batches of one name differ. */
function packed(inHand: readonly GelStock[], fresh: GelStock, items: readonly Item[]): readonly PackedSheet[] {
  const all = packSheets(inHand, fresh, items)
  const batches = [...new Set(inHand.map(({ batch }) => batch))]
  if (batches.length < 2 || new Set(all.sheets.map(({ stock }) => (stock as GelStock).batch)).size < 2) return all.sheets
  const newIn = (sheets: readonly PackedSheet[]) => sheets.filter(({ stock }) => !(stock as GelStock).isOwned).length
  const single = batches.map((batch) => packSheets(inHand.filter((stock) => stock.batch === batch), fresh, items))
    .find(({ sheets, left }) => newIn(sheets) === 0 && left.length === 0)
  return (single ?? all).sheets
}

function laidSheet({ stock, placed, usedHeight }: PackedSheet, cuts: readonly GelCut[], joined: ReadonlyMap<string, readonly Item[]>): LaidSheet {
  const region = { x: 0, y: 0, width: stock.width, height: usedHeight }
  const work = knifeLines(region, placed)!
  const offRoll = usedHeight < stock.height ? [{ x1: 0, y1: usedHeight, x2: stock.width, y2: usedHeight }] : []
  const rest = { x: 0, y: usedHeight, width: stock.width, height: stock.height - usedHeight }
  return {
    stock: stock as GelStock,
    usedHeight,
    cuts: placed.map(({ id, ...place }) => {
      const [cutId, piece] = id.split('/') as [string, string | undefined]
      return { ...place, cut: cuts.find((cut) => cut.id === cutId)!, piece: Number(piece ?? 1), pieces: joined.get(cutId)?.length ?? 1 }
    }),
    lines: [...offRoll, ...work.lines],
    offcuts: [...(stock.isRoll ? [rest] : []), ...work.offcuts]
      .filter(({ width, height }) => Math.min(width, height) >= LEAST_OFFCUT_MILLIMETRES),
  }
}

function waysFor(plan: Plan, cut: GelCut, fresh: GelStock): readonly Way[] {
  const isOnFront = cut.uses.some(({ gelPlace }) => gelPlace === 'over-the-front')
  const use = cut.uses[0]
  const light = use && plan.looks[use.lookId]?.lights[use.lightId]
  const pieces = joinedWays(cut.id, cut, fresh)[0]
  const atHead = usualCut(plan.modifiers[light?.modifierId ?? ''], 'at-the-head')
  return [
    ...(isOnFront && light && fitsIn(asItem(atHead), fresh) ? [{ way: 'at-the-head', size: atHead } as const] : []),
    ...(cut.shortMillimetres <= ROLL_WIDTH_MILLIMETRES && cut.longMillimetres <= ROLL_LENGTH_MILLIMETRES ? [{ way: 'roll' } as const] : []),
    ...(pieces ? [{ way: 'join', pieces: pieces.length } as const] : []),
  ]
}

function mixedLooks(sheets: readonly LaidSheet[]): readonly string[] {
  const batches = new Map<string, Set<string>>()
  for (const { stock, cuts } of sheets) {
    for (const { lookId } of cuts.flatMap(({ cut }) => cut.uses)) {
      batches.set(lookId, (batches.get(lookId) ?? new Set()).add(stock.isOwned ? stock.batch : 'to be bought'))
    }
  }
  return [...batches].filter(([, used]) => used.size > 1).map(([lookId]) => lookId)
}

const itemOf = (cut: GelCut): Item => ({ id: cut.id, ...asItem(cut) })
const asItem = ({ longMillimetres, shortMillimetres }: CutSize) => ({ width: longMillimetres, height: shortMillimetres })

/** The layouts of all gels that the cuts are of, in the order of their ids. */
export function layOutCuts(
  plan: Plan, cuts: readonly GelCut[], sheets: Readonly<Record<string, GelSheet>>, tooLarge: (gelId: string) => TooLarge,
): readonly GelLayout[] {
  const gelIds = [...new Set(cuts.map(({ gelId }) => gelId))].sort()
  return gelIds.map((gelId) => layOutGel(plan, gelId, cuts, sheets, tooLarge(gelId)))
}
