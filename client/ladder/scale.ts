import { apertureSeries, apertureValue, exactFNumber } from '../../shared-core/exposure/aperture.ts'

/** The Stop Ladder shows from this many stops over the taking aperture down to this many under it. */
export const TOP_STOPS = 5
export const BOTTOM_STOPS = -6

/** Where on an upright ladder a level hangs. */
export interface LadderScale {
  readonly topPixels: number
  readonly bottomPixels: number
  readonly pixelsPerStop: number
}

/** Whether a level lies on the scale or past one of its ends. */
export type Pinned = 'above' | 'below' | null

/** A ladder `heightPixels` high that leaves `marginPixels` free at either end for what is pinned there. */
export function ladderScale(heightPixels: number, marginPixels: number): LadderScale {
  const topPixels = marginPixels
  const bottomPixels = Math.max(topPixels + 1, heightPixels - marginPixels)
  return { topPixels, bottomPixels, pixelsPerStop: (bottomPixels - topPixels) / (TOP_STOPS - BOTTOM_STOPS) }
}

/** The height of a level, pinned to the nearer end when it is off the scale; no light at all (null) hangs at the foot. */
export function heightOf(scale: LadderScale, stops: number | null): number {
  const shown = Math.min(TOP_STOPS, Math.max(BOTTOM_STOPS, stops ?? BOTTOM_STOPS))
  return scale.topPixels + (TOP_STOPS - shown) * scale.pixelsPerStop
}

export function pinnedAt(stops: number | null): Pinned {
  if (stops === null || stops < BOTTOM_STOPS) return 'below'
  return stops > TOP_STOPS ? 'above' : null
}

/** Stops that a hand has moved when it went `pixels` down the screen. */
export function stopsOfMove(scale: LadderScale, pixels: number): number {
  return -pixels / scale.pixelsPerStop
}

/** A full f-stop on the ladder and how far from the taking aperture it lies. */
export interface FullStop {
  readonly engraved: string
  readonly stops: number
}

/**
 * The full f-stops within the scale around a taking aperture: what a meter reads `stops` over it, so f/11 lies one above
 * f/8. Engravings stand for the exact series (f/5.6 for 5.657).
 */
export function fullStopsAround(takingFNumber: number): readonly FullStop[] {
  const taking = apertureValue(exactFNumber(takingFNumber))
  return apertureSeries('full')
    .map(({ nominal, exact }) => ({ engraved: String(nominal), stops: apertureValue(exact) - taking }))
    .filter(({ stops }) => stops < TOP_STOPS + 0.01 && stops > BOTTOM_STOPS - 0.01)
}
