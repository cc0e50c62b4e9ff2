import { NO_REGION } from './regions.ts'
import { stopsOfBrightness } from './views.ts'

export type Tint = readonly [red: number, green: number, blue: number]

/** Told apart with every usual colour vision (Paul Tol, Colour Schemes, SRON 2021, "light"). */
const SCHEME: readonly Tint[] = [
  [221, 221, 221], [119, 170, 221], [238, 136, 102], [187, 204, 51], [255, 170, 187], [68, 187, 153], [238, 221, 136], [153, 221, 255], [170, 170, 0],
]
/** The room's steady light leads in plain grey. */
export const ROOM_TINT: Tint = [128, 128, 126]
/** How much of a tint's colour is left beside the picture. */
const CALM = 0.62

/**
 * A tint for each light, 0-255 a channel: the one of the scheme that is nearest to its gel's hue and not yet taken, so
 * that a green gel does not lead in pink. More lights than tints share them; their letters tell them apart.
 * @param gels of each light, 0-255 a channel on white
 */
export function leaderTints(gels: readonly Tint[]): readonly Tint[] {
  const chosen: (Tint | undefined)[] = gels.map(() => undefined)
  while (chosen.includes(undefined)) {
    const left = SCHEME.filter((tint) => !chosen.includes(tint))
    const pairs = gels.flatMap((gel, light) => (chosen[light] === undefined
      ? (left.length > 0 ? left : SCHEME).map((tint) => ({ light, tint, apart: hueApart(gel, tint) })) : []))
    const nearest = pairs.reduce((best, pair) => (pair.apart < best.apart ? pair : best))
    chosen[nearest.light] = nearest.tint
  }
  return chosen.map((tint) => calmed(tint!, CALM))
}

/** Distance of two colours each at its own full level: a pale and a deep sheet of one hue are near. */
function hueApart(a: Tint, b: Tint): number {
  const [x, y] = [a, b].map((colour) => {
    const most = Math.max(...colour, 1)
    const least = Math.min(...colour)
    const chroma = Math.sqrt((most - least) / most)
    return colour.map((channel) => (most === least ? 0 : chroma * ((channel - least) / (most - least) - 0.5)))
  }) as [number[], number[]]
  return x.reduce((sum, channel, k) => sum + (channel - y[k]!) * (channel - y[k]!), 0)
}

function calmed(tint: Tint, share: number): Tint {
  const grey = 0.25 * tint[0] + 0.65 * tint[1] + 0.1 * tint[2]
  return [grey + share * (tint[0] - grey), grey + share * (tint[1] - grey), grey + share * (tint[2] - grey)]
}

/** Darker than this nobody lights anything that is seen. */
const DARKEST_STOPS = -8
/** The picture's own modelling, folded into these levels of the tint: no brighter than the print beside it needs. */
const DARKEST_LEVEL = 0.28
const BRIGHTEST_LEVEL = 0.86
/** Where no light gives this share none leads alone, and the tint is hatched with the next one's. */
const LEADS_ALONE = 0.5
const HATCH_PIXELS = 7

/**
 * Who lights what: each pixel in the tint of the light that gives most there, thinned by what the others give, with a dark
 * line where another begins to lead. The picture's levels are kept faintly, so that the place is found again.
 * @param planes brightness by source, 1 is clip
 * @param tints of each source, as `leaderTints` and ROOM_TINT
 * @returns 1 + the leading source by pixel, NO_REGION where it is dark
 */
export function drawLeaders(
  planes: readonly Float32Array[], tints: readonly Tint[], width: number, height: number, into: Uint8ClampedArray,
): Uint8Array {
  const leaders = new Uint8Array(width * height)
  for (let p = 0; p < leaders.length; p++) {
    let [total, most, second, leader, next] = [0, 0, 0, NO_REGION, NO_REGION]
    for (let s = 0; s < planes.length; s++) {
      const part = planes[s]![p]!
      total += part
      if (part > most) [second, next, most, leader] = [most, leader, part, s + 1]
      else if (part > second) [second, next] = [part, s + 1]
    }
    const stops = stopsOfBrightness(total)
    if (stops < DARKEST_STOPS) leader = NO_REGION
    leaders[p] = leader
    paint(p, leader === NO_REGION ? null : pick(p, leader, next, most / total), stops)
  }
  drawEdges(leaders, width, height, into)
  return leaders

  function pick(p: number, leader: number, next: number, share: number): Tint {
    const hatched = share < LEADS_ALONE && next !== NO_REGION && ((p % width) + Math.floor(p / width)) % HATCH_PIXELS < 2
    return calmed(tints[(hatched ? next : leader) - 1]!, share)
  }

  function paint(p: number, tint: Tint | null, stops: number): void {
    const level = DARKEST_LEVEL + (BRIGHTEST_LEVEL - DARKEST_LEVEL) * Math.min(1, Math.max(0, (stops - DARKEST_STOPS) / (2 - DARKEST_STOPS)))
    for (let k = 0; k < 3; k++) into[4 * p + k] = tint === null ? 18 : tint[k]! * level
    into[4 * p + 3] = 255
  }
}

function drawEdges(leaders: Uint8Array, width: number, height: number, into: Uint8ClampedArray): void {
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const p = y * width + x
      const ends = (x + 1 < width && leaders[p + 1] !== leaders[p]) || (y + 1 < height && leaders[p + width] !== leaders[p])
      if (ends) into.set([12, 12, 12], 4 * p)
    }
  }
}
