import type { AreaPrediction, Framing } from '../../shared-core/predict/prediction.ts'
import { bustFrom } from './bust.ts'
import { bustShape } from './bustShape.ts'

/** The areas of the background that the subject stands in front of: a mark on the picture there would be on the subject. */
export function areasBehindSubject(areas: readonly AreaPrediction[], framing: Framing, statureMetres: number): ReadonlySet<string> {
  const bust = bustFrom(areas, framing, statureMetres)
  if (!bust) return new Set()
  const shape = bustShape(bust)
  const behind = areas.filter(({ material, frameX, frameY }) => {
    if (material !== 'backdrop' && material !== 'front') return false
    const cover = shape.cover(frameX * bust.widthMetres, frameY * bust.heightMetres, 0.002)
    return Math.max(cover.hair, cover.head, cover.neck, cover.cloth) > 0.5
  })
  return new Set(behind.map(({ id }) => id))
}
