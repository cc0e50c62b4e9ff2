import { spectrumOf, wavelengthNm, type EmissionSpectrum } from './spectrum.ts'

/** The range CIE 15 gives the daylight locus for. */
export const DAYLIGHT_RANGE_KELVIN = { lowest: 4_000, highest: 25_000 } as const

/** The second radiation constant of today over the one the daylight illuminants were named with (CIE 15). */
export const DAYLIGHT_NAME_FACTOR = 1.4388 / 1.438

/**
 * CIE 15: mean daylight and its two main variations, 380-780 nm at 10 nm; between them CIE interpolates linearly.
 * Figures as in `B_cieday` of Psychtoolbox-3 (Expat licence, notice in LICENSE).
 */
const MEAN = [
  63.4, 65.8, 94.8, 104.8, 105.9, 96.8, 113.9, 125.6, 125.5, 121.3, 121.3, 113.5, 113.1, 110.8, 106.5, 108.8, 105.3,
  104.4, 100, 96, 95.1, 89.1, 90.5, 90.3, 88.4, 84, 85.1, 81.9, 82.6, 84.9, 81.3, 71.9, 74.3, 76.4, 63.3, 71.7, 77,
  65.2, 47.7, 68.6, 65,
]
const YELLOW_TO_BLUE = [
  38.5, 35, 43.4, 46.3, 43.9, 37.1, 36.7, 35.9, 32.6, 27.9, 24.3, 20.1, 16.2, 13.2, 8.6, 6.1, 4.2, 1.9, 0, -1.6, -3.5,
  -3.5, -5.8, -7.2, -8.6, -9.5, -10.9, -10.7, -12, -14, -13.6, -12, -13.3, -12.9, -10.6, -11.6, -12.2, -10.2, -7.8,
  -11.2, -10.4,
]
const PINK_TO_GREEN = [
  3, 1.2, -1.1, -0.5, -0.7, -1.2, -2.6, -2.9, -2.8, -2.6, -2.6, -1.8, -1.5, -1.3, -1.2, -1, -0.5, -0.3, 0, 0.2, 0.5,
  2.1, 3.2, 4.1, 4.7, 5.1, 6.7, 7.3, 8.6, 9.8, 10.2, 8.3, 9.6, 8.5, 7, 7.6, 8, 6.7, 5.2, 7.4, 6.8,
]

function fromTenNm(table: readonly number[], nm: number): number {
  const position = (nm - wavelengthNm(0)) / 10
  const below = Math.floor(position)
  const low = table[below] as number
  const high = table[below + 1] ?? low
  return low + (high - low) * (position - below)
}

/** Chromaticity of the CIE daylight locus (CIE 15). `kelvin` is clamped to 4000-25000. */
export function daylightChromaticity(kelvin: number): { x: number; y: number } {
  const t = Math.min(Math.max(kelvin, DAYLIGHT_RANGE_KELVIN.lowest), DAYLIGHT_RANGE_KELVIN.highest)
  const x =
    t <= 7_000
      ? -4.607e9 / (t * t * t) + 2.9678e6 / (t * t) + 99.11 / t + 0.244063
      : -2.0064e9 / (t * t * t) + 1.9018e6 / (t * t) + 247.48 / t + 0.23704
  return { x, y: -3 * x * x + 2.87 * x - 0.275 }
}

/** CIE asks for the two weights to three decimals when an illuminant is tabulated. */
const toThreeDecimals = (value: number): number => Math.round(value * 1_000) / 1_000

/**
 * CIE daylight of a correlated colour temperature, 100 at 560 nm (CIE 15).
 * Named illuminants take their temperature times DAYLIGHT_NAME_FACTOR.
 * @param kelvin clamped to 4000-25000, where the locus is defined.
 * @param rounded weights to three decimals as in the CIE's tables; off, so that the curve moves smoothly with kelvin.
 */
export function daylightSpectrum(kelvin: number, rounded = false): EmissionSpectrum {
  const { x, y } = daylightChromaticity(kelvin)
  const m = 0.0241 + 0.2562 * x - 0.7341 * y
  const exact1 = (-1.3515 - 1.7703 * x + 5.9114 * y) / m
  const exact2 = (0.03 - 31.4424 * x + 30.0717 * y) / m
  const m1 = rounded ? toThreeDecimals(exact1) : exact1
  const m2 = rounded ? toThreeDecimals(exact2) : exact2
  return spectrumOf<EmissionSpectrum>(
    (nm) => fromTenNm(MEAN, nm) + m1 * fromTenNm(YELLOW_TO_BLUE, nm) + m2 * fromTenNm(PINK_TO_GREEN, nm),
  )
}
