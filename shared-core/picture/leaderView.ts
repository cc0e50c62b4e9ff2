import { NO_REGION } from './regions.ts'
import { stopsOfBrightness } from './views.ts'

/** A tint for each source, in turn: told apart with every usual colour vision (Paul Tol, Colour Schemes, SRON 2021, "light"), and then calmed. */
const SCHEME: readonly (readonly [number, number, number])[] = [
  [119, 170, 221], [238, 136, 102], [187, 204, 51], [255, 170, 187], [68, 187, 153], [238, 221, 136], [153, 221, 255], [170, 170, 0],
]
/** The room's steady light leads in plain grey. */
const ROOM: readonly [number, number, number] = [176, 176, 174]
/** How much of a tint's colour is left beside the picture. */
const CALM = 0.62

/** Tint of a source in this view, 0-255 a channel. @param turn its place among the lights; null for the room's steady light */
export function leaderTint(turn: number | null): readonly [red: number, green: number, blue: number] {
  const [r, g, b] = turn === null ? ROOM : SCHEME[turn % SCHEME.length]!
  const grey = 0.25 * r + 0.65 * g + 0.1 * b
  return [grey + CALM * (r - grey), grey + CALM * (g - grey), grey + CALM * (b - grey)]
}

/** Darker than this nobody lights anything that is seen. */
const DARKEST_STOPS = -8
/** The picture's own modelling, folded into this many levels of the tint. */
const DARKEST_LEVEL = 0.32
/** Where no light gives this share none leads alone, and the tint is hatched with the next one's. */
const LEADS_ALONE = 0.5
const HATCH_PIXELS = 7

/**
 * Who lights what: each pixel in the tint of the light that gives most there, thinned by what the others give, with a dark
 * line where another begins to lead. The picture's levels are kept faintly, so that the place is found again.
 * @param planes brightness by source, 1 is clip
 * @param tints of each source, as `leaderTint`
 * @returns 1 + the leading source by pixel, NO_REGION where it is dark
 */
export function drawLeaders(
  planes: readonly Float32Array[], tints: readonly (readonly [number, number, number])[], width: number, height: number, into: Uint8ClampedArray,
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

  function pick(p: number, leader: number, next: number, share: number): readonly [number, number, number] {
    const hatched = share < LEADS_ALONE && next !== NO_REGION && ((p % width) + Math.floor(p / width)) % HATCH_PIXELS < 2
    const [r, g, b] = tints[(hatched ? next : leader) - 1]!
    const grey = 0.25 * r + 0.65 * g + 0.1 * b
    return [grey + share * (r - grey), grey + share * (g - grey), grey + share * (b - grey)]
  }

  function paint(p: number, tint: readonly [number, number, number] | null, stops: number): void {
    const level = DARKEST_LEVEL + (1 - DARKEST_LEVEL) * Math.min(1, Math.max(0, (stops - DARKEST_STOPS) / (2 - DARKEST_STOPS)))
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
