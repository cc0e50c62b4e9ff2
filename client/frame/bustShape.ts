import { FACE_HALF_BREADTH, HEAD_HALF_BREADTH, NECK_HALF_BREADTH, type Bust } from './bust.ts'
import { ease, smoothCurve, tabulated } from './smoothCurve.ts'

/** How much of a place each part of the form covers, 0-1, front parts over those behind. */
export interface Cover {
  readonly hair: number
  readonly lips: number
  readonly head: number
  readonly neck: number
  readonly cloth: number
}

/** The plain form's outlines in the Frame. `softness` is the width of an edge in metres at the subject. */
export interface BustShape {
  /** Whether nothing of the form can be there: spares most of the background the work. */
  isFarOutside(across: number, down: number): boolean
  cover(across: number, down: number, softness: number): Cover
  /** Which way the head's surface faces there: camera right, up, to the camera. */
  headFacing(across: number, down: number): readonly [right: number, up: number, toCamera: number]
  /** Modelling of sockets, nose and chin, as a factor near 1. */
  modelling(across: number, down: number): number
}

/** Half the head's breadth from chin (0) to crown (1), as a share of stature. */
const headHalfBreadths = [
  [0, 0],
  [0.03, 0.0142],
  [0.1, 0.0252],
  [0.2, 0.0338],
  [0.32, 0.0384],
  [0.47, FACE_HALF_BREADTH],
  [0.68, HEAD_HALF_BREADTH],
  [0.82, 0.0408],
  [0.92, 0.0302],
  [0.975, 0.0178],
  [1, 0],
] as const

/** Squared, so that both ends come out round. */
const headBreadthSquared = tabulated(smoothCurve(headHalfBreadths.map(([at, half]) => [at, half * half] as const)), 0, 1)

/** The line of the shoulders outwards (share of half the breadth): down from neck base (0) to shoulder (1). */
const shoulderSlope = tabulated(
  smoothCurve([
    [0, -2],
    [0.2, -1.1],
    [0.285, -0.35],
    [0.36, 0.08],
    [0.5, 0.5],
    [0.74, 1],
    [1.06, 1.5],
  ]),
  0,
  1.06,
)

/** How the shoulder rounds off into the arm, in tenths of stature further down. */
const shoulderRound = tabulated(
  smoothCurve([
    [0.7, 0],
    [0.82, 0.04],
    [0.9, 0.13],
    [0.96, 0.3],
    [1, 0.62],
    [1.03, 1.2],
    [1.06, 2.6],
  ]),
  0,
  1.06,
)

/** The outlines of a bust. */
export function bustShape(bust: Bust): BustShape {
  const headHeight = bust.chinDown - bust.crownDown
  const stature = bust.statureMetres
  const overChin = (down: number) => (bust.chinDown - down) / headHeight
  const breadthSquared = (t: number) => (t <= 0 || t >= 1 ? -Math.min(Math.abs(t), Math.abs(t - 1)) * 0.01 : headBreadthSquared(t)) * stature * stature
  const fromMidline = (across: number) => across - bust.midlineAcross
  const lipsHalf = 0.0155 * stature
  const shoulderFall = bust.shoulderDown - bust.neckBaseDown

  const insideHead = (across: number, down: number) => breadthSquared(overChin(down)) - fromMidline(across) ** 2
  const insideEars = (across: number, down: number) => {
    const out = (Math.abs(fromMidline(across)) - 0.0412 * stature) / (0.0042 * stature)
    const up = (overChin(down) - 0.45) / 0.115
    return 1 - out * out - up * up
  }
  const insideHair = (across: number, down: number) => {
    const t = overChin(down) / 1.05
    const volume = 0.0034 * stature * ease(0.44, 0.66, t)
    return (Math.sqrt(Math.max(0, breadthSquared(t))) + volume) ** 2 * Math.sign(breadthSquared(t)) - fromMidline(across) ** 2
  }
  /** Positive over the hairline, in shares of the head's height. */
  const overHairline = (across: number, down: number) => {
    const out = Math.abs(fromMidline(across)) / (HEAD_HALF_BREADTH * stature)
    return overChin(down) - (0.86 - 0.36 * out * out * out * out)
  }
  const insideNeck = (across: number, down: number) => {
    const flare = 1 + 0.12 * ease(bust.chinDown, bust.neckBaseDown, down) + 0.05 * ease(bust.chinDown, bust.chinDown - 0.3 * headHeight, down)
    return down < bust.chinDown - 0.3 * headHeight || down > bust.neckBaseDown + 0.01 * stature ? -1 : NECK_HALF_BREADTH * stature * flare - Math.abs(across - neckAcross(down))
  }
  const neckAcross = (down: number) =>
    bust.midlineAcross + (bust.torsoAcross - bust.midlineAcross) * ease(bust.chinDown - 0.3 * headHeight, bust.neckBaseDown, down)
  const insideTorso = (across: number, down: number) => {
    const outwards = Math.abs(across - bust.torsoAcross) / bust.shoulderHalfMetres
    return outwards > 1.05 ? -1 : down - bust.neckBaseDown - shoulderSlope(outwards) * shoulderFall - 0.1 * stature * shoulderRound(outwards)
  }
  const belowNeckline = (across: number, down: number) => {
    const out = Math.abs(across - bust.torsoAcross) / ((bust.isOpen ? 0.062 : 0.045) * stature)
    const scoop = out >= 1 ? 0 : (1 - out * out) ** (bust.isOpen ? 0.62 : 0.5)
    const top = bust.neckBaseDown + 0.004 * stature
    return down - (top + (bust.necklineDown - top) * scoop - 0.04 * stature * Math.max(0, out - 0.9))
  }
  const insideLips = (across: number, down: number) => {
    const out = (across - bust.noseAcross * 0.7 - bust.lips.across * 0.3) / lipsHalf
    const up = (bust.lips.down - down) / (0.0058 * stature)
    const bow = up > 0 ? 0.82 + 0.22 * Math.exp(-(((Math.abs(out) - 0.3) / 0.2) ** 2)) - 0.12 * Math.exp(-((out / 0.12) ** 2)) : 1.06
    return (1 - out * out) * bow - Math.abs(up)
  }

  const top = bust.crownDown - 0.02 * stature
  const shouldersFrom = bust.neckBaseDown - 0.05 * stature
  return {
    isFarOutside(across, down) {
      if (down < top) return true
      const reach = down < shouldersFrom ? 0.055 * stature : 1.1 * bust.shoulderHalfMetres
      return Math.abs(across - (down < shouldersFrom ? bust.midlineAcross : bust.torsoAcross)) > reach
    },
    cover(across, down, softness) {
      const head = Math.max(covered(insideHead, 0.4, across, down, softness), covered(insideEars, 400, across, down, softness))
      const torso = covered(insideTorso, 50, across, down, softness)
      const neckline = covered(belowNeckline, 12, across, down, softness)
      const cloth = torso * neckline
      return {
        hair: covered(insideHair, 0.4, across, down, softness) * ease(-0.02, 0.03, overHairline(across, down)),
        lips: covered(insideLips, 300, across, down, softness * 1.6),
        head,
        neck: cloth >= 1 ? 0 : (Math.max(covered(insideNeck, 1.5, across, down, softness), torso) - cloth) / (1 - cloth),
        cloth,
      }
    },
    headFacing(across, down) {
      const t = overChin(down)
      const half = Math.sqrt(Math.max(1e-6, breadthSquared(Math.min(0.97, Math.max(0.03, t)))))
      const onNose = (across - bust.noseAcross) / (0.0085 * stature)
      const nose = 0.9 * onNose * Math.exp(-onNose * onNose) * ease(0.3, 0.37, t) * (1 - ease(0.5, 0.62, t))
      const right = Math.min(0.98, Math.max(-0.98, fromMidline(across) / half + nose))
      const up = Math.min(0.98, Math.max(-0.98, (t - 0.42) / 0.62)) * Math.sqrt(1 - right * right)
      return [right, up, Math.sqrt(Math.max(0, 1 - right * right - up * up))]
    },
    modelling(across, down) {
      const t = overChin(down)
      const x = (across - bust.noseAcross) / stature
      const pool = (centreX: number, centreT: number, wide: number, high: number) =>
        Math.exp(-(((x - centreX) / wide) ** 2) - ((t - centreT) / high) ** 2)
      const sockets = 0.24 * (pool(-0.0178, 0.53, 0.0095, 0.038) + pool(0.0178, 0.53, 0.0095, 0.038))
      const underNose = 0.22 * pool(0, 0.318, 0.0075, 0.022)
      const underLip = 0.14 * pool(0, 0.135, 0.011, 0.025)
      return 1 - sockets - underNose - underLip
    },
  }
}

/** Shadow of the jaw on the neck: darkest right under it, gone before the pit of the neck. */
export function underJaw(bust: Bust, down: number): number {
  const from = bust.chinDown - 0.08 * (bust.chinDown - bust.crownDown)
  return 1 - 0.36 * (1 - ease(from, from + 0.04 * bust.statureMetres, down))
}

/** Folds where the arms lie against the body. */
export function clothModelling(bust: Bust, across: number, down: number): number {
  const outwards = Math.abs(across - bust.torsoAcross) / bust.shoulderHalfMetres
  const below = ease(bust.shoulderDown + 0.045 * bust.statureMetres, bust.shoulderDown + 0.1 * bust.statureMetres, down)
  const from = outwards - 0.735
  return 1 - 0.18 * below * Math.exp(-((from / (from > 0 ? 0.018 : 0.075)) ** 2))
}

type Inside = (across: number, down: number) => number

/**
 * Share of an edge-wide spot that lies inside, from the field's value over its slope: a distance near the outline. A
 * value that the steepest slope could not bring to the outline within the spot needs no slope at all.
 */
function covered(inside: Inside, steepest: number, across: number, down: number, softness: number): number {
  const value = inside(across, down)
  if (Math.abs(value) > steepest * softness) return value > 0 ? 1 : 0
  const step = softness * 0.5
  const slope = Math.hypot(inside(across + step, down) - inside(across - step, down), inside(across, down + step) - inside(across, down - step)) / (2 * step)
  if (!(slope > 0)) return value > 0 ? 1 : 0
  return Math.min(1, Math.max(0, 0.5 + value / slope / softness))
}
