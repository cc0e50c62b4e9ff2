import { add, distance, scale, subtract, type Vector } from '../arithmetic/vector.ts'
import { applyEdit } from '../plan/edit.ts'
import type { Look } from '../plan/schema/look.ts'
import type { Place } from '../plan/schema/quantities.ts'
import type { Plan } from '../plan/schema/plan.ts'
import type { Room } from '../plan/schema/room.ts'
import type { Predictor } from '../predict/predict.ts'
import { vectorOf } from '../set/emitter.ts'
import { unlike } from './intoKit.ts'

/** Behind the camera somebody has to stand (common practice, no source). */
const BEHIND_CAMERA_METRES = 0.6
/** Paper hangs this far off a wall. */
const BEHIND_PAPER_METRES = 0.1
/** Nearer than by this share of its way to what it is aimed at, a light is another light. */
const LEAST_OF_BEAM = 0.35
/** Steps in which a light is tried along its beam. */
const STEPS = 26
const LEAST_CAMERA_METRES = 1.2
const LEAST_BACKDROP_METRES = 0.8

/** How a set is made to fit a room's length: where its mark goes, and what comes nearer. */
export interface Shortening {
  readonly markFromRearWallMetres: number
  readonly markFromLeftWallMetres: number
  /** The camera comes this much nearer, with a shorter lens for the same frame. */
  readonly cameraNearerMetres: number
  /** The background and what lights it come this much nearer. */
  readonly backgroundNearerMetres: number
}

/** Ways in which a look can stand in a room; the first leaves everything where it was, if it fits. */
export function shortenings(plan: Plan, lookId: string, room: Room, mayMoveMark: boolean): readonly Shortening[] {
  const look = plan.looks[lookId]!
  const behind = look.backdrop.kind === 'paper' ? look.backdrop.yMetres + BEHIND_PAPER_METRES : 0
  const front = -look.camera.place.yMetres + BEHIND_CAMERA_METRES
  const middle = (width: number, kept: number): number => Math.min(Math.max(kept, 0.3 * width), 0.7 * width)
  const markFromLeftWallMetres = mayMoveMark
    ? rounded(middle(room.widthMetres, (plan.room.markFromLeftWallMetres / plan.room.widthMetres) * room.widthMetres)) : room.markFromLeftWallMetres
  const ways = (markFromRearWallMetres: number): Shortening[] => {
    const rear = Math.max(0, behind - markFromRearWallMetres)
    const fore = Math.max(0, front - (room.lengthMetres - markFromRearWallMetres))
    return [{ markFromRearWallMetres: rounded(markFromRearWallMetres), markFromLeftWallMetres, cameraNearerMetres: fore, backgroundNearerMetres: rear }]
  }
  if (!mayMoveMark) return ways(room.markFromRearWallMetres)
  const own = plan.room.markFromRearWallMetres
  // With the mark as far from the rear wall as it was; at the least that the background needs; and between.
  const most = room.lengthMetres - front
  const places = [own, behind, most, (behind + most) / 2].map((place) => Math.min(Math.max(place, 0.3), room.lengthMetres - 0.3))
  const isRoomy = most >= behind
  const tried = isRoomy ? [Math.min(Math.max(own, behind), most)] : places
  return [...new Set(tried.map(rounded))].flatMap(ways)
}

export interface Stood {
  readonly plan: Plan
  readonly moves: readonly string[]
}

/** Puts a look into a room by one of its shortenings, and brings in whatever would then stand in a wall. */
export function intoRoom(plan: Plan, lookId: string, room: Room, shortening: Shortening, predictor: Predictor): Stood {
  const { markFromRearWallMetres, markFromLeftWallMetres, cameraNearerMetres, backgroundNearerMetres } = shortening
  const moves: string[] = []
  let look = plan.looks[lookId]!
  if (cameraNearerMetres > 0) look = cameraNearer(look, cameraNearerMetres, moves)
  if (backgroundNearerMetres > 0) look = backgroundNearer(look, backgroundNearerMetres, moves)
  const stood: Plan = { ...plan, room: { ...room, markFromRearWallMetres, markFromLeftWallMetres }, looks: { ...plan.looks, [lookId]: look } }
  const isMoved = Math.abs(markFromRearWallMetres - plan.room.markFromRearWallMetres) > 0.005
  if (isMoved) moves.unshift(`The T ${markFromRearWallMetres.toFixed(2)} m from the rear wall (was ${plan.room.markFromRearWallMetres.toFixed(2)} m)`)
  return broughtIn(stood, lookId, moves, predictor)
}

function cameraNearer(look: Look, by: number, moves: string[]): Look {
  const { camera, subject } = look
  const before = Math.max(0.1, subject.yMetres - camera.place.yMetres)
  const after = Math.max(LEAST_CAMERA_METRES, before - by)
  const focalLengthMillimetres = Math.max(8, camera.focalLengthMillimetres * (after / before))
  moves.push(`The camera at ${after.toFixed(2)} m with ${Math.round(focalLengthMillimetres)} mm (was ${before.toFixed(2)} m with ${Math.round(camera.focalLengthMillimetres)} mm): the same frame, the face drawn from nearer`)
  return { ...look, camera: { ...camera, focalLengthMillimetres, place: { ...camera.place, yMetres: subject.yMetres - after } } }
}

function backgroundNearer(look: Look, by: number, moves: string[]): Look {
  const { backdrop, subject } = look
  const before = backdrop.yMetres - subject.yMetres
  const after = Math.max(LEAST_BACKDROP_METRES, before - by)
  const shift = after - before
  moves.push(`The background ${after.toFixed(2)} m behind the T (was ${before.toFixed(2)} m)`)
  const lights = Object.fromEntries(Object.entries(look.lights).map(([id, light]) => {
    if (light.plane !== 'background') return [id, light]
    const shifted = (place: Place): Place => ({ ...place, yMetres: place.yMetres + shift })
    moves.push(`${light.letter} with it, as far from it as it was`)
    return [id, { ...light, place: shifted(light.place), aim: shifted(light.aim) }]
  }))
  return { ...look, lights, backdrop: { ...backdrop, yMetres: subject.yMetres + after } }
}

/** Lights come in along their beam until they fit, in the modifier that looks as large from there; pieces straight in. */
function broughtIn(plan: Plan, lookId: string, moves: string[], predictor: Predictor): Stood {
  let now = plan
  for (const id of misfits(plan, lookId, predictor)) {
    const look = now.looks[lookId]!
    const light = look.lights[id]
    if (light === undefined || !light.on) continue
    const [place, aim] = [vectorOf(light.place), vectorOf(light.aim)]
    const way = subtract(place, aim)
    for (let step = 1; step <= STEPS; step++) {
      const share = 1 - (step / STEPS) * (1 - LEAST_OF_BEAM)
      const nearer = withLight(now, lookId, id, { ...light, place: placeOf(add(aim, scale(way, share))), modifierId: asLarge(now, look, id, share) })
      if (!misfits(nearer, lookId, predictor).includes(id)) {
        const modifierId = nearer.looks[lookId]!.lights[id]!.modifierId
        const other = modifierId === light.modifierId ? '' : `, in ${now.modifiers[modifierId]?.name ?? 'another modifier'} so that it looks as large`
        moves.push(`${light.letter} ${(distance(place, aim) * (1 - share)).toFixed(2)} m nearer along its beam${other}`)
        now = nearer
        break
      }
    }
  }
  // What no way along a beam cures goes straight in, as the snag itself proposes.
  for (let tries = 0; tries < 6; tries++) {
    const left = predictor(now, lookId).snags.filter(({ rule, mend }) => rule === 'outside-room' && mend !== undefined)
    if (left.length === 0) break
    for (const { mend } of left) now = applyEdit(now, mend!.edit)
    moves.push(...left.map(({ mend }) => mend!.words))
  }
  return { plan: now, moves }
}

/** The modifier in the kit that from a share of the way looks most like the light's own did. */
function asLarge(plan: Plan, look: Look, lightId: string, share: number): string {
  const light = look.lights[lightId]!
  const own = plan.modifiers[light.modifierId]
  if (own === undefined) return light.modifierId
  const used = (id: string): number => Object.entries(look.lights).filter(([other, { modifierId, on }]) => on && other !== lightId && modifierId === id).length
  return Object.entries(plan.modifiers)
    .filter(([id, { kind, count }]) => id === light.modifierId || (kind === own.kind && count > used(id)))
    .sort(([, a], [, b]) => unlike(own, a, share) - unlike(own, b, share))[0]![0]
}

function misfits(plan: Plan, lookId: string, predictor: Predictor): readonly string[] {
  return predictor(plan, lookId).snags.filter(({ rule }) => rule === 'outside-room').flatMap(({ about }) => about)
}

function withLight(plan: Plan, lookId: string, id: string, light: Look['lights'][string]): Plan {
  const look = plan.looks[lookId]!
  return { ...plan, looks: { ...plan.looks, [lookId]: { ...look, lights: { ...look.lights, [id]: light } } } }
}

function placeOf([x, y, z]: Vector): Place {
  return { xMetres: rounded(x), yMetres: rounded(y), zMetres: rounded(z) }
}

const rounded = (metres: number): number => Math.round(metres * 1000) / 1000
