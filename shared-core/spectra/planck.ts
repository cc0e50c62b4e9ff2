import { spectrumOf, type EmissionSpectrum } from './spectrum.ts'

/** Second radiation constant in m K, with the rounding of CIE colorimetry; CODATA 2018 has 1.438776877e-2. */
export const SECOND_RADIATION_CONSTANT = 1.4388e-2

/**
 * Light of a glowing black body, relative power a nanometre, 100 at 560 nm.
 * Planck's law, S ∝ λ⁻⁵ / (exp(c₂ / λT) − 1).
 * @param kelvin above 0; sensible from 800 K up.
 */
export function planckianSpectrum(kelvin: number, secondRadiationConstant = SECOND_RADIATION_CONSTANT): EmissionSpectrum {
  if (!(kelvin > 0)) throw new RangeError(`a colour temperature must be above 0 K, not ${kelvin}`)
  const exponentTimesNm = (secondRadiationConstant * 1e9) / kelvin
  const at560 = Math.exp(exponentTimesNm / 560) - 1
  return spectrumOf<EmissionSpectrum>((nm) => {
    const ratio = 560 / nm
    const fifthPower = ratio * ratio * ratio * ratio * ratio
    return (100 * fifthPower * at560) / (Math.exp(exponentTimesNm / nm) - 1)
  })
}
