import type { MeterReading } from '../../shared-core/predict/prediction.ts'

/** "5.6 and 3", as a meter shows it: full f-number and tenths past it. */
export function readingWords({ fullFNumber, tenths }: MeterReading): string {
  return fullFNumber === null ? 'nothing' : `${fullFNumber} and ${tenths}`
}
