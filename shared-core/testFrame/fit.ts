import { timesFromStops } from '../arithmetic/portable.ts'
import { whiteBalanceGains } from '../colour/camera.ts'
import { labOfXyz, type Lab } from '../colour/difference.ts'
import type { CameraRgb, LinearSrgb } from '../colour/triples.ts'
import { xyzFromLinear } from '../spectra/srgb.ts'
import { meanChannels, type AreaLight } from './areaLight.ts'
import type { TestFrameModel } from './model.ts'
import type { Slip } from './slips.ts'
import { luminanceOf, shown } from './shown.ts'
import { solved } from './solve.ts'

/** What the photograph shows at one area of the model. */
export interface SeenArea {
  /** Place in the model's areas. */
  readonly index: number
  readonly linear: LinearSrgb
}

/**
 * How far one area of a set that is as planned may be off (common practice, no source): a sixth of a stop, and a CIEDE2000
 * of 3. What every set and every camera does a little: each light's power, the exposure, the camera's own contrast, and
 * white balance in mired. One standard deviation each.
 */
export const USUAL = { areaStops: 1 / 6, areaColour: 3, lightStops: 0.12, exposureStops: 0.2, contrast: 0.25, mired: 8 } as const
/** How far off a thing is that is wrong. */
const WRONG = { lightStops: 1, exposureStops: 1.2, mired: 60 } as const
/** A residual of more than this many standard deviations counts less and less (Cauchy): a hand, a hair, a badge lies there. */
const DOUBTED_PAST = 4
/** Haze, noise and eight bits hide what is darker than this, as a share of full scale. */
export const DARK_FLOOR = 0.004

/** Everything a fit may move, in this order: exposure, contrast, mired, then each light's stops. */
const [EXPOSURE, CONTRAST, MIRED, LIGHTS] = [0, 1, 2, 3]
const STEPS_OF_DIFFERENCE = [0.02, 0.02, 1] as const
const LIGHT_STEP = 0.02

export interface Fit {
  readonly slip: Slip
  /** Stops of exposure, contrast of the camera's style, mired of white balance, stops by light. */
  readonly values: readonly number[]
  /** Negative logarithm of how likely photograph and values are, but for a constant all slips share. */
  readonly cost: number
  /** Sum of squares over their expectation for the areas alone: about 1 when only the usual is off. */
  readonly misfit: number
}

/** Holds one photograph's areas against slips. */
export class SlipFitter {
  private readonly observed: readonly { readonly index: number; readonly logY: number; readonly y: number; readonly lab: Lab; readonly perAb: number }[]
  private readonly perMired: CameraRgb

  constructor(private readonly model: TestFrameModel, seen: readonly SeenArea[]) {
    this.observed = seen.map(({ index, linear }) => {
      const y = luminanceOf(linear)
      const lab = labOfXyz(xyzFromLinear(linear))
      // CIEDE2000 weighs chroma by 1 + 0.045 C' (Sharma, Wu, Dalal 2005); between near colours the rest is about 1.
      const chroma = Math.sqrt(lab.a * lab.a + lab.b * lab.b)
      return { index, y, logY: Math.log2(y + DARK_FLOOR), lab, perAb: 1 / (USUAL.areaColour * (1 + 0.045 * chroma)) }
    })
    this.perMired = gainsPerMired(model.whiteBalanceKelvin)
  }

  /** The likeliest values for a slip, by Gauss and Newton from `start` or from what is usual for it. */
  fit(slip: Slip, rounds: number, start: readonly number[]): Fit {
    const spread = this.spreadOf(slip)
    let values = [...start]
    let residuals = this.residuals(slip.light, values)
    let cost = costOf(residuals, values, spread)
    let damping = 1e-3
    for (let round = 0; round < rounds; round++) {
      const step = this.step(slip.light, values, residuals, spread, damping)
      const next = values.map((value, i) => value + step[i]!)
      const then = this.residuals(slip.light, next)
      const costThen = costOf(then, next, spread)
      if (costThen < cost) {
        const gained = cost - costThen
        values = next
        residuals = then
        cost = costThen
        damping = damping / 5
        if (gained < 0.01) break
      } else damping = damping * 30
    }
    let squares = 0
    for (const residual of residuals) squares += residual * residual
    return { slip, values, cost, misfit: squares / Math.max(1, residuals.length - values.length) }
  }

  /** Where to begin for a slip: several, where one might lead astray. */
  startsOf(slip: Slip): readonly (readonly number[])[] {
    const usual = new Array<number>(LIGHTS + this.model.lights.length).fill(0)
    const at = (place: number, values: readonly number[]) => values.map((value) => usual.with(place, value))
    if (slip.kind === 'power') return at(LIGHTS + this.lightOf(slip), [-1.2, 1])
    if (slip.kind === 'exposure') return at(EXPOSURE, [-0.8, 0.8])
    if (slip.kind === 'white-balance') return at(MIRED, [-40, 40])
    return [usual]
  }

  /** What is fitted for the slip itself: stops of a light or of the frame, mired of white balance; null for all else. */
  amountOf({ slip, values }: Fit): number | null {
    if (slip.kind === 'power') return values[LIGHTS + this.lightOf(slip)]!
    if (slip.kind === 'exposure') return values[EXPOSURE]!
    return slip.kind === 'white-balance' ? values[MIRED]! : null
  }

  /** An area's channels, stray light and all, before the clip. @param own whether light by light as fitted, or as planned */
  channels(light: AreaLight, values: readonly number[], index: number, veil: CameraRgb): CameraRgb {
    const { lights } = this.model
    const sum: [number, number, number] = [light.room[3 * index]! + veil[0], light.room[3 * index + 1]! + veil[1], light.room[3 * index + 2]! + veil[2]]
    for (let l = 0; l < lights.length; l++) {
      const times = timesFromStops(values[LIGHTS + l]!)
      const at = 3 * (index * lights.length + l)
      for (let k = 0; k < 3; k++) sum[k] = sum[k]! + times * light.byLight[at + k]!
    }
    const exposed = timesFromStops(values[EXPOSURE]!)
    const mired = values[MIRED]!
    return [
      sum[0] * exposed * Math.exp(this.perMired[0] * mired),
      sum[1] * exposed * Math.exp(this.perMired[1] * mired),
      sum[2] * exposed * Math.exp(this.perMired[2] * mired),
    ]
  }

  /** Stray light over everything. */
  veilOf(light: AreaLight): CameraRgb {
    const mean = meanChannels(light)
    const { veilShare } = this.model
    return [mean[0] * veilShare[0], mean[1] * veilShare[1], mean[2] * veilShare[2]]
  }

  private residuals(light: AreaLight, values: readonly number[]): Float64Array {
    const veil = this.veilOf(light)
    const found = new Float64Array(3 * this.observed.length)
    const contrast = Math.min(Math.max(values[CONTRAST]!, -0.8), 1.5)
    this.observed.forEach(({ index, y, logY, lab, perAb }, i) => {
      const linear = shown(this.model.showing, this.channels(light, values, index, veil), contrast)
      const shownY = luminanceOf(linear)
      // Colour apart from brightness: at the photograph's own luminance.
      const times = shownY > 0 ? y / shownY : 1
      const there = labOfXyz(xyzFromLinear([linear[0] * times, linear[1] * times, linear[2] * times]))
      found[3 * i] = (logY - Math.log2(shownY + DARK_FLOOR)) / USUAL.areaStops
      found[3 * i + 1] = (lab.a - there.a) * perAb
      found[3 * i + 2] = (lab.b - there.b) * perAb
    })
    return found
  }

  private step(light: AreaLight, values: readonly number[], residuals: Float64Array, spread: readonly number[], damping: number): Float64Array {
    const slopes = values.map((value, p) => {
      const by = STEPS_OF_DIFFERENCE[p] ?? LIGHT_STEP
      const moved = this.residuals(light, values.with(p, value + by))
      return moved.map((residual, i) => (residual - residuals[i]!) / by)
    })
    const weights = residuals.map((residual) => 1 / (1 + (residual * residual) / (DOUBTED_PAST * DOUBTED_PAST)))
    const size = values.length
    const matrix = new Float64Array(size * size)
    const right = new Float64Array(size)
    for (let p = 0; p < size; p++) {
      const own = 1 / (spread[p]! * spread[p]!)
      right[p] = -values[p]! * own
      for (let i = 0; i < residuals.length; i++) right[p] = right[p]! - weights[i]! * slopes[p]![i]! * residuals[i]!
      for (let q = 0; q <= p; q++) {
        let sum = p === q ? own * (1 + damping) : 0
        for (let i = 0; i < residuals.length; i++) sum += weights[i]! * slopes[p]![i]! * slopes[q]![i]! * (p === q ? 1 + damping : 1)
        matrix[p * size + q] = matrix[q * size + p] = sum
      }
    }
    return solved(matrix, right)
  }

  private spreadOf(slip: Slip): readonly number[] {
    const spread = [
      slip.kind === 'exposure' ? WRONG.exposureStops : USUAL.exposureStops, USUAL.contrast,
      slip.kind === 'white-balance' ? WRONG.mired : USUAL.mired, ...this.model.lights.map(() => USUAL.lightStops as number),
    ]
    return slip.kind === 'power' ? spread.with(LIGHTS + this.lightOf(slip), WRONG.lightStops) : spread
  }

  private lightOf(slip: Slip): number {
    return this.model.lights.findIndex(({ id }) => id === slip.lightIds[0])
  }
}

/** Half the robust squares of the areas, half the squares of what is usually off, and the width of what is allowed. */
function costOf(residuals: Float64Array, values: readonly number[], spread: readonly number[]): number {
  const doubted = DOUBTED_PAST * DOUBTED_PAST
  let cost = 0
  for (const residual of residuals) cost += 0.5 * doubted * Math.log(1 + (residual * residual) / doubted)
  values.forEach((value, i) => { cost += 0.5 * (value / spread[i]!) * (value / spread[i]!) + Math.log(spread[i]!) })
  return cost
}

/** Logarithm of what a mired of white balance does to each channel: 30 mired either way, where it is as good as straight. */
function gainsPerMired(kelvin: number): CameraRgb {
  const mired = 1e6 / kelvin
  const [one, other] = [whiteBalanceGains(1e6 / (mired + 30)), whiteBalanceGains(1e6 / (mired - 30))]
  const slope = (k: 0 | 1 | 2) => Math.log(one[k] / other[k]) / 60
  return [slope(0), slope(1), slope(2)]
}
