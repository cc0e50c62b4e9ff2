import { formatSize } from '../../../shared-core/plan/entry/size.ts'
import type { Units } from '../../session/board.ts'

/** A size in whole millimetres as this person measures. */
export function sizeText(widthMillimetres: number, heightMillimetres: number, units: Units): string {
  return formatSize(widthMillimetres / 1_000, heightMillimetres / 1_000, units)
}

/** "30 cm" or `12"`. */
export function lengthText(millimetres: number, units: Units): string {
  return units === 'metric' ? `${millimetres / 10} cm` : `${Math.round(millimetres / 12.7) / 2}"`
}
