import type { Camera, MeterSettings } from '../plan/schema/look.ts'
import { exactFNumber, fullAndTenths } from '../exposure/aperture.ts'
import { incidentFNumber, incidentLuxSeconds } from '../exposure/meter.ts'
import { clipLuxSeconds } from '../exposure/saturation.ts'
import { stopsFromTimes } from '../arithmetic/portable.ts'
import type { MeterReading, Taking } from './prediction.ts'

/** A camera's settings as they act: engraved f-numbers at their exact value. */
export function takingOf(camera: Camera): Taking {
  const fNumber = exactFNumber(camera.fNumber)
  return {
    fNumber,
    isoSpeed: camera.isoSpeed,
    shutterSeconds: camera.shutterSeconds,
    whiteBalanceKelvin: camera.whiteBalanceKelvin,
    clipLuxSeconds: clipLuxSeconds(fNumber, camera.isoSpeed, camera.headroomStops),
  }
}

export type Receptor = MeterSettings['receptor']

/** The incident meter's calibration constant C for this receptor, in lux-seconds. */
export function receptorConstant(meter: MeterSettings, receptor: Receptor): number {
  return receptor === 'dome' ? meter.domeConstant : meter.flatConstant
}

/** What a meter shows for an exposure at its receptor. Less than a fiftieth of a lux-second is nothing to any meter. */
export function meterReading(luxSeconds: number, taking: Taking, constant: number): MeterReading {
  const stops = stopsOrNull(luxSeconds / incidentLuxSeconds(taking.fNumber, taking.isoSpeed, constant))
  const fNumber = incidentFNumber(luxSeconds, taking.isoSpeed, constant)
  if (stops === null) return { luxSeconds, fNumber: 0, fullFNumber: null, tenths: 0, stops: null }
  return { luxSeconds, fNumber, ...fullAndTenths(fNumber), stops }
}

/** Darker than this there is no number worth showing, and JSON has no minus infinity. */
const DARKEST_STOPS = -16

/** A ratio of light in stops; null where it is darker than anything a meter or an eye could tell. */
export function stopsOrNull(times: number): number | null {
  const stops = stopsFromTimes(times)
  return stops > DARKEST_STOPS ? stops : null
}

