import { stopsFromTimes } from '../arithmetic/portable.ts'
import { applyEdit, type PlanEdit } from '../plan/edit.ts'
import { formatStops } from '../plan/entry/stops.ts'
import type { Plan } from '../plan/schema/plan.ts'
import type { Predictor } from '../predict/predict.ts'
import type { Prediction } from '../predict/prediction.ts'
import type { Limit } from './answer.ts'
import { lightsBehind, roomTogether, whiteEdit, whitePoint, type LightBehind, type WhitePoint } from './whitePoint.ts'

/** The curve runs from this far under white to this far over it, in quarter stops. */
const CURVE_UNDER_STOPS = 3
const CURVE_OVER_STOPS = 2
const CURVE_STEP_STOPS = 0.25
/** No set-up of today's heads lies further from white than this. */
const FARTHEST_STOPS = 20

/** How one sheet does as the colour behind. */
export interface SheetBehind {
  /** Null is clear. */
  readonly gelId: string | null
  readonly name: string
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

export interface WhiteBehind {
  readonly lightIds: readonly string[]
  /** The lowest setting at which every place of the background in frame reads white; the nearest where none does. */
  readonly point: WhitePoint | null
  /** Sets it; null where the heads cannot. */
  readonly edit: PlanEdit | null
  readonly limit: Limit | null
  /** From three stops under white to two over, for dragging along; empty where no power reads white. */
  readonly curve: readonly WhitePoint[]
  /** Every sheet of the drawer and clear: those that can whiten first, gentlest rim first. */
  readonly sheets: readonly SheetBehind[]
  readonly words: string
}

/**
 * White behind the subject: the lowest common change of the lights of the plane 'background' at which every place of it
 * reads white in camera, what rim and haze that costs, and which sheets could do it. Every figure is a prediction of
 * the plan so changed; only the first guess of a power is reckoned.
 * @throws RangeError when the plan has no such look.
 */
export function whiteBehind(plan: Plan, lookId: string, predictor: Predictor): WhiteBehind {
  const behind = lightsBehind(plan, lookId)
  if (behind.length === 0) {
    const words = 'No light is set for the background: nothing there to turn up'
    return { lightIds: [], point: null, edit: null, limit: { kind: 'kit', aboutId: null, byStops: null, words }, curve: [], sheets: [], words }
  }
  const search = new WhiteSearch(plan, lookId, predictor, behind)
  const found = search.lowest(null)
  const point = found?.point.canBeSet ? found.point : search.at(search.room.highest, null, found?.point.stops ?? null)
  const limit = search.limitOf(found, point)
  return {
    lightIds: behind.map(({ id }) => id),
    point,
    edit: found?.point.canBeSet ? whiteEdit(lookId, behind, found.point.stops, null) : null,
    limit,
    curve: found ? search.curve(found.point.stops) : [],
    sheets: sheetsBehind(plan, lookId, search),
    words: limit?.words ?? wordsOf(point),
  }
}

class WhiteSearch {
  readonly room: { readonly lowest: number; readonly highest: number }
  private readonly stepStops: number

  constructor(
    private readonly plan: Plan, private readonly lookId: string, private readonly predictor: Predictor,
    readonly behind: readonly LightBehind[],
  ) {
    this.room = roomTogether(behind)
    this.stepStops = Math.min(...behind.map(({ head }) => head.stepStops))
  }

  at(stops: number, gelIds: readonly string[] | null, white: number | null, betweenSteps = false): WhitePoint {
    return whitePoint(this.predicted(stops, gelIds, betweenSteps), {
      stops: tidy(stops), canBeSet: this.isInRange(stops), stopsFromWhite: white === null ? null : tidy(stops - white),
    })
  }

  /** The lowest setting that reads white on the heads' steps, as if they had no end above; null where nothing does. */
  lowest(gelIds: readonly string[] | null): { readonly point: WhitePoint } | null {
    const guess = this.guess(gelIds)
    if (guess === null) return null
    let stops = this.onStep(Math.max(guess, this.room.lowest))
    let isWhite = this.isWhite(stops, gelIds)
    while (!isWhite && stops < FARTHEST_STOPS) isWhite = this.isWhite(stops += this.stepStops, gelIds)
    if (!isWhite) return null
    while (stops - this.stepStops >= this.room.lowest - 1e-9 && this.isWhite(stops - this.stepStops, gelIds)) stops -= this.stepStops
    return { point: this.at(stops, gelIds, stops) }
  }

  /** Between the heads' steps too, since a hand drags along it evenly. */
  curve(white: number): WhitePoint[] {
    const count = Math.round((CURVE_UNDER_STOPS + CURVE_OVER_STOPS) / CURVE_STEP_STOPS)
    return Array.from({ length: count + 1 }, (_, i) => this.at(white - CURVE_UNDER_STOPS + i * CURVE_STEP_STOPS, null, white, true))
  }

  limitOf(found: { readonly point: WhitePoint } | null, nearest: WhitePoint): Limit | null {
    if (!found) {
      return { kind: 'gel', aboutId: null, byStops: null, words: 'No power of these lights makes every corner white' }
    }
    if (found.point.canBeSet) return null
    const short = found.point.stops - this.room.highest
    const { light, id } = this.behind.find(({ light: each, head }) =>
      Math.abs(stopsFromTimes(head.fullEnergyJoules / each.energyJoules) - this.room.highest) < 1e-9)!
    const words = `${light.letter} is out of power by ${short.toFixed(1)} stops; at full the worst corner lacks ${(nearest.stopsMissing ?? short).toFixed(1)}`
    return { kind: 'power', aboutId: id, byStops: short, words }
  }

  /** Where the weakest channel of the worst place would just clip, were the heads' colour the same at every power. */
  private guess(gelIds: readonly string[] | null): number | null {
    const ids = new Set(this.behind.map(({ id }) => id))
    const { areas } = this.predicted(0, gelIds)
    let times = 0
    for (const area of areas.filter(({ id }) => id.startsWith('background-'))) {
      for (const k of [0, 1, 2] as const) {
        const own = area.byLight.reduce((sum, given) => (ids.has(given.lightId) ? sum + given.channels[k] : sum), 0)
        const missing = 1 - (area.colour.channels[k] - own)
        if (missing <= 0) continue
        if (own <= 0) return null
        times = Math.max(times, missing / own)
      }
    }
    return times === 0 ? this.room.lowest : stopsFromTimes(times)
  }

  private onStep(stops: number): number {
    return Math.ceil(stops / this.stepStops - 1e-9) * this.stepStops
  }

  private isWhite(stops: number, gelIds: readonly string[] | null): boolean {
    return this.predicted(stops, gelIds).background.verdict === 'white'
  }

  private isInRange(stops: number): boolean {
    return stops >= this.room.lowest - 1e-6 && stops <= this.room.highest + 1e-6
  }

  private predicted(stops: number, gelIds: readonly string[] | null, betweenSteps = false): Prediction {
    const edit = whiteEdit(this.lookId, this.behind, stops, gelIds, betweenSteps || !this.isInRange(stops))
    return this.predictor(applyEdit(this.plan, edit), this.lookId)
  }
}

function sheetsBehind(plan: Plan, lookId: string, search: WhiteSearch): SheetBehind[] {
  const clear = { gelId: null, name: 'clear', owned: Infinity }
  const drawer = Object.entries(plan.gels).map(([gelId, { name, sheets }]) => ({ gelId, name, owned: sheets }))
  return [clear, ...drawer].map(({ gelId, name, owned }): SheetBehind => {
    const gelIds = gelId === null ? [] : [gelId]
    const found = search.lowest(gelIds)
    const canWhiten = found?.point.canBeSet ?? false
    return {
      gelId, name, canWhiten,
      point: found?.point ?? null,
      stopsShort: found ? tidy(Math.max(0, found.point.stops - search.room.highest)) : null,
      sheetsToBuy: Math.max(0, search.behind.length - owned),
      edit: found && canWhiten ? whiteEdit(lookId, search.behind, found.point.stops, gelIds) : null,
    }
  }).sort((a, b) => Number(b.canWhiten) - Number(a.canWhiten) || rim(a) - rim(b))
}

/** Sums of tenths without their rounding dust. */
const tidy = (stops: number): number => Math.round(stops * 1e6) / 1e6 || 0

const rim = ({ point }: SheetBehind): number => point?.wrapStops ?? Infinity

function wordsOf({ stops, wrapStops, hottestChannelStops, blackStopsUnderGrey }: WhitePoint): string {
  const change = Math.abs(stops) < 0.05 ? 'White as it stands' : `White at ${formatStops(stops)} on the lights behind`
  const burns = hottestChannelStops !== null && hottestChannelStops > 0 ? `, burnt by ${hottestChannelStops.toFixed(1)}` : ''
  const wrap = wrapStops === null ? 'no rim' : `rim ${formatStops(wrapStops)}${burns}`
  return blackStopsUnderGrey === null ? `${change}: ${wrap}` : `${change}: ${wrap}, black at ${formatStops(blackStopsUnderGrey)} from mid-grey`
}
