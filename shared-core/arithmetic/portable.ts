/**
 * Elementary functions that give the same bits in every JavaScript engine we run in.
 *
 * The language leaves `Math.sin`, `Math.cos`, `Math.pow` and `**` to the engine, and engines change them between
 * versions: Node 20 and a current Chromium disagree in the last bit for 3 % of sines and 5 % of powers.
 * `Math.exp`, `log`, `tan`, `atan`, `atan2`, `acos`, `asin`, `cbrt` and `sqrt` agree (a browser test compares them),
 * so the others are built from those. Lint forbids the unreliable ones in shared-core.
 */

/** Sine by the half-angle tangent, so that it rests on `Math.tan` alone. */
export function sine(radians: number): number {
  const t = Math.tan(radians / 2)
  return (2 * t) / (1 + t * t)
}

/** Cosine by the half-angle tangent. */
export function cosine(radians: number): number {
  const t = Math.tan(radians / 2)
  return (1 - t * t) / (1 + t * t)
}

/** `base` raised to `exponent`, for `base` >= 0. Relative error below 1e-14 for results between 1e-12 and 1e12. */
export function power(base: number, exponent: number): number {
  if (base === 0) return exponent === 0 ? 1 : exponent > 0 ? 0 : Infinity
  return Math.exp(exponent * Math.log(base))
}

/** 2 to the power of `stops`: how many times more light that many stops are. */
export function timesFromStops(stops: number): number {
  return Math.exp(stops * Math.LN2)
}

/** Stops from a ratio of light; -Infinity for none. */
export function stopsFromTimes(times: number): number {
  return times > 0 ? Math.log2(times) : -Infinity
}

export const DEGREES_PER_RADIAN = 180 / Math.PI

export function radiansFromDegrees(degrees: number): number {
  return degrees / DEGREES_PER_RADIAN
}

export function degreesFromRadians(radians: number): number {
  return radians * DEGREES_PER_RADIAN
}
