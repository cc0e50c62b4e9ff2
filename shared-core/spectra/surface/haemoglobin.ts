import { spectrumOf } from '../spectrum.ts'

/**
 * Molar extinction of haemoglobin in cm⁻¹/M, with oxygen and without, 380-780 nm at 10 nm: S. Prahl's tabulation at the
 * Oregon Medical Laser Center (omlc.org), from W. B. Gratzer and N. Kollias. Below 400 nm the value at 400 is held.
 */
const OXYGENATED = [
  266232, 266232, 266232, 466840, 480360, 246072, 102580, 62816, 44480, 33209.2, 26629.2, 23684.4, 20932.8, 20035.2,
  24202.4, 39956.8, 53236, 43016, 32613.2, 44496, 50104, 14400.8, 3200, 1506, 942, 610, 442, 368, 319.6, 294, 277.6, 276,
  290, 314, 348, 390, 446, 518, 586, 650, 710,
]
const DEOXYGENATED = [
  223296, 223296, 223296, 303956, 407560, 528600, 413280, 103292, 23388.8, 16156.4, 14550, 16684, 20862, 25773.6,
  31589.6, 39036.4, 46592, 53412, 53788, 45072, 37020, 28324.4, 14677.2, 9443.6, 6509.6, 5148.8, 4345.2, 3750.12,
  3226.56, 2795.12, 2407.92, 2051.96, 1794.28, 1540.48, 1325.88, 1102.2, 1115.88, 1405.24, 1548.52, 1311.88, 1075.44,
]

/** Haemoglobin in whole blood, g/L, and its molar mass, g/mol (same page): absorption is 2.303 e x / 64500. */
const GRAMS_PER_LITRE = 150
const GRAMS_PER_MOLE = 64_500

const atNm = (table: readonly number[], nm: number): number => {
  const position = (nm - 380) / 10
  const below = Math.floor(position)
  const low = table[below] as number
  return low + ((table[below + 1] ?? low) - low) * (position - below)
}

/**
 * Absorption coefficient of whole blood in cm⁻¹ on the grid, linear between the rows of the table.
 * @param saturation share of haemoglobin that carries oxygen, 0-1.
 */
export function bloodAbsorption(saturation: number): Float64Array {
  const perMole = (2.303 * GRAMS_PER_LITRE) / GRAMS_PER_MOLE
  return spectrumOf<Float64Array>(
    (nm) => perMole * (saturation * atNm(OXYGENATED, nm) + (1 - saturation) * atNm(DEOXYGENATED, nm)),
  )
}
