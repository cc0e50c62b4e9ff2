import { formatNumber } from '../../shared-core/plan/entry/number.ts'
import type { Snag } from '../../shared-core/predict/snag.ts'

/** "2.0, limit 3.0 stops": where it stands and where it should. */
export function snagNumbers({ value, threshold, unit }: Pick<Snag, 'value' | 'threshold' | 'unit'>): string {
  return `${snagNumber(value)}, limit ${snagNumber(threshold)}${unit === '' ? '' : ` ${unit}`}`
}

/** A check's number as the list writes it. */
export function snagNumber(value: number): string {
  return formatNumber(value, Math.abs(value) < 10 ? 1 : 0)
}
