import { timesFromStops } from '../arithmetic/portable.ts'
import { add, cross, direction, scale, subtract, type Vector } from '../arithmetic/vector.ts'
import type { Json, PlanChange, PlanEdit } from '../plan/edit.ts'
import { turnLight } from '../plan/edits/placing.ts'
import type { Light, Look, Piece } from '../plan/schema/look.ts'
import type { Plan } from '../plan/schema/plan.ts'
import { lightsInSetUpOrder } from '../predict/sceneOfLook.ts'
import { vectorOf } from '../set/emitter.ts'
import { facingOnFloor } from '../set/panels.ts'
import { energyChange, placeAt, placeChange } from './lightChanges.ts'

export type ThingKind = 'light' | 'piece' | 'camera' | 'subject'
export type MeasureKind = 'distance' | 'sideways' | 'height' | 'turn' | 'tilt' | 'power'
export type Unit = 'metres' | 'degrees' | 'stops'

/** One measure of one thing: how the plan looks with it drifted by an amount, and the farthest worth asking. */
export interface MeasureOfThing {
  readonly measure: MeasureKind
  readonly unit: Unit
  readonly limit: number
  /** Null where the plan cannot be changed so. */
  readonly edit: (amount: number) => PlanEdit | null
}

export interface ThingMeasures {
  readonly thing: ThingKind
  readonly id: string | null
  readonly name: string
  readonly measures: readonly MeasureOfThing[]
}

const LIMITS: Readonly<Record<Unit, number>> = { metres: 0.5, degrees: 30, stops: 2 }
const UP: Vector = [0, 0, 1]

/** Everything in a look that is measured when it is rigged: lights that are on, pieces, camera, subject. */
export function driftsOfLook(plan: Plan, lookId: string): readonly ThingMeasures[] {
  const look = plan.looks[lookId]
  if (!look) throw new RangeError(`The plan has no look called ${lookId}`)
  return [
    ...lightsInSetUpOrder(look).filter(([, { on }]) => on).map(([id, light]) => lightMeasures(plan, lookId, id, light)),
    ...Object.entries(look.pieces).map(([id, piece]) => pieceMeasures(lookId, id, piece)),
    cameraMeasures(lookId, look),
    subjectMeasures(lookId, look),
  ]
}

/** A head that is carried along its beam keeps its aim; one that is set aside or higher is turned back to it, as on set. */
function lightMeasures(plan: Plan, lookId: string, id: string, light: Light): ThingMeasures {
  const place = vectorOf(light.place)
  const aim = vectorOf(light.aim)
  const beam = direction(subtract(aim, place))
  const across = direction(cross(beam, UP), [1, 0, 0])
  const moved = (way: Vector, carry: boolean) => (amount: number) => drift(
    placeChange(lookId, id, 'place', add(place, scale(way, amount))),
    ...(carry ? [placeChange(lookId, id, 'aim', add(aim, scale(way, amount)))] : []))
  const turned = (by: 'turnDegrees' | 'tiltDegrees') => (amount: number) => {
    const result = turnLight(plan, lookId, id, { [by]: amount })
    return result.ok ? result.edit : null
  }
  return {
    thing: 'light', id, name: light.letter,
    measures: [
      measure('distance', 'metres', moved(scale(beam, -1), true)),
      measure('sideways', 'metres', moved(across, false)),
      measure('height', 'metres', moved(UP, false)),
      measure('turn', 'degrees', turned('turnDegrees')),
      measure('tilt', 'degrees', turned('tiltDegrees')),
      measure('power', 'stops', (amount) => drift(energyChange(lookId, id, light.energyJoules * timesFromStops(amount)))),
    ],
  }
}

function pieceMeasures(lookId: string, id: string, piece: Piece): ThingMeasures {
  const path = ['looks', lookId, 'pieces', id]
  const place = vectorOf(piece.place)
  const moved = (way: Vector) => (amount: number) => drift({ path: [...path, 'place'], set: placeAt(add(place, scale(way, amount))) })
  return {
    thing: 'piece', id, name: piece.label,
    measures: [
      measure('distance', 'metres', moved(facingOnFloor(piece.facingDegrees))),
      measure('sideways', 'metres', moved(facingOnFloor(piece.facingDegrees + 90))),
      measure('height', 'metres', moved(UP)),
      measure('turn', 'degrees', (amount) => drift({ path: [...path, 'facingDegrees'], set: piece.facingDegrees + amount })),
    ],
  }
}

function cameraMeasures(lookId: string, { camera }: Look): ThingMeasures {
  const place = vectorOf(camera.place)
  const back = direction(subtract(place, vectorOf(camera.aim)))
  return {
    thing: 'camera', id: null, name: 'camera',
    measures: [measure('distance', 'metres', (amount) =>
      drift({ path: ['looks', lookId, 'camera', 'place'], set: placeAt(add(place, scale(back, amount))) }))],
  }
}

/** The subject's own place: a step back or aside, a turn away. */
function subjectMeasures(lookId: string, { subject }: Look): ThingMeasures {
  const set = (key: 'xMetres' | 'yMetres' | 'turnDegrees') => (amount: number) =>
    drift({ path: ['looks', lookId, 'subject', key], set: (subject[key] + amount) as Json })
  return {
    thing: 'subject', id: null, name: 'subject',
    measures: [
      measure('distance', 'metres', set('yMetres')),
      measure('sideways', 'metres', set('xMetres')),
      measure('turn', 'degrees', set('turnDegrees')),
    ],
  }
}

const measure = (kind: MeasureKind, unit: Unit, edit: MeasureOfThing['edit']): MeasureOfThing => ({ measure: kind, unit, limit: LIMITS[unit], edit })
const drift = (...changes: readonly PlanChange[]): PlanEdit => ({ name: 'drift', changes })
