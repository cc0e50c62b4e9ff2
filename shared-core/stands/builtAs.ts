import type { Look } from '../plan/schema/look.ts'
import type { Tick } from '../rig/ticks.ts'

/** The floor's own stand: what all others are taped from. */
export const MARKS_ID = 'marks'

/** A stand as a look has it now, to be kept with its tick; null when the look has no such stand. */
export function builtAs(look: Look, standId: string): Tick['stand'] | null {
  if (standId === MARKS_ID) {
    return { kind: 'marks', id: MARKS_ID, as: { camera: look.camera.place, backdropYMetres: look.backdrop.yMetres } }
  }
  const light = look.lights[standId]
  if (light !== undefined) return { kind: 'light', id: standId, as: light }
  const piece = look.pieces[standId]
  return piece === undefined ? null : { kind: 'piece', id: standId, as: piece }
}

/** A look's stand as though it had been built at that moment: for what changed since another state of the plan. */
export function asTick(lookId: string, look: Look, standId: string): Tick | null {
  const stand = builtAs(look, standId)
  const { xMetres, yMetres } = look.subject
  return stand === null ? null : { lookId, by: { name: 'plan', atMs: 0 }, subjectXMetres: xMetres, subjectYMetres: yMetres, stand }
}
