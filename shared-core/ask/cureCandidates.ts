import type { PlanEdit } from '../plan/edit.ts'
import { turnLight } from '../plan/edits/placing.ts'
import type { Modifier } from '../plan/schema/kit.ts'
import type { Light } from '../plan/schema/look.ts'
import type { Plan } from '../plan/schema/plan.ts'
import { onHeadStep } from '../plan/fitToHead.ts'
import { cosine, radiansFromDegrees, sine, timesFromStops } from '../arithmetic/portable.ts'
import { add, scale, subtract, type Vector } from '../arithmetic/vector.ts'
import type { Prediction } from '../predict/prediction.ts'
import type { Snag } from '../predict/snag.ts'
import { vectorOf } from '../set/emitter.ts'
import { flagCandidates } from './flagCandidates.ts'
import { energyChange, leafChange, placeChange } from './lightChanges.ts'

export type CureKind = 'grid' | 'flag' | 'turn' | 'move' | 'power'

/** Something to try against a spill, before anybody knows whether it works. */
export interface Candidate {
  readonly kind: CureKind
  readonly title: string
  readonly cost: string
  readonly edit: PlanEdit
  /** Whether the diluter's power is to be set anew so that it reads as before. */
  readonly keepsLevel: boolean
  /** The light whose level this cure changes on purpose. */
  readonly mayShift: string | null
}

const TURNS_DEGREES = [-30, -20, -10, 10, 20, 30]
const TILTS_DEGREES = [-20, -10, 10, 20]
const SWINGS_DEGREES = [-45, -30, -20, -10, 10, 20, 30, 45]
const NEARER = [0.8, 0.65]

/** Everything worth trying against a spill, in no order. */
export function candidatesFor(plan: Plan, lookId: string, before: Prediction, snag: Snag): readonly Candidate[] {
  const [diluterId, areaId] = snag.about as [string, string]
  const look = plan.looks[lookId]
  const light = look?.lights[diluterId]
  const modifier = light && plan.modifiers[light.modifierId]
  const area = before.areas.find(({ id }) => id === areaId)
  if (!look || !light || !modifier || !area) return []
  const serves = before.areas.find(({ id }) => id === light.serves)?.place ?? vectorOf(light.aim)
  const parts: Parts = { plan, lookId, lightId: diluterId, light, serves }
  return [
    ...grids(parts, modifier),
    ...turns(parts),
    ...moves(parts),
    ...powers(parts, before, snag),
    ...flagCandidates({ lookId, look, front: vectorOf(light.place), area, serves, letter: light.letter }),
  ]
}

interface Parts {
  readonly plan: Plan
  readonly lookId: string
  readonly lightId: string
  readonly light: Light
  readonly serves: Vector
}

/** Fabric fits boxes, honeycombs fit reflectors and dishes; umbrellas and bare tubes take none (common practice, no source). */
function gridsFor(kind: Modifier['kind']): readonly Light['grid'][] {
  if (kind === 'softbox' || kind === 'octa' || kind === 'strip') {
    return [50, 30].map((openingDegrees) => ({ kind: 'fabric', openingDegrees }))
  }
  if (kind === 'reflector' || kind === 'beauty-dish') {
    return [40, 20, 10].map((openingDegrees) => ({ kind: 'honeycomb', openingDegrees }))
  }
  return []
}

function grids({ lookId, lightId, light }: Parts, modifier: Modifier): Candidate[] {
  return gridsFor(modifier.kind)
    .filter(({ openingDegrees }) => light.grid.kind === 'none' || openingDegrees < light.grid.openingDegrees)
    .map((grid): Candidate => {
      const name = `${grid.openingDegrees}° ${grid.kind === 'fabric' ? 'fabric grid' : 'honeycomb'}`
      return {
        kind: 'grid', title: `Put a ${name} on ${light.letter}`, cost: `one ${name}`, keepsLevel: true, mayShift: null,
        edit: { name: 'cureSpill', changes: [leafChange(lookId, lightId, 'grid', grid)] },
      }
    })
}

function turns({ plan, lookId, lightId, light }: Parts): Candidate[] {
  const asked = [
    ...TURNS_DEGREES.map((turnDegrees) => ({ turnDegrees, tiltDegrees: 0 })),
    ...TILTS_DEGREES.map((tiltDegrees) => ({ turnDegrees: 0, tiltDegrees })),
  ]
  return asked.flatMap((by): Candidate[] => {
    const turned = turnLight(plan, lookId, lightId, by)
    if (!turned.ok) return []
    // Clockwise from above, seen from behind the light, is to its own right.
    const way = by.turnDegrees !== 0
      ? `${Math.abs(by.turnDegrees)}° to its ${by.turnDegrees > 0 ? 'right' : 'left'}`
      : `${Math.abs(by.tiltDegrees)}° ${by.tiltDegrees > 0 ? 'up' : 'down'}`
    return [{
      kind: 'turn', title: `Turn ${light.letter} ${way}`, cost: 'a turn of the head: its light is feathered',
      keepsLevel: true, mayShift: null, edit: { ...turned.edit, name: 'cureSpill' },
    }]
  })
}

/** Swung about the place it serves, or brought nearer with less power: both leave its level as it is. */
function moves({ lookId, lightId, light, serves }: Parts): Candidate[] {
  const from = subtract(vectorOf(light.place), serves)
  const swung = SWINGS_DEGREES.map((degrees) => {
    const [cos, sin] = [cosine(radiansFromDegrees(degrees)), sine(radiansFromDegrees(degrees))]
    const place = add(serves, [from[0] * cos - from[1] * sin, from[0] * sin + from[1] * cos, from[2]])
    const side = place[0] > light.place.xMetres ? 'right' : 'left'
    return { place, title: `Swing ${light.letter} ${Math.abs(degrees)}° about the subject, to camera ${side}`, cost: 'a stand moved: its shadows move too' }
  })
  const nearer = NEARER.map((share) => {
    const centimetres = Math.round((1 - share) * 100 * Math.sqrt(from[0] * from[0] + from[1] * from[1] + from[2] * from[2]))
    return { place: add(serves, scale(from, share)), title: `Bring ${light.letter} ${centimetres} cm nearer`, cost: 'a stand moved: softer, and it falls off sooner' }
  })
  return [...swung, ...nearer].map(({ place, title, cost }): Candidate => ({
    kind: 'move', title, cost, keepsLevel: true, mayShift: null,
    edit: { name: 'cureSpill', changes: [placeChange(lookId, lightId, 'place', place)] },
  }))
}

/** The diluter down, or the area's own light up, by what is missing. */
function powers({ plan, lookId, lightId }: Parts, before: Prediction, snag: Snag): Candidate[] {
  const missing = snag.threshold - snag.value
  const ownerId = before.spills.find((spill) => spill.areaId === snag.about[1] && spill.diluterLightId === lightId)?.ownerLightId
  const asked = [{ id: lightId, sign: -1 }, ...(ownerId === undefined ? [] : [{ id: ownerId, sign: 1 }])]
  return asked.flatMap(({ id, sign }): Candidate[] => {
    const light = plan.looks[lookId]!.lights[id]
    const head = light && plan.heads[light.headId]
    if (!light || !head) return []
    const stops = Math.ceil(missing / head.stepStops + 0.01) * head.stepStops
    const energyJoules = onHeadStep(head, light.energyJoules * timesFromStops(sign * stops))
    if (energyJoules < head.lowestEnergyJoules || energyJoules > head.fullEnergyJoules) return []
    return [{
      kind: 'power', title: `Turn ${light.letter} ${sign < 0 ? 'down' : 'up'} by ${stops.toFixed(1)}`,
      cost: `${light.letter} no longer at its level: ${sign < 0 ? '−' : '+'}${stops.toFixed(1)}`,
      keepsLevel: false, mayShift: id, edit: { name: 'cureSpill', changes: [energyChange(lookId, id, energyJoules)] },
    }]
  })
}
