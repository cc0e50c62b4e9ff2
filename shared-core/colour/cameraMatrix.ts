import { boundedMemo } from '../spectra/boundedMemo.ts'
import { flashSpectrum } from '../spectra/flash.ts'
import { spectrumOf, type ReflectanceSpectrum } from '../spectra/spectrum.ts'
import { SRGB_WHITE_XYZ } from '../spectra/srgb.ts'
import { adaptationMatrix } from './adaptation.ts'
import { channelsThrough, whiteBalanceGains } from './camera.ts'
import { applyMatrix, type Matrix3 } from './matrix.ts'
import type { CameraRgb, Xyz } from './triples.ts'
import { lightThrough, xyzOfLight } from './xyz.ts'

const rising = (nm: number, edgeNm: number, widthNm: number): number => 1 / (1 + Math.exp((edgeNm - nm) / widthNm))

/**
 * The surfaces the matrix is fitted on: soft edges up and down and soft bands across the spectrum, at two strengths of
 * colour. Made from a formula and not from measured skins or papers, which stay free to check it.
 */
const trainingSurfaces: readonly ReflectanceSpectrum[] = [0.15, 0.45].flatMap((floor) => {
  const peak = 0.8
  const between = (shape: (nm: number) => number): ReflectanceSpectrum =>
    spectrumOf<ReflectanceSpectrum>((nm) => floor + (peak - floor) * shape(nm))
  const edges = [460, 490, 520, 550, 580, 610]
  const bands = [430, 470, 510, 550, 590, 630]
  return [
    ...edges.map((edge) => between((nm) => rising(nm, edge, 18))),
    ...edges.map((edge) => between((nm) => 1 - rising(nm, edge, 18))),
    ...bands.map((middle) => between((nm) => rising(nm, middle - 40, 14) * (1 - rising(nm, middle + 40, 14)))),
    ...bands.map((middle) => between((nm) => 1 - rising(nm, middle - 40, 14) * (1 - rising(nm, middle + 40, 14)))),
  ]
})

/** Least share of each channel in luminance: keeps every clipped colour between black and white. */
const LEAST_LUMINANCE_SHARE = 0.02

/**
 * The matrix from balanced, clipped channels to XYZ (D65 white, Y = 1), for one white balance.
 *
 * Least squares over trainingSurfaces lit by a clear flash of that temperature and adapted from its white to D65
 * (CAT16), under the condition that 1, 1, 1 becomes D65 exactly, so that white stays white. Misses count by the slope of
 * lightness, or bright surfaces alone would decide.
 */
export const cameraMatrix: (whiteBalanceKelvin: number) => Matrix3 = boundedMemo(32, String, (kelvin: number) => {
  const flash = flashSpectrum(kelvin)
  const gains = whiteBalanceGains(kelvin)
  const clear = channelsThrough(flash, spectrumOf<Float64Array>(() => 1), gains)
  const toD65 = adaptationMatrix(SRGB_WHITE_XYZ, xyzOfLight(flash), 'cat16')
  const samples = trainingSurfaces.map((surface) => {
    const [red, green, blue] = channelsThrough(flash, surface, gains)
    const xyz = applyMatrix(toD65, xyzOfLight(lightThrough(flash, surface)))
    return { channels: [red / clear[0], green / clear[1], blue / clear[2]] as const, xyz }
  })
  return [fitRow(samples, 0), fitRow(samples, 1), fitRow(samples, 2)]
})

interface Sample {
  readonly channels: readonly [number, number, number]
  readonly xyz: readonly [number, number, number]
}

/** One row m with m · (1,1,1) = white: the third share follows from the other two. */
function fitRow(samples: readonly Sample[], row: 0 | 1 | 2): [number, number, number] {
  const white = SRGB_WHITE_XYZ[row]
  let aa = 0
  let ab = 0
  let bb = 0
  let ay = 0
  let by = 0
  for (const { channels, xyz } of samples) {
    const relative = xyz[row] / white
    const slope = 1 / Math.cbrt(relative * relative)
    const weight = slope * slope
    const a = channels[0] - channels[2]
    const b = channels[1] - channels[2]
    const y = relative - channels[2]
    aa += weight * a * a
    ab += weight * a * b
    bb += weight * b * b
    ay += weight * a * y
    by += weight * b * y
  }
  const determinant = aa * bb - ab * ab
  const red = (ay * bb - by * ab) / determinant
  const green = (by * aa - ay * ab) / determinant
  const blue = 1 - red - green
  if (row === 1 && blue < LEAST_LUMINANCE_SHARE) {
    // Green then follows from red alone: minimise along the line blue = least share.
    const rest = 1 - LEAST_LUMINANCE_SHARE
    const redAlone = (ay - by - rest * (ab - bb)) / (aa - 2 * ab + bb)
    return [redAlone * white, (rest - redAlone) * white, LEAST_LUMINANCE_SHARE * white]
  }
  return [red * white, green * white, blue * white]
}

/**
 * XYZ (D65, Y = 1) of balanced channels. White balance decides the matrix but not the white: equal channels are neutral.
 * @param rgb clipped channels; see clipChannels.
 */
export function xyzFromChannels(rgb: CameraRgb, whiteBalanceKelvin: number): Xyz {
  return applyMatrix(cameraMatrix(whiteBalanceKelvin), rgb)
}
