import { hexFromLinear, linearFromXyz } from '../spectra/srgb.ts'
import { applyFinish, type Finish } from './finish.ts'
import type { LinearSrgb, Xyz } from './triples.ts'

export interface DisplayColour {
  /** `#rrggbb` in sRGB. */
  readonly hex: string
  /** Whether sRGB could not hold the colour. */
  readonly outsideDisplay: boolean
}

/** Outside by less than this nobody could see. */
const UNSEEN = 0.002

/**
 * A colour as an sRGB display shows it: finish, then gamut.
 * @param xyz D65, Y = 1 is full scale.
 */
export function displayHex(xyz: Xyz, finish: Finish): DisplayColour {
  const finished = applyFinish(linearFromXyz(xyz), finish)
  const outsideDisplay = finished.some((value) => value < -UNSEEN || value > 1 + UNSEEN)
  return { hex: hexFromLinear(intoGamut(finished)), outsideDisplay }
}

/**
 * The nearest colour inside sRGB of the same luminance and hue line: mixed with grey until no channel is below 0.
 * What is then still above 1 is clipped, as converters do: mixing it with grey too would show a full yellow or a burnt
 * red as white, the very thing this program must not get wrong.
 */
export function intoGamut(linear: LinearSrgb): LinearSrgb {
  const lowest = Math.min(...linear)
  const clip = (value: number): number => Math.min(Math.max(value, 0), 1)
  if (lowest >= 0) return [clip(linear[0]), clip(linear[1]), clip(linear[2])]
  const luminance = clip(0.2126390058715102 * linear[0] + 0.715168678767756 * linear[1] + 0.0721923153607337 * linear[2])
  const kept = luminance / (luminance - lowest)
  const mixed = (value: number): number => clip(luminance + kept * (value - luminance))
  return [mixed(linear[0]), mixed(linear[1]), mixed(linear[2])]
}
