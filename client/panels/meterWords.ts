import type { MeterReading } from '../../shared-core/predict/prediction.ts'

/** "f/8 and 3 tenths": as a meter shows a reading and as it is read aloud. */
export function meterInWords(reading: MeterReading): string {
  if (reading.fullFNumber === null) return 'no light'
  if (reading.tenths === 0) return `f/${reading.fullFNumber}`
  return `f/${reading.fullFNumber} and ${reading.tenths} ${reading.tenths === 1 ? 'tenth' : 'tenths'}`
}
