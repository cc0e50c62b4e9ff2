import { power } from '../arithmetic/portable.ts'
import { type Grid, gridPass } from './grid.ts'

/**
 * Radiance of a front by angle, lobe times grid, tabulated: it is asked for at every fixed point.
 * Tabulated over the sine of the angle, because a grid's pass falls linearly in it near the axis.
 */
export interface AngularProfile {
  /** 1 at every angle: nothing to look up. */
  readonly isUniform: boolean
  /** Radiance relative to straight ahead without the grid, at sine = i / (length - 2); one spare entry at the end. */
  readonly bySine: Float64Array
  /** Share of the front's flux that passes the grid. */
  readonly passShare: number
  /** Sine of the angle off the axis within which i / (length - 1) of the passing flux leaves. */
  readonly sineByFluxShare: Float64Array
}

const STEPS = 512
const FLUX_STEPS = 128
const profiles = new Map<string, AngularProfile>()

/** Profile of a lobe cos^n behind a grid. Remembered by its figures. */
export function angularProfile(lobeExponent: number, grid: Grid): AngularProfile {
  const key = grid.kind === 'none' ? `${lobeExponent}` : `${lobeExponent} ${grid.kind} ${grid.openingDegrees}`
  let profile = profiles.get(key)
  if (!profile) {
    // Dragging a grid's opening must not fill the memory.
    if (profiles.size >= 64) profiles.clear()
    profiles.set(key, (profile = tabulate(lobeExponent, grid)))
  }
  return profile
}

function tabulate(n: number, grid: Grid): AngularProfile {
  const bySine = new Float64Array(STEPS + 2)
  // Flux between two sines: radiance x cos x sin dangle = radiance x sine d(sine).
  const fluxWithin = new Float64Array(STEPS + 1)
  let openFlux = 0
  for (let i = 0; i <= STEPS; i++) {
    const sine = i / STEPS
    const cosAngle = Math.sqrt(1 - sine * sine)
    bySine[i] = power(cosAngle, n) * gridPass(grid, cosAngle)
    if (i === 0) continue
    const middle = (i - 0.5) / STEPS
    const middleCos = Math.sqrt(1 - middle * middle)
    const lobe = power(middleCos, n) * middle
    openFlux += lobe
    fluxWithin[i] = fluxWithin[i - 1]! + lobe * gridPass(grid, middleCos)
  }
  bySine[STEPS + 1] = bySine[STEPS]!
  const passing = fluxWithin[STEPS]!
  return {
    isUniform: n === 0 && grid.kind === 'none',
    bySine,
    passShare: passing / openFlux,
    sineByFluxShare: invert(fluxWithin, passing),
  }
}

function invert(fluxWithin: Float64Array, passing: number): Float64Array {
  const sines = new Float64Array(FLUX_STEPS + 1)
  let i = 0
  for (let k = 0; k <= FLUX_STEPS; k++) {
    const wanted = (passing * k) / FLUX_STEPS
    while (i < STEPS - 1 && fluxWithin[i + 1]! < wanted) i++
    const step = fluxWithin[i + 1]! - fluxWithin[i]!
    sines[k] = (i + (step > 0 ? Math.min(1, (wanted - fluxWithin[i]!) / step) : 0)) / STEPS
  }
  return sines
}

/** Radiance at an angle relative to straight ahead without a grid; 0 behind the front. */
export function profileAt(profile: AngularProfile, cosAngle: number): number {
  if (cosAngle <= 0) return 0
  if (profile.isUniform) return 1
  const at = Math.sqrt(Math.max(0, 1 - cosAngle * cosAngle)) * STEPS
  const i = at | 0
  const low = profile.bySine[i]!
  return low + (profile.bySine[i + 1]! - low) * (at - i)
}

/** Sine of the angle off the axis at a share 0-1 of the passing flux, counted from the axis. */
export function sineAtFluxShare(profile: AngularProfile, share: number): number {
  const at = Math.min(share, 1) * FLUX_STEPS
  const i = Math.min(at | 0, FLUX_STEPS - 1)
  const low = profile.sineByFluxShare[i]!
  return low + (profile.sineByFluxShare[i + 1]! - low) * (at - i)
}
