import { DAYLIGHT_NAME_FACTOR, daylightSpectrum } from './daylight.ts'
import { planckianSpectrum } from './planck.ts'
import { spectrumOf, type EmissionSpectrum } from './spectrum.ts'

/**
 * CIE standard illuminants and E, 100 at 560 nm (CIE 15). A has the constants of its definition, 1.435e-2 m K at 2848 K
 * (CIE S 014-2).
 */
export const illuminants: Readonly<Record<'A' | 'D50' | 'D55' | 'D65' | 'E', EmissionSpectrum>> = {
  A: planckianSpectrum(2_848, 1.435e-2),
  D50: daylightSpectrum(5_000 * DAYLIGHT_NAME_FACTOR, true),
  D55: daylightSpectrum(5_500 * DAYLIGHT_NAME_FACTOR, true),
  D65: daylightSpectrum(6_500 * DAYLIGHT_NAME_FACTOR, true),
  E: spectrumOf<EmissionSpectrum>(() => 100),
}
