import { stopsFromTimes } from '../arithmetic/portable.ts'
import { applyEdit } from '../plan/edit.ts'
import type { Plan } from '../plan/schema/plan.ts'
import type { Predictor } from '../predict/predict.ts'
import type { Prediction } from '../predict/prediction.ts'
import type { Limit } from './answer.ts'
import { roomTogether, whiteEdit, whitePoint, type LightBehind, type WhitePoint } from './whitePoint.ts'

/** The curve runs from this far under white to this far over it, in quarter stops. */
const CURVE_UNDER_STOPS = 3
const CURVE_OVER_STOPS = 2
const CURVE_STEP_STOPS = 0.25
/** No set-up of today's heads lies further from white than this. */
const FARTHEST_STOPS = 20

/**
 * Looks for white behind along one number: the change common to all lights there, by predictions of the plan so changed.
 * `gelIds` null leaves the sheets as they are.
 */
export class WhiteSearch {
  readonly room: { readonly lowest: number; readonly highest: number }
  private readonly stepStops: number

  constructor(
    private readonly plan: Plan, readonly lookId: string, private readonly predictor: Predictor,
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

  /** The colour of sheets on white paper, as the first light behind shows it. */
  onWhite(gelIds: readonly string[]): string {
    return this.predicted(0, gelIds).lights.find(({ id }) => id === this.behind[0]!.id)!.gel.onWhite
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

/** Sums of tenths without their rounding dust. */
export const tidy = (stops: number): number => Math.round(stops * 1e6) / 1e6 || 0
