/**
 * Derives CHANNEL_SHAPES of shared-core/colour/cameraResponse.ts. Run: npx tsx tests/derivations/camera.ts
 *
 * Each channel's six parameters are fitted so that its reading behind seven gels lies midway, in stops, between two
 * measured cameras. Seven figures for six parameters: the fit says nothing about any other light, so the camera is
 * checked apart from it on measured skins and papers (tests/reference/camera.test.ts).
 */
import { channelResponse, type ChannelShape } from '../../shared-core/colour/cameraResponse.ts'
import { illuminants } from '../../shared-core/spectra/illuminants.ts'
import { checkGels, measuredRaw, type CheckGel } from './checkGels.ts'

const gelNames = Object.keys(checkGels) as CheckGel[]

const shapeOf = (p: readonly number[]): ChannelShape => ({
  peakNm: p[0]!,
  shortWidthNm: p[1]!,
  longWidthNm: p[2]!,
  skirt: p[3]!,
  skirtWidthNm: p[4]!,
  floor: p[5]!,
})

function passOf(response: Float64Array, gel: Float64Array): number {
  let clear = 0
  let gelled = 0
  response.forEach((value, i) => {
    clear += value * illuminants.D55[i]!
    gelled += value * illuminants.D55[i]! * gel[i]!
  })
  return gelled / clear
}

/** Stops between the model and the middle of the two measured cameras. */
function missesOf(shape: ChannelShape, channel: number): number[] {
  const response = channelResponse(shape)
  return gelNames.map((name) => {
    const [npl, ampas] = measuredRaw[name]
    const middle = (Math.log2(npl[channel]!) + Math.log2(ampas[channel]!)) / 2
    return Math.log2(passOf(response, checkGels[name])) - middle
  })
}

/** Real dyes: a lobe neither a line nor a plateau, a skirt that stays a skirt. Outside these, the cost climbs steeply. */
const LIMITS: readonly (readonly [least: number, most: number])[] = [
  [440, 620], [18, 60], [20, 60], [0, 0.25], [60, 130], [0, 0.02],
]

function costOf(p: readonly number[], channel: number): number {
  const outside = LIMITS.reduce((sum, [least, most], k) => {
    const beyond = Math.max(least - p[k]!, p[k]! - most, 0) / (most - least)
    return sum + 100 * beyond * beyond
  }, 0)
  return outside + missesOf(shapeOf(p), channel).reduce((sum, miss) => sum + miss * miss, 0)
}

/** Nelder and Mead's simplex search (Computer Journal 7, 1965). */
function descend(cost: (p: readonly number[]) => number, start: readonly number[], reach: readonly number[]): number[] {
  const size = start.length
  const at = (p: number[]) => ({ p, cost: cost(p) })
  let simplex = [at([...start]), ...start.map((_, k) => at(start.map((v, j) => (j === k ? v + reach[k]! : v))))]
  for (let step = 0; step < 4_000; step++) {
    simplex.sort((a, b) => a.cost - b.cost)
    const best = simplex[0]!
    const worst = simplex[size]!
    const middle = start.map((_, k) => simplex.slice(0, size).reduce((sum, v) => sum + v.p[k]!, 0) / size)
    const along = (factor: number) => at(middle.map((v, k) => v + factor * (worst.p[k]! - v)))
    const reflected = along(-1)
    if (reflected.cost < best.cost) {
      const further = along(-2)
      simplex[size] = further.cost < reflected.cost ? further : reflected
    } else if (reflected.cost < simplex[size - 1]!.cost) {
      simplex[size] = reflected
    } else {
      const nearer = along(reflected.cost < worst.cost ? -0.5 : 0.5)
      if (nearer.cost < Math.min(worst.cost, reflected.cost)) simplex[size] = nearer
      else simplex = simplex.map((v) => (v === best ? v : at(v.p.map((x, k) => (x + best.p[k]!) / 2))))
    }
  }
  return simplex.sort((a, b) => a.cost - b.cost)[0]!.p
}

const starts = [
  [600, 25, 30, 0.1, 80, 0.01],
  [535, 35, 35, 0.1, 80, 0.005],
  [455, 28, 32, 0.03, 90, 0.002],
]
const digits = [0, 1, 1, 3, 0, 4]
starts.forEach((start, channel) => {
  const cost = (p: readonly number[]) => costOf(p, channel)
  let p = start
  for (let round = 0; round < 6; round++) p = descend(cost, p, [6, 4, 4, 0.03, 10, 0.003])
  const rounded = p.map((v, k) => Number(v.toFixed(digits[k])))
  console.log(['red', 'green', 'blue'][channel], JSON.stringify(shapeOf(rounded)))
  console.log('  stops from the middle:', gelNames.map((n, k) => `${n} ${missesOf(shapeOf(rounded), channel)[k]!.toFixed(3)}`).join(', '))
})
