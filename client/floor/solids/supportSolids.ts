import { add, direction, scale, type Vector } from '../../../shared-core/arithmetic/vector.ts'
import type { Modifier } from '../../../shared-core/plan/schema/kit.ts'
import type { Light } from '../../../shared-core/plan/schema/look.ts'
import { pivotOf } from './lightSolids.ts'
import { aimedOrientation } from './orientation.ts'
import type { Solid } from './solid.ts'

/** From the column to a foot, and how high up the column the legs start; common practice, no source. */
export const LEG_RADIUS_METRES = { stand: 0.5, 'low-stand': 0.35, boom: 0.65 } as const
const LEG_TOP_METRES = { stand: 0.45, 'low-stand': 0.2, boom: 0.55 } as const
/** From the head to the boom's column; common practice, no source. */
export const BOOM_ARM_METRES = 1.6
/** How far the arm goes on past its column, to the counterweight; common practice, no source. */
const BOOM_TAIL_METRES = 0.6
const COLUMN_RADIUS_METRES = 0.017

/** Column, three legs and a boom's arm. One leg points under the load, as a stand is set. */
export function supportSolids(light: Light, modifier: Modifier): Solid[] {
  const pivot = pivotOf(light, modifier)
  const ahead = levelDirection(light)
  const isBoom = light.support === 'boom'
  const foot: Vector = isBoom ? add(pivot, scale(ahead, -BOOM_ARM_METRES)) : pivot
  const top: Vector = [foot[0], foot[1], Math.max(0, pivot[2])]
  const solids: Solid[] = [0, 1, 2].map((leg) => legSolid(light, foot, ahead, (leg * 2 * Math.PI) / 3))
  solids.push({ part: 'column', points: tube([foot[0], foot[1], 0], top) })
  if (isBoom) solids.push({ part: 'arm', points: [pivot, add(top, scale(ahead, -BOOM_TAIL_METRES))] })
  return solids
}

function legSolid(light: Light, foot: Vector, ahead: Vector, turn: number): Solid {
  const radius = LEG_RADIUS_METRES[light.support]
  const along: Vector = [
    ahead[0] * Math.cos(turn) - ahead[1] * Math.sin(turn),
    ahead[0] * Math.sin(turn) + ahead[1] * Math.cos(turn),
    0,
  ]
  const onFloor: Vector = [foot[0] + along[0] * radius, foot[1] + along[1] * radius, 0]
  return { part: 'leg', points: [[foot[0], foot[1], LEG_TOP_METRES[light.support]], onFloor] }
}

function tube(low: Vector, high: Vector): Vector[] {
  const r = COLUMN_RADIUS_METRES
  return [low, high].flatMap((end): Vector[] => [
    [end[0] - r, end[1] - r, end[2]],
    [end[0] + r, end[1] - r, end[2]],
    [end[0] + r, end[1] + r, end[2]],
    [end[0] - r, end[1] + r, end[2]],
  ])
}

function levelDirection(light: Light): Vector {
  const { axis } = aimedOrientation(light.place, light.aim)
  const level: Vector = [axis[0], axis[1], 0]
  const towardsSubject: Vector = [-light.place.xMetres, -light.place.yMetres, 0]
  return direction(Math.abs(axis[2]) > 0.999 ? towardsSubject : level)
}
