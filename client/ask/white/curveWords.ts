import type { WhitePoint } from '../../../shared-core/ask/whitePoint.ts'
import { signedStops } from '../../ladder/areaNames.ts'
import { burnsFrom, tradeAt } from './curveShape.ts'

/** What one push gives, in a line: white or what lacks, the rim, black. */
export function pushInWords(curve: readonly WhitePoint[], push: number): string {
  const missing = tradeAt(curve, 'missing', push)
  const rim = tradeAt(curve, 'rim', push)
  const black = tradeAt(curve, 'black', push)
  const burns = burnsFrom(curve)
  const white = missing === null ? 'Dark behind' : missing > 0.05 ? `Worst corner lacks ${missing.toFixed(1)}` : push < 0.05 ? 'Every corner just white' : `Every corner white, ${push.toFixed(1)} in hand`
  const edge = burns !== null && push > burns ? `, burnt by ${(push - burns).toFixed(1)}` : ''
  return [white, ...(rim === null ? [] : [`rim ${signedStops(rim)}${edge}`]), ...(black === null ? [] : [`black ${signedStops(black)}`])].join(' · ')
}
