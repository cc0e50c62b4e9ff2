import { power, timesFromStops } from '../arithmetic/portable.ts'
import type { LinearSrgb } from './triples.ts'

/** How a picture is finished after capture. */
export interface Finish {
  readonly exposureStops: number
  /** 0 as shot; 1 doubles the slope at mid-grey; −0.8 leaves a fifth of it. */
  readonly contrast: number
  /** Stops by which white is pulled down: 0.5 makes what is half a stop short of clipping white. */
  readonly whitePointStops: number
  /** Share of full scale that becomes black. */
  readonly blackPoint: number
}

/** As shot. */
export const NO_FINISH: Finish = { exposureStops: 0, contrast: 0, whitePointStops: 0, blackPoint: 0 }

export const MID_GREY = 0.18
/** Exponent that lays mid-grey at the middle of the scale, so that the contrast curve can be symmetrical about it. */
const TO_MIDDLE = Math.log(0.5) / Math.log(MID_GREY)

/**
 * The finish of one linear channel: levels first (exposure, black point, white point), then contrast.
 * What levels lift past white stays at white; what was past white before stays where it was, for the display's gamut.
 * The curve keeps black, mid-grey and white in place.
 */
export function finishChannel(value: number, finish: Finish): number {
  const exposed = value * timesFromStops(finish.exposureStops)
  const white = timesFromStops(-finish.whitePointStops)
  const levelled = (exposed - finish.blackPoint) / Math.max(white - finish.blackPoint, 1e-3)
  const held = Math.min(levelled, Math.max(1, value))
  return contrastCurve(held, 1 + finish.contrast)
}

/** Outside 0-1 the curve is the identity: those colours are outside the display, not darker or brighter. */
function contrastCurve(value: number, slope: number): number {
  if (slope === 1 || value <= 0 || value >= 1) return value
  const scale = power(value, TO_MIDDLE)
  const curved = scale < 0.5 ? 0.5 * power(2 * scale, slope) : 1 - 0.5 * power(2 * (1 - scale), slope)
  return power(curved, 1 / TO_MIDDLE)
}

/** The finish on linear sRGB, channel by channel as converters do it. */
export function applyFinish(linear: LinearSrgb, finish: Finish): LinearSrgb {
  return [finishChannel(linear[0], finish), finishChannel(linear[1], finish), finishChannel(linear[2], finish)]
}
