import type { PlanEdit } from '../edit.ts'
import type { Point } from '../schema/look.ts'
import { LIMITS, type Plan } from '../schema/plan.ts'
import type { Place } from '../schema/quantities.ts'
import { newId } from '../newId.ts'
import { usualPoint } from '../usual/pieces.ts'
import { refuse, type Result } from '../result.ts'
import { addBranch, removeBranch } from './adding.ts'
import { changeBranch, type EditResult, type Patch } from './changing.ts'
import { lookIn, pointIn } from './lookAt.ts'

export type NewPoint = Pick<Point, 'place'> & Partial<Point>
type PointResult = Result<{ readonly edit: PlanEdit; readonly pointId: string }>

const pointPath = (lookId: string, pointId: string) => ['looks', lookId, 'points', pointId]

/** Adds a point to meter at: a grey card turned to the camera unless told otherwise. */
export function addPoint(plan: Plan, lookId: string, point: NewPoint): PointResult {
  const pointId = newId()
  const added = addBranch(
    plan, 'addPoint', pointPath(lookId, pointId), { ...usualPoint, ...point }, LIMITS.pointsPerLook,
  )
  return added.ok ? { ...added, pointId } : added
}

/** Changes any leaves of a point, each within its bounds. */
export function changePoint(plan: Plan, lookId: string, pointId: string, patch: Patch<Point>): EditResult {
  return changeBranch(plan, 'changePoint', pointPath(lookId, pointId), patch)
}

/** Moves a point; coordinates not given stay. */
export function movePoint(plan: Plan, lookId: string, pointId: string, place: Partial<Place>): EditResult {
  return changeBranch(plan, 'movePoint', pointPath(lookId, pointId), { place })
}

/** Takes a point away. Refused while a light is metered there, since its wanted level would mean nothing. */
export function removePoint(plan: Plan, lookId: string, pointId: string): EditResult {
  const look = lookIn(plan, lookId)
  if (!look || !pointIn(plan, lookId, pointId)) return refuse('That point is no longer in the look.')
  const served = Object.values(look.lights).filter((light) => light.serves === pointId)
  if (served.length > 0) {
    const letters = served.map((light) => light.letter).sort().join(', ')
    return refuse(`Light ${letters} is metered at this point. Meter it somewhere else first.`)
  }
  return removeBranch(plan, 'removePoint', pointPath(lookId, pointId))
}
