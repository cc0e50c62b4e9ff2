import { whiteBalanceGains } from '../colour/camera.ts'
import { gelLosses } from '../colour/whiteOut.ts'
import type { Gel } from '../plan/schema/kit.ts'
import { usualHead } from '../plan/usual/kit.ts'
import { DENSE_GEL_METER_LOSS_STOPS } from '../predict/gelOpening.ts'
import { flashSpectrum } from '../spectra/flash.ts'
import { gelTransmittance } from '../spectra/gel/gel.ts'

/** Whether a sheet loses so much to an incident meter, under a usual head, that a spare cut of it is packed. */
export function isDenseGel(gel: Gel): boolean {
  const kelvin = usualHead.colourTemperatureKelvin
  const losses = gelLosses({
    flash: flashSpectrum(kelvin), gel: gelTransmittance(gel.source), gains: whiteBalanceGains(kelvin),
  })
  return losses.meterLossStops >= DENSE_GEL_METER_LOSS_STOPS
}
