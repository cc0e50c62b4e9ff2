import { boundedMemo } from './boundedMemo.ts'
import { DAYLIGHT_NAME_FACTOR, daylightSpectrum } from './daylight.ts'
import { inPhotopicUnits } from './photopic.ts'
import { planckianSpectrum } from './planck.ts'
import type { EmissionSpectrum } from './spectrum.ts'

/** From here up a flash is CIE daylight; from the lower figure down it is a glowing body; between them it is both. */
const DAYLIGHT_FROM_KELVIN = 5_000
const PLANCKIAN_TO_KELVIN = 4_000

/**
 * Light of a flash head of a colour temperature, in photopic units (∫ S ȳ dλ = 1), so that its luminous energy in
 * lumen-seconds multiplies it.
 *
 * Studio heads are specified at 5400-6000 K; a coated xenon tube near there is close to daylight, which is why D55 is
 * the sound default. The lines of a real tube are left out: makers publish no spectra, and behind a gel they move a
 * channel by less than the spread between two heads. Warmer sources (lamps, room light) follow Planck; between 4000
 * and 5000 K the two are blended so that turning the temperature never jumps.
 * @param kelvin 1000-25000; clamped.
 */
export const flashSpectrum: (kelvin: number) => EmissionSpectrum = boundedMemo(64, String, (kelvin: number) => {
  const t = Math.min(Math.max(kelvin, 1_000), 25_000)
  if (t <= PLANCKIAN_TO_KELVIN) return inPhotopicUnits(planckianSpectrum(t))
  const daylight = inPhotopicUnits(daylightSpectrum(t * DAYLIGHT_NAME_FACTOR))
  if (t >= DAYLIGHT_FROM_KELVIN) return daylight
  const glowing = inPhotopicUnits(planckianSpectrum(t))
  const share = (t - PLANCKIAN_TO_KELVIN) / (DAYLIGHT_FROM_KELVIN - PLANCKIAN_TO_KELVIN)
  return daylight.map((value, i) => share * value + (1 - share) * (glowing[i] as number)) as EmissionSpectrum
})
