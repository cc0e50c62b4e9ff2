import { subtract, type Vector } from '../../../shared-core/arithmetic/vector.ts'
import type { Json, PlanEdit } from '../../../shared-core/plan/edit.ts'
import { addLight } from '../../../shared-core/plan/edits/lights.ts'
import { addPiece } from '../../../shared-core/plan/edits/pieces.ts'
import { addPoint } from '../../../shared-core/plan/edits/points.ts'
import { refuse, type Result } from '../../../shared-core/plan/result.ts'
import type { Look, Piece } from '../../../shared-core/plan/schema/look.ts'
import type { Plan } from '../../../shared-core/plan/schema/plan.ts'
import { facingDegreesOf } from '../solids/orientation.ts'
import type { ThingKey } from '../things.ts'
import { placeInSet, type DrawnPoint, type ViewKind } from '../view/projection.ts'
import { noseOf } from './thingEdits.ts'
import { toCentimetres } from './toCentimetres.ts'

/** What can be placed, by the names it has in the trade. */
export type PlaceChoice =
  | { readonly kind: 'light'; readonly modifierId: string; readonly name: string }
  | { readonly kind: 'piece'; readonly pieceKind: Piece['kind']; readonly name: string }
  | { readonly kind: 'point'; readonly name: string }

/** Something picked from the list and not yet set down. */
export interface Placing {
  readonly name: string
  readonly key: ThingKey
  /** The edit that sets it down there; the same thing wherever it goes. */
  readonly editAt: (view: ViewKind, drawn: DrawnPoint) => PlanEdit
}

/** Modifiers of the kit first, then what stands without a head, then a point to meter. */
export function placeChoices(plan: Plan): PlaceChoice[] {
  const lights: PlaceChoice[] = Object.entries(plan.modifiers).map(([modifierId, { name }]) => ({ kind: 'light', modifierId, name }))
  return [
    ...lights,
    { kind: 'piece', pieceKind: 'flag', name: 'Flag' },
    { kind: 'piece', pieceKind: 'v-flat', name: 'V-flat' },
    { kind: 'piece', pieceKind: 'board', name: 'Board' },
    { kind: 'piece', pieceKind: 'scrim', name: 'Scrim' },
    { kind: 'point', name: 'Meter point' },
  ]
}

/** Heights at which things usually start out; common practice, no source. */
const LIGHT_HEIGHT_METRES = 1.8
const PIECE_HEIGHT_METRES: Readonly<Record<Piece['kind'], number>> = { flag: 1.6, 'v-flat': 1.2, board: 1, scrim: 1.4 }

/** Takes a choice in hand: everything about it is settled but its place. */
export function startPlacing(plan: Plan, lookId: string, choice: PlaceChoice): Result<{ readonly placing: Placing }> {
  const look = plan.looks[lookId]
  if (look === undefined) return refuse('That look is no longer in the job.')
  const nose = noseOf(look)
  const start: Vector = [look.subject.xMetres, look.subject.yMetres, heightOf(choice, nose)]
  const added = addAt(plan, lookId, look, choice, start)
  if (!added.ok) return added
  const { edit, key } = added
  return {
    ok: true,
    placing: {
      name: choice.name,
      key,
      editAt: (view, drawn) => setDown(edit, placeInSet(view, drawn, start), look, choice),
    },
  }
}

function heightOf(choice: PlaceChoice, nose: Vector): number {
  if (choice.kind === 'light') return LIGHT_HEIGHT_METRES
  return choice.kind === 'piece' ? PIECE_HEIGHT_METRES[choice.pieceKind] : toCentimetres(nose[2])
}

function addAt(plan: Plan, lookId: string, look: Look, choice: PlaceChoice, at: Vector): Result<{ readonly edit: PlanEdit; readonly key: ThingKey }> {
  const place = placeOf(at)
  if (choice.kind === 'light') {
    const headId = Object.entries(plan.heads).sort(([, a], [, b]) => b.count - a.count)[0]?.[0]
    if (headId === undefined) return refuse('There is no head in the kit yet.')
    const added = addLight(plan, lookId, { headId, modifierId: choice.modifierId, place, aim: placeOf(noseOf(look)) })
    return added.ok ? { ok: true, edit: added.edit, key: { kind: 'light', id: added.lightId } } : added
  }
  if (choice.kind === 'piece') {
    const added = addPiece(plan, lookId, { kind: choice.pieceKind, place })
    return added.ok ? { ok: true, edit: added.edit, key: { kind: 'piece', id: added.pieceId } } : added
  }
  const added = addPoint(plan, lookId, { place })
  return added.ok ? { ok: true, edit: added.edit, key: { kind: 'point', id: added.pointId } } : added
}

/** The prepared edit with the thing at another place; a piece turns its front to the subject. */
function setDown(edit: PlanEdit, at: Vector, look: Look, choice: PlaceChoice): PlanEdit {
  const towards = subtract([look.subject.xMetres, look.subject.yMetres, at[2]], at)
  const facing = choice.kind === 'piece' ? { facingDegrees: Math.round(facingDegreesOf(towards)) } : {}
  return {
    ...edit,
    changes: edit.changes.map((change) =>
      'set' in change ? { ...change, set: { ...(change.set as { readonly [key: string]: Json }), place: { ...placeOf(at) }, ...facing } } : change,
    ),
  }
}

function placeOf([x, y, z]: Vector): { xMetres: number; yMetres: number; zMetres: number } {
  return { xMetres: toCentimetres(x), yMetres: toCentimetres(y), zMetres: toCentimetres(z) }
}
