import { SECOND_RADIATION_CONSTANT, planckianSpectrum } from '../planck.ts'
import { spectrumOf, type TransmittanceSpectrum } from '../spectrum.ts'
import { CLEAR_SHEET } from './families.ts'

/** What a warming sheet starts from (flash) and a cooling one (tungsten). Both ends of a shift then exist. */
const DAYLIGHT_KELVIN = 5_500
const TUNGSTEN_KELVIN = 3_200

/**
 * The filter that turns one black body exactly into another: the ratio of their spectra, scaled so that its highest
 * value over 380-780 nm is 1. The least lossy of all exact ones.
 */
export function planckianRatio(fromKelvin: number, toKelvin: number): TransmittanceSpectrum {
  const from = planckianSpectrum(fromKelvin)
  const to = planckianSpectrum(toKelvin)
  const ratio = to.map((value, i) => value / (from[i] as number))
  const highest = ratio.reduce((most, value) => Math.max(most, value), 0)
  return ratio.map((value) => value / highest) as TransmittanceSpectrum
}

/** Where real sheets leave the exact ratio, since the eye sees little beyond: they stay clear instead of ever clearer. */
const WARM_LEVEL_FROM_NM = 680
const COOL_LEVEL_BELOW_NM = 440
/** How sharply; higher is sharper. */
const LEVELLING = 6

/**
 * A conversion sheet: lets through light so that a source moves by a shift in reciprocal megakelvin.
 *
 * In Wien's form the ratio of two black bodies depends on the shift alone, T ∝ exp(−c₂ · shift / λ), so one sheet gives
 * one shift to every source. Levelled out at the far end of the spectrum, as real sheets are, which costs less light than
 * the exact ratio (about 0.9 stop instead of 1.3 for the full warm sheet).
 * @param shiftMired −300 to 400; positive is warmer.
 */
export function correctionTransmittance(shiftMired: number): TransmittanceSpectrum {
  if (shiftMired === 0) return spectrumOf<TransmittanceSpectrum>(() => CLEAR_SHEET)
  const levelNm = shiftMired > 0 ? WARM_LEVEL_FROM_NM : COOL_LEVEL_BELOW_NM
  const strengthNm = SECOND_RADIATION_CONSTANT * 1e9 * shiftMired * 1e-6
  return spectrumOf<TransmittanceSpectrum>((nm) => {
    const overLevel = strengthNm * (1 / levelNm - 1 / nm)
    return CLEAR_SHEET * Math.exp(-Math.log(1 + Math.exp(-LEVELLING * overLevel)) / LEVELLING)
  })
}

export { DAYLIGHT_KELVIN, TUNGSTEN_KELVIN }
