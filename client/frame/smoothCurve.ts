/** A point of a curve that is given by a few of them, in rising order of `at`. */
export type Knot = readonly [at: number, value: number]

/**
 * The curve through the knots that never overshoots them, level past both ends. Fritsch and Carlson, "Monotone Piecewise
 * Cubic Interpolation", SIAM J. Numer. Anal. 17 (1980), with harmonic-mean slopes.
 */
export function smoothCurve(knots: readonly Knot[]): (at: number) => number {
  const rises = knots.slice(1).map((knot, i) => {
    const before = knots[i] as Knot
    return (knot[1] - before[1]) / (knot[0] - before[0])
  })
  const slopes = knots.map((_, i) => {
    const [left, right] = [rises[i - 1], rises[i]]
    if (left === undefined || right === undefined || left * right <= 0) return i === 0 || i === knots.length - 1 ? (left ?? right ?? 0) : 0
    return (2 * left * right) / (left + right)
  })
  return (at) => {
    const next = knots.findIndex((knot) => knot[0] >= at)
    if (next === -1) return (knots.at(-1) as Knot)[1]
    if (next === 0) return (knots[0] as Knot)[1]
    const [from, to] = [knots[next - 1] as Knot, knots[next] as Knot]
    const span = to[0] - from[0]
    const u = (at - from[0]) / span
    const [slopeFrom, slopeTo] = [(slopes[next - 1] ?? 0) * span, (slopes[next] ?? 0) * span]
    const v = 1 - u
    return from[1] * v * v * (1 + 2 * u) + to[1] * u * u * (3 - 2 * u) + slopeFrom * u * v * v - slopeTo * u * u * v
  }
}

/** The same curve read from a table over `from` to `to`: for places asked for a pixel at a time. */
export function tabulated(curve: (at: number) => number, from: number, to: number): (at: number) => number {
  const steps = 512
  const table = Float64Array.from({ length: steps + 2 }, (_, i) => curve(from + ((to - from) * i) / steps))
  return (at) => {
    const place = (Math.min(to, Math.max(from, at)) - from) * (steps / (to - from))
    const index = Math.floor(place)
    const before = table[index] ?? 0
    return before + ((table[index + 1] ?? 0) - before) * (place - index)
  }
}

/** 0 up to `from`, 1 from `to`, rising smoothly between. */
export function ease(from: number, to: number, at: number): number {
  const u = Math.min(1, Math.max(0, (at - from) / (to - from)))
  return u * u * (3 - 2 * u)
}
