import { labOfXyz, type Lab } from '../colour/difference.ts'
import type { PlanEdit } from '../plan/edit.ts'
import { linearFromHex, xyzFromLinear } from '../spectra/srgb.ts'
import { whiteEdit, type WhitePoint } from './whitePoint.ts'
import { tidy, type WhiteSearch } from './whiteSearch.ts'

/** How one sheet does as the colour behind. */
export interface SheetBehind {
  /** Null is clear. */
  readonly gelId: string | null
  readonly name: string
  /** On white paper, `#rrggbb`. */
  readonly onWhite: string
  /** Whether the heads can drive it to white. */
  readonly canWhiten: boolean
  /** At the lowest power that reads white, whether the heads have it or not; null where no power would. */
  readonly point: WhitePoint | null
  /** Power that lacks at the first head to run out; 0 when it can whiten. */
  readonly stopsShort: number | null
  /** Sheets to be bought: one is needed for each light behind. */
  readonly sheetsToBuy: number
  /** Puts the sheet on at that power; null where it cannot whiten. */
  readonly edit: PlanEdit | null
}

/** A hue at most this far away is of the same temper (common practice, no source): from orange to straw, not to rose. */
const NEAR_HUE_DEGREES = 50
/** Less chroma than this on white paper is as good as clear: no colour to offer for a colour. */
const LEAST_CHROMA = 8

/** @param owned sheets in the drawer */
export function sheetBehind(search: WhiteSearch, gelId: string | null, name: string, owned: number): SheetBehind {
  const gelIds = gelId === null ? [] : [gelId]
  const found = search.lowest(gelIds)
  const canWhiten = found?.point.canBeSet ?? false
  return {
    gelId, name, canWhiten,
    onWhite: search.onWhite(gelIds),
    point: found?.point ?? null,
    stopsShort: found ? tidy(Math.max(0, found.point.stops - search.room.highest)) : null,
    sheetsToBuy: Math.max(0, search.behind.length - owned),
    edit: found && canWhiten ? whiteEdit(search.lookId, search.behind, found.point.stops, gelIds) : null,
  }
}

/** Those that can whiten first, gentlest rim first. */
export function gentlestFirst(sheets: readonly SheetBehind[]): readonly SheetBehind[] {
  return [...sheets].sort((a, b) => Number(b.canWhiten) - Number(a.canWhiten) || rim(a) - rim(b))
}

/** The gentlest sheet that whitens, burns no edge, and is still of the hue that is there; null where there is none. */
export function gentlerOfHue(sheets: readonly SheetBehind[], onWhite: string): SheetBehind | null {
  const wanted = labOf(onWhite)
  const isOfHue = (sheet: SheetBehind): boolean => {
    const lab = labOf(sheet.onWhite)
    return chroma(lab) >= LEAST_CHROMA && hueBetween(lab, wanted) <= NEAR_HUE_DEGREES
  }
  return gentlestFirst(sheets).find((sheet) => sheet.canWhiten && (sheet.point?.hottestChannelStops ?? 0) <= 0 && isOfHue(sheet)) ?? null
}

const rim = ({ point }: SheetBehind): number => point?.wrapStops ?? Infinity
const labOf = (hex: string): Lab => labOfXyz(xyzFromLinear(linearFromHex(hex)))
const chroma = ({ a, b }: Lab): number => Math.sqrt(a * a + b * b)

function hueBetween(one: Lab, other: Lab): number {
  const difference = Math.abs(Math.atan2(one.b, one.a) - Math.atan2(other.b, other.a)) * (180 / Math.PI)
  return Math.min(difference, 360 - difference)
}
