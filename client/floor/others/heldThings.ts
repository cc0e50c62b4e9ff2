import type { PlanPath } from '../../../shared-core/plan/edit.ts'
import type { Person } from '../../session/board.ts'
import { findThing } from '../gestures/hit.ts'
import type { Thing, ThingKey } from '../things.ts'

/** A thing in somebody else's hand. */
export interface HeldThing {
  readonly person: Person
  readonly thing: Thing
}

/** What the others are moving in this look, by the edits they hold. */
export function heldThings(people: readonly Person[], lookId: string, things: readonly Thing[]): HeldThing[] {
  return people.flatMap((person) => {
    const path = person.isSelf ? undefined : person.inHand?.changes[0]?.path
    const thing = path === undefined ? null : findThing(things, thingAtPath(path, lookId))
    return thing === null ? [] : [{ person, thing }]
  })
}

/** The thing that a path of the plan lies in; null when it is of another look or no thing of the Floor. */
export function thingAtPath(path: PlanPath, lookId: string): ThingKey | null {
  const [looks, look, branch, id] = path
  if (looks !== 'looks' || look !== lookId) return null
  if (branch === 'camera' || branch === 'subject' || branch === 'backdrop') return { kind: branch }
  if (id === undefined) return null
  if (branch === 'lights') return { kind: 'light', id }
  if (branch === 'pieces') return { kind: 'piece', id }
  return branch === 'points' ? { kind: 'point', id } : null
}
