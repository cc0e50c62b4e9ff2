import type { WhitePoint } from '../../../shared-core/ask/whitePoint.ts'

/** One line of the trade, in stops over the push. */
export type TradeLine = 'missing' | 'rim' | 'black'

const valueOf: Readonly<Record<TradeLine, (point: WhitePoint) => number | null>> = {
  missing: ({ stopsMissing }) => stopsMissing,
  rim: ({ wrapStops }) => wrapStops,
  black: ({ blackStopsUnderGrey }) => blackStopsUnderGrey,
}

/** A line's value so far from white, between the points of the curve; null where there is none. */
export function tradeAt(curve: readonly WhitePoint[], line: TradeLine, push: number): number | null {
  return between(curve, push, valueOf[line])
}

/** The push at which the hottest channel of what wraps reaches clip: from here on an edge burns. Null within no part of the curve. */
export function burnsFrom(curve: readonly WhitePoint[]): number | null {
  const hottest = (point: WhitePoint): number => point.hottestChannelStops ?? -Infinity
  const first = curve.findIndex((point) => hottest(point) > 0)
  if (first < 0) return null
  const [before, after] = [curve[Math.max(0, first - 1)]!, curve[first]!]
  const rise = hottest(after) - hottest(before)
  if (first === 0 || !Number.isFinite(rise) || rise <= 0) return after.stopsFromWhite
  return before.stopsFromWhite! + ((after.stopsFromWhite! - before.stopsFromWhite!) * -hottest(before)) / rise
}

/** From where the heads are now, as a push from white. */
export function pushNow([first]: readonly WhitePoint[]): number | null {
  return first && first.stopsFromWhite !== null ? first.stopsFromWhite - first.stops : null
}

/** The whole stops that hold all lines, at least from two under to two over. */
export function stopsInSight(curve: readonly WhitePoint[]): readonly [lowest: number, highest: number] {
  const values = curve.flatMap((point) => Object.values(valueOf).flatMap((value) => value(point) ?? []))
  return [Math.floor(Math.min(-2, ...values)), Math.ceil(Math.max(2, ...values))]
}

function between(curve: readonly WhitePoint[], push: number, value: (point: WhitePoint) => number | null): number | null {
  const after = curve.findIndex(({ stopsFromWhite }) => stopsFromWhite !== null && stopsFromWhite >= push - 1e-9)
  if (after < 0) return null
  const [to, from] = [curve[after]!, curve[Math.max(0, after - 1)]!]
  const [start, end] = [value(from), value(to)]
  if (start === null || end === null) return null
  const width = to.stopsFromWhite! - from.stopsFromWhite!
  return width === 0 ? end : start + ((end - start) * (push - from.stopsFromWhite!)) / width
}
