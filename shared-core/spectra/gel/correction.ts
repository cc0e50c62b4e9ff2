import { SECOND_RADIATION_CONSTANT } from '../planck.ts'
import { spectrumOf, type TransmittanceSpectrum } from '../spectrum.ts'
import { CLEAR_SHEET } from './families.ts'

/** Where real sheets leave the exact ratio, since the eye sees little beyond: they stay level instead of ever clearer. */
const WARM_LEVEL_FROM_NM = 680
const COOL_LEVEL_BELOW_NM = 440
/** How softly they level out: scale of the bend in 1/nm, about 30 nm of wavelength at the red end. */
const BEND_PER_NM = 1 / 15_000

/**
 * A conversion sheet: moves a light by a shift in reciprocal megakelvin.
 *
 * In Wien's form the ratio of two black bodies depends on the shift alone, T ∝ exp(−c₂ · shift / λ), so one sheet gives
 * one shift to every source, and sheets add: two of 65 are one of 130. Levelled out at the far end of the spectrum, as
 * real sheets are, which costs less light than the exact ratio.
 * @param shiftMired −300 to 400; positive is warmer.
 */
export function correctionTransmittance(shiftMired: number): TransmittanceSpectrum {
  const warm = shiftMired > 0
  const levelNm = warm ? WARM_LEVEL_FROM_NM : COOL_LEVEL_BELOW_NM
  const strengthNm = Math.abs(SECOND_RADIATION_CONSTANT * 1e9 * shiftMired * 1e-6)
  return spectrumOf<TransmittanceSpectrum>((nm) => {
    const pastLevel = warm ? 1 / nm - 1 / levelNm : 1 / levelNm - 1 / nm
    const bent = BEND_PER_NM * Math.log(1 + Math.exp(pastLevel / BEND_PER_NM))
    return CLEAR_SHEET * Math.exp(-strengthNm * bent)
  })
}
