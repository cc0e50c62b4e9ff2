import { METRES_PER_FOOT } from '../../shared-core/plan/entry/length.ts'
import type { Units } from '../session/board.ts'

/** Lengths a bar may stand for, in metres with their words. */
const LENGTHS: Readonly<Record<Units, readonly (readonly [metres: number, words: string])[]>> = {
  metric: [[0.1, '10 cm'], [0.2, '20 cm'], [0.5, '50 cm'], [1, '1 m'], [2, '2 m'], [5, '5 m']],
  imperial: [
    [METRES_PER_FOOT / 2, '6"'], [METRES_PER_FOOT, "1'"], [2 * METRES_PER_FOOT, "2'"], [5 * METRES_PER_FOOT, "5'"], [10 * METRES_PER_FOOT, "10'"],
  ],
}
const SHORTEST_PIXELS = 52

/** How long a metre is here. */
export function ScaleBar({ pixelsPerMetre, units }: { readonly pixelsPerMetre: number; readonly units: Units }) {
  const choices = LENGTHS[units]
  const [metres, words] = choices.find(([length]) => length * pixelsPerMetre >= SHORTEST_PIXELS) ?? choices[choices.length - 1]!
  return (
    <div className="floor-scale" style={{ width: metres * pixelsPerMetre }}>
      <span>{words}</span>
    </div>
  )
}
