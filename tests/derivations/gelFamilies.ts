/**
 * Derives gelFamilyDyes of shared-core/spectra/gel/families.ts. Run: npx tsx tests/derivations/gelFamilies.ts
 *
 * Each hue has a shape (edge, two ends, band) whose parameters are searched so that the sheet loses, by meter and in the
 * generic camera, what the trade expects of the hue (common practice, no source), and shows the hue it is named for on
 * white (OKLab angle). Where broad camera responses cannot lose as much in the weakest channel, the nearest is taken.
 */
import { convertLrgbToOklab } from 'culori/fn'
import { channelsOf, channelsThrough, whiteBalanceGains } from '../../shared-core/colour/camera.ts'
import { xyzFromChannels } from '../../shared-core/colour/cameraMatrix.ts'
import { linearFromXyz } from '../../shared-core/spectra/srgb.ts'
import { flashSpectrum } from '../../shared-core/spectra/flash.ts'
import { luminousShare } from '../../shared-core/spectra/photopic.ts'
import { sheetOfDye, type DyeCurve, type GelFamily } from '../../shared-core/spectra/gel/families.ts'
import { descend } from './descend.ts'

type Shape = 'long' | 'short' | 'band' | 'ends'

interface Wish {
  readonly shape: Shape
  readonly meterLossStops: number
  /** Loss of each channel in stops; null leaves a channel to the shape. */
  readonly channels: readonly [red: number | null, green: number | null, blue: number | null]
  readonly hueDegrees: number
  readonly start: readonly number[]
  /** A pale dye is a shallow, broad dip, not a narrow deep one: least leak and softest edge allowed. */
  readonly pale?: { readonly leak: number; readonly widthNm: number }
}

const stopsOf = (...shares: readonly [number, number, number]): [number, number, number] =>
  shares.map((share) => -Math.log2(share)) as [number, number, number]

const LONG = [0.05, 0.9, 560, 16]
const ENDS = [0.05, 0.4, 465, 16, 0.8, 600, 16]
const BAND = [0.04, 0.75, 480, 12, 570, 14]
const SHORT = [0.05, 0.7, 510, 16]

const wishes: Readonly<Record<GelFamily, Wish>> = {
  straw: {
    shape: 'long', meterLossStops: 0.28, channels: [0.12, null, 0.9], hueDegrees: 92,
    start: [0.45, 0.5, 490, 20], pale: { leak: 0.4, widthNm: 18 },
  },
  yellow: {
    shape: 'long', meterLossStops: 0.4, channels: [0.13, null, 3.4], hueDegrees: 104,
    start: [0.05, 0.93, 490, 12],
  },
  apricot: { shape: 'long', meterLossStops: 0.7, channels: stopsOf(0.92, 0.55, 0.18), hueDegrees: 68, start: LONG },
  amber: { shape: 'long', meterLossStops: 0.9, channels: [0.13, null, 2.9], hueDegrees: 68, start: LONG },
  orange: { shape: 'long', meterLossStops: 1.4, channels: [0.18, null, 4.5], hueDegrees: 50, start: LONG },
  red: { shape: 'long', meterLossStops: 3.1, channels: [1.5, null, 5.6], hueDegrees: 30, start: [0.01, 0.9, 610, 12] },
  pink: {
    shape: 'ends', meterLossStops: 0.7, channels: [0.13, 1.25, 0.6], hueDegrees: 0,
    start: [0.4, 0.3, 470, 18, 0.5, 580, 18], pale: { leak: 0.22, widthNm: 16 },
  },
  rose: { shape: 'ends', meterLossStops: 1.9, channels: [0.25, 3, 2], hueDegrees: 8, start: ENDS },
  magenta: { shape: 'ends', meterLossStops: 2.4, channels: [0.4, 4, 1.0], hueDegrees: 338, start: ENDS },
  lavender: {
    shape: 'ends', meterLossStops: 1.15, channels: [null, 1.6, 0.4], hueDegrees: 304,
    start: [0.3, 0.5, 480, 18, 0.3, 610, 18], pale: { leak: 0.2, widthNm: 18 },
  },
  violet: { shape: 'ends', meterLossStops: 3.05, channels: stopsOf(0.2, 0.05, 0.55), hueDegrees: 300, start: ENDS },
  blue: { shape: 'short', meterLossStops: 3, channels: [4.3, null, 0.8], hueDegrees: 256, start: SHORT },
  sky: {
    shape: 'short', meterLossStops: 0.95, channels: [1.6, null, 0.3], hueDegrees: 236,
    start: [0.27, 0.7, 530, 38], pale: { leak: 0.15, widthNm: 20 },
  },
  turquoise: {
    shape: 'band', meterLossStops: 1.25, channels: [3.1, null, 0.5], hueDegrees: 190,
    start: [0.08, 0.7, 430, 12, 560, 18],
  },
  teal: { shape: 'band', meterLossStops: 1.9, channels: [4, 0.9, 1.0], hueDegrees: 190, start: BAND },
  green: { shape: 'band', meterLossStops: 2, channels: [4, 1.0, 4], hueDegrees: 146, start: BAND },
  moss: { shape: 'band', meterLossStops: 1.3, channels: stopsOf(0.22, 0.5, 0.08), hueDegrees: 136, start: BAND },
  pistachio: {
    shape: 'band', meterLossStops: 0.25, channels: stopsOf(0.72, 0.92, 0.38), hueDegrees: 120,
    start: [0.35, 0.6, 480, 16, 620, 30], pale: { leak: 0.15, widthNm: 14 },
  },
}

function dyeOf(shape: Shape, p: readonly number[]): DyeCurve {
  const leak = Math.max(p[0]!, 1e-4)
  switch (shape) {
    case 'long':
      return { leak, bands: [{ height: p[1]!, fromNm: p[2]!, fromWidthNm: p[3]! }] }
    case 'short':
      return { leak, bands: [{ height: p[1]!, toNm: p[2]!, toWidthNm: p[3]! }] }
    case 'band':
      return { leak, bands: [{ height: p[1]!, fromNm: p[2]!, fromWidthNm: p[3]!, toNm: p[4]!, toWidthNm: p[5]! }] }
    case 'ends':
      return {
        leak,
        bands: [
          { height: p[1]!, toNm: p[2]!, toWidthNm: p[3]! },
          { height: p[4]!, fromNm: p[5]!, fromWidthNm: p[6]! },
        ],
      }
  }
}

const flash = flashSpectrum(5_500)
const gains = whiteBalanceGains(5_500)
const clear = channelsOf(flash, gains)

function lossesOf(dye: DyeCurve): { meter: number; channels: number[]; hueDegrees: number } {
  const sheet = sheetOfDye(dye, 1)
  const through = channelsThrough(flash, sheet, gains)
  const [r, g, b] = linearFromXyz(xyzFromChannels(through, 5_500))
  const lab = convertLrgbToOklab({ r, g, b })
  return {
    hueDegrees: (Math.atan2(lab.b, lab.a) * 180) / Math.PI,
    meter: -Math.log2(luminousShare(flash, sheet)),
    channels: through.map((value, k) => -Math.log2(value / clear[k]!)),
  }
}

/** Dyes leak a little, never pass more than all, and have soft edges. */
function implausible({ shape, pale }: Wish, p: readonly number[]): number {
  const heights = shape === 'ends' ? [p[1]!, p[4]!] : [p[1]!]
  const widths = shape === 'ends' ? [p[3]!, p[6]!] : shape === 'band' ? [p[3]!, p[5]!] : [p[3]!]
  const below = (value: number, least: number): number => Math.max(least - value, 0) ** 2
  return (
    1e5 * below(p[0]!, pale?.leak ?? 0.008) +
    heights.reduce((sum, height) => sum + 1e5 * (below(height, 0.02) + below(0.995 - p[0]! - height, 0)), 0) +
    widths.reduce((sum, width) => sum + 10 * below(width, pale?.widthNm ?? 11) + below(40 - width, 0), 0)
  )
}

const angleBetween = (a: number, b: number): number => Math.abs(((((a - b) % 360) + 540) % 360) - 180)

const digits = (value: number): number => (Math.abs(value) < 2 ? 3 : 0)

for (const [name, wish] of Object.entries(wishes)) {
  const cost = (p: readonly number[]): number => {
    const { meter, channels, hueDegrees } = lossesOf(dyeOf(wish.shape, p))
    const missed = channels.reduce((sum, loss, k) => {
      const wanted = wish.channels[k]
      return wanted === null || wanted === undefined ? sum : sum + ((loss - wanted) / (0.05 + 0.1 * wanted)) ** 2
    }, 0)
    const hueMissed = (angleBetween(hueDegrees, wish.hueDegrees) / 3) ** 2
    const meterMissed = ((meter - wish.meterLossStops) / 0.05) ** 2
    return implausible(wish, p) + missed + hueMissed + meterMissed
  }
  let p: number[] = [...wish.start]
  for (let round = 0; round < 5; round++) p = descend(cost, p, p.map((v) => (v > 100 ? 12 : v > 2 ? 4 : 0.05)), 1_500)
  const rounded = p.map((v) => Number(v.toFixed(digits(v))))
  const { meter, channels, hueDegrees } = lossesOf(dyeOf(wish.shape, rounded))
  const list = channels.map((loss) => loss.toFixed(2)).join(' ')
  const losses = `meter ${meter.toFixed(2)} channels ${list} hue ${hueDegrees.toFixed(0)}`
  console.log(`${name}: ${wish.shape} ${rounded.join(', ')}  | ${losses}`)
}
