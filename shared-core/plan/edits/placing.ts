import { add, distance, subtract, type Vector } from '../../arithmetic/vector.ts'
import { cosine, radiansFromDegrees, sine } from '../../arithmetic/portable.ts'
import type { Light } from '../schema/look.ts'
import type { Place } from '../schema/quantities.ts'
import type { Plan } from '../schema/plan.ts'
import { refuse } from '../result.ts'
import { changeBranch, type EditResult } from './changing.ts'
import { lightIn } from './lookAt.ts'

const gone = () => refuse('That light is no longer in the look.')
const lightPath = (lookId: string, lightId: string) => ['looks', lookId, 'lights', lightId]

/**
 * Moves the front of a light to a place; coordinates not given stay. The aim stays where it was, as when somebody
 * walks a stand about while another keeps the head on the face; with `aim: 'carry'` it travels along.
 */
export function moveLight(
  plan: Plan, lookId: string, lightId: string, place: Partial<Place>, aim: 'keep' | 'carry' = 'keep',
): EditResult {
  const light = lightIn(plan, lookId, lightId)
  if (!light) return gone()
  const carried = aim === 'carry' ? { aim: placeOf(add(vectorOf(light.aim), offset(light, place))) } : {}
  return changeBranch(plan, 'moveLight', lightPath(lookId, lightId), { place, ...carried })
}

/** Points a light at a place; coordinates not given stay. */
export function aimLight(plan: Plan, lookId: string, lightId: string, aim: Partial<Place>): EditResult {
  if (!lightIn(plan, lookId, lightId)) return gone()
  return changeBranch(plan, 'aimLight', lightPath(lookId, lightId), { aim })
}

/**
 * Swings a light where it stands. `turnDegrees` is clockwise as seen from above with the camera at the bottom edge;
 * `tiltDegrees` lifts the beam. The aim keeps its distance. The beam cannot tip past straight up or down.
 */
export function turnLight(
  plan: Plan, lookId: string, lightId: string, by: { readonly turnDegrees?: number; readonly tiltDegrees?: number },
): EditResult {
  const light = lightIn(plan, lookId, lightId)
  if (!light) return gone()
  const { turnDegrees = 0, tiltDegrees = 0 } = by
  if (!Number.isFinite(turnDegrees) || !Number.isFinite(tiltDegrees)) return refuse('A turn is a number of degrees.')
  const place = vectorOf(light.place)
  const beam = tilted(turned(subtract(vectorOf(light.aim), place), turnDegrees), tiltDegrees)
  return changeBranch(plan, 'turnLight', lightPath(lookId, lightId), { aim: placeOf(add(place, beam)) })
}

function turned([x, y, z]: Vector, degrees: number): Vector {
  const radians = radiansFromDegrees(degrees)
  return [x * cosine(radians) + y * sine(radians), y * cosine(radians) - x * sine(radians), z]
}

function tilted(beam: Vector, degrees: number): Vector {
  const [x, y, z] = beam
  const along = Math.sqrt(x * x + y * y)
  const limit = radiansFromDegrees(89.9)
  const elevation = Math.atan2(z, along)
  if (degrees === 0 || along === 0) return beam
  const raised = Math.min(Math.max(elevation + radiansFromDegrees(degrees), -limit), limit)
  const reach = distance(beam, [0, 0, 0])
  const flat = (reach * cosine(raised)) / along
  return [x * flat, y * flat, reach * sine(raised)]
}

function offset(light: Light, place: Partial<Place>): Vector {
  return subtract(vectorOf({ ...light.place, ...place }), vectorOf(light.place))
}

const vectorOf = (place: Place): Vector => [place.xMetres, place.yMetres, place.zMetres]
const placeOf = ([xMetres, yMetres, zMetres]: Vector): Place => ({ xMetres, yMetres, zMetres })
