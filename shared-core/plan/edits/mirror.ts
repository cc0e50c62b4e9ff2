import type { Json, PlanChange } from '../edit.ts'
import { namedAreas, type Look } from '../schema/look.ts'
import type { Plan } from '../schema/plan.ts'
import { refuse } from '../result.ts'
import { collectChanges, type EditResult, type Patch } from './changing.ts'
import { lookIn } from './lookAt.ts'

/**
 * Swaps camera left and right of everything that stands in the set: as when the window, the parting or the layout
 * wants the key on the other side. The room stays.
 */
export function mirrorLook(plan: Plan, lookId: string): EditResult {
  const look = lookIn(plan, lookId)
  if (!look) return refuse('That look is no longer in the job.')
  const changes: PlanChange[] = []
  const refusal = collectChanges(plan, ['looks', lookId], mirrored(look), changes)
  changes.push(...swapSides(lookId, 'mustReadTrue', look.mustReadTrue), ...swapSides(lookId, 'accepted', look.accepted))
  return refusal ?? { ok: true, edit: { name: 'mirrorLook', changes } }
}

function mirrored(look: Look): Patch<Look> {
  return {
    camera: { place: flipX(look.camera.place), aim: flipX(look.camera.aim) },
    subject: {
      ...flipX(look.subject),
      turnDegrees: flip(look.subject.turnDegrees),
      headTurnDegrees: flip(look.subject.headTurnDegrees),
    },
    backdrop: { centreXMetres: flip(look.backdrop.centreXMetres) },
    lights: mapRecord(look.lights, (light) => ({
      place: flipX(light.place),
      aim: flipX(light.aim),
      rollDegrees: flip(light.rollDegrees),
      serves: otherSide(light.serves),
    })),
    pieces: mapRecord(look.pieces, (piece) => ({ place: flipX(piece.place), facingDegrees: flip(piece.facingDegrees) })),
    points: mapRecord(look.points, (point) => ({ place: flipX(point.place), facingDegrees: flip(point.facingDegrees) })),
  }
}

/** What is kept by area moves to the other side with it, also where the area is the end of a longer key. */
function swapSides(lookId: string, record: 'mustReadTrue' | 'accepted', entries: Readonly<Record<string, object>>): PlanChange[] {
  const path = (key: string) => ['looks', lookId, record, key]
  const swapped = Object.entries(entries).filter(([key]) => otherKey(key) !== key)
  const stays = new Set(swapped.map(([key]) => otherKey(key)))
  return [
    ...swapped.map(([key, entry]): PlanChange => ({ path: path(otherKey(key)), set: entry as Json })),
    ...swapped.filter(([key]) => !stays.has(key)).map(([key]): PlanChange => ({ path: path(key), remove: true })),
  ]
}

function otherKey(key: string): string {
  return key.split(':').map(otherSide).join(':')
}

/** Never minus zero, which would count as a change. */
const flip = (value: number): number => (value === 0 ? 0 : -value)
const flipX = ({ xMetres }: { readonly xMetres: number }) => ({ xMetres: flip(xMetres) })

function otherSide(area: string): string {
  const other = area.endsWith('-left') ? area.replace(/left$/, 'right') : area.replace(/right$/, 'left')
  return (namedAreas as readonly string[]).includes(other) ? other : area
}

function mapRecord<From, To>(record: Readonly<Record<string, From>>, map: (value: From) => To): Record<string, To> {
  return Object.fromEntries(Object.entries(record).map(([id, value]) => [id, map(value)]))
}
