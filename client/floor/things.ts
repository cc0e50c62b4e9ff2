import type { Vector } from '../../shared-core/arithmetic/vector.ts'
import type { Modifier } from '../../shared-core/plan/schema/kit.ts'
import type { Light, Look, Piece } from '../../shared-core/plan/schema/look.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { vectorOf } from '../../shared-core/set/emitter.ts'
import { facingOf, panelCorners, panelsOf } from '../../shared-core/set/panels.ts'
import { backdropCorners } from './solids/backdropCorners.ts'
import { cameraSolids } from './solids/cameraSolids.ts'
import { lightSolids } from './solids/lightSolids.ts'
import { aimedOrientation } from './solids/orientation.ts'
import type { Solid } from './solids/solid.ts'
import { subjectSolids } from './solids/subjectSolids.ts'
import { supportSolids } from './solids/supportSolids.ts'
import { nearness, type ViewKind } from './view/projection.ts'

/** What can be taken in hand on the Floor. */
export type ThingKey =
  | { readonly kind: 'light' | 'piece' | 'point'; readonly id: string }
  | { readonly kind: 'camera' | 'subject' | 'backdrop' }

/** One thing of the set as the Floor handles it, whatever it is. */
export interface Thing {
  readonly key: ThingKey
  /** The point it is moved by and its distances are taped to. */
  readonly place: Vector
  /** The way it looks. */
  readonly axis: Vector
  /** Where it is pointed; null for what only faces a direction. */
  readonly aim: Vector | null
  /** In true size, without stands. */
  readonly solids: readonly Solid[]
  /** Stands, legs and arms: drawn and avoided, not taken hold of. */
  readonly supports: readonly Solid[]
}

/** A mark of its own for each thing, for maps and lists. */
export function keyText(key: ThingKey): string {
  return 'id' in key ? `${key.kind}:${key.id}` : key.kind
}

export function sameThing(a: ThingKey | null, b: ThingKey | null): boolean {
  return a !== null && b !== null && keyText(a) === keyText(b)
}

/**
 * What that view shows, in the order to draw it: paper, then far before near. Looking from the camera, the camera itself
 * is left out; from above, lights lie on top.
 */
export function thingsIn(things: readonly Thing[], view: ViewKind): readonly Thing[] {
  if (view === 'floor') return things
  const depth = (thing: Thing) => (thing.key.kind === 'backdrop' ? -Infinity : nearness(view, thing.place))
  return things.filter((thing) => view !== 'camera' || thing.key.kind !== 'camera').sort((a, b) => depth(a) - depth(b))
}

/**
 * Those that are not as at rest: a hand has them. Paper is left out, since it lies under all else and what is lifted is
 * drawn over it.
 */
export function liftedFrom(atRest: readonly Thing[], things: readonly Thing[]): ReadonlySet<Thing> {
  const resting = new Set(atRest)
  return new Set(things.filter((thing) => !resting.has(thing) && thing.key.kind !== 'backdrop'))
}

/** Everything in the look, lights last. Lights whose modifier is not in the kit show a small front. */
export function thingsOf(plan: Plan, look: Look): Thing[] {
  return [
    ...(look.backdrop.kind === 'paper' ? [backdropThing(look)] : []),
    subjectThing(look),
    cameraThing(look),
    ...Object.entries(look.points).map(([id, point]) => pointThing(id, point)),
    ...Object.entries(look.pieces).map(([id, piece]) => pieceThing(id, piece)),
    ...Object.entries(look.lights).map(([id, light]) => lightThing(id, light, modifierOf(plan, light))),
  ]
}

/** Shown where a light's modifier has gone from the kit. */
const MISSING_MODIFIER: Modifier = {
  name: 'not in the kit', kind: 'reflector', count: 0, widthMetres: 0.18, heightMetres: 0.18, depthMetres: 0.18, diffusers: 0, learnedStops: 0,
}

export function modifierOf(plan: Plan, light: Light): Modifier {
  return Object.hasOwn(plan.modifiers, light.modifierId) ? (plan.modifiers[light.modifierId] ?? MISSING_MODIFIER) : MISSING_MODIFIER
}

/** Things by the parts of the plan they were made from: what did not change is the same object, and is not drawn again. */
const made = new WeakMap<object, { readonly from: readonly unknown[]; readonly thing: Thing }>()

/** @param part whose life the thing shares; `from` everything else it is made from */
function once(part: object, from: readonly unknown[], make: () => Thing): Thing {
  const before = made.get(part)
  if (before !== undefined && before.from.every((one, i) => one === from[i])) return before.thing
  const thing = make()
  made.set(part, { from, thing })
  return thing
}

export function lightThing(id: string, light: Light, modifier: Modifier): Thing {
  const { place, aim, rollDegrees, grid, support } = light
  // Not from the light as a whole: a change of power moves nothing.
  return once(place, [id, aim, rollDegrees, grid, support, modifier], () => ({
    key: { kind: 'light', id },
    place: vectorOf(light.place),
    axis: aimedOrientation(light.place, light.aim).axis,
    aim: vectorOf(light.aim),
    solids: lightSolids(light, modifier),
    supports: supportSolids(light, modifier),
  }))
}

function pieceThing(id: string, piece: Piece): Thing {
  return once(piece, [id], () => ({
    key: { kind: 'piece', id },
    place: vectorOf(piece.place),
    axis: facingOf(piece.facingDegrees, piece.kind === 'v-flat' ? 0 : piece.tiltDegrees),
    aim: null,
    solids: panelsOf({ id, ...piece }).map((panel) => ({ part: 'panel', points: panelCorners(panel) })),
    supports: [],
  }))
}

function pointThing(id: string, point: Look['points'][string]): Thing {
  return once(point, [id], () => ({
    key: { kind: 'point', id },
    place: vectorOf(point.place),
    axis: facingOf(point.facingDegrees, point.tiltDegrees),
    aim: null,
    solids: [],
    supports: [],
  }))
}

function cameraThing({ camera }: Look): Thing {
  return once(camera, [], () => ({
    key: { kind: 'camera' },
    place: vectorOf(camera.place),
    axis: aimedOrientation(camera.place, camera.aim).axis,
    aim: vectorOf(camera.aim),
    solids: cameraSolids(camera),
    supports: [],
  }))
}

function subjectThing({ subject }: Look): Thing {
  return once(subject, [], () => ({
    key: { kind: 'subject' },
    place: [subject.xMetres, subject.yMetres, 0],
    axis: facingOf(subject.turnDegrees, 0),
    aim: null,
    solids: subjectSolids(subject),
    supports: [],
  }))
}

function backdropThing({ backdrop }: Look): Thing {
  return once(backdrop, [], () => ({
    key: { kind: 'backdrop' },
    place: [backdrop.centreXMetres, backdrop.yMetres, backdrop.topMetres],
    axis: [0, -1, 0],
    aim: null,
    solids: [{ part: 'panel', points: backdropCorners(backdrop) }],
    supports: [],
  }))
}
