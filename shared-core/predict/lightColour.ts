import type { Light } from '../plan/schema/look.ts'
import type { Head } from '../plan/schema/kit.ts'
import type { Plan } from '../plan/schema/plan.ts'
import { rangeStops, stopsFromFull } from '../exposure/power.ts'
import { flashSpectrum } from '../spectra/flash.ts'
import { gelTransmittance, stack } from '../spectra/gel/gel.ts'
import { WAVELENGTH_COUNT, type EmissionSpectrum, type TransmittanceSpectrum } from '../spectra/spectrum.ts'

/** One light's own colour: the head's flash at this power, and after the sheets in front of it. */
export interface LightColour {
  readonly colourTemperatureKelvin: number
  readonly flash: EmissionSpectrum
  /** Null without sheets. */
  readonly gel: TransmittanceSpectrum | null
  /** Flash through the gel, in photopic units of the clear lamp. */
  readonly emission: EmissionSpectrum
}

/** A head grows bluer towards its lowest power: the drift is taken as even over its range in stops. */
export function flashKelvin(head: Head, energyJoules: number): number {
  const range = rangeStops(head)
  const down = range > 0 ? Math.min(Math.max(-stopsFromFull(head, energyJoules) / range, 0), 1) : 0
  // Whole tens of kelvin: finer is invisible, and the spectrum is then shared by neighbouring powers.
  return Math.round((head.colourTemperatureKelvin + head.driftKelvinAtLowest * down) / 10) * 10
}

/** A light's spectrum at its power, through its sheets. Sheets that the drawer has no more are passed over. */
export function lightColour(light: Light, head: Head, gels: Plan['gels']): LightColour {
  const kelvin = flashKelvin(head, light.energyJoules)
  const flash = flashSpectrum(kelvin)
  const sheets = light.gelIds.flatMap((id) => (gels[id] ? [gelTransmittance(gels[id].source)] : []))
  if (sheets.length === 0) return { colourTemperatureKelvin: kelvin, flash, gel: null, emission: flash }
  const gel = stack(...sheets)
  const emission = new Float64Array(WAVELENGTH_COUNT) as EmissionSpectrum
  for (let i = 0; i < WAVELENGTH_COUNT; i++) emission[i] = flash[i]! * gel[i]!
  return { colourTemperatureKelvin: kelvin, flash, gel, emission }
}
