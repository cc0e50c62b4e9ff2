import { demoGels, demoHeads, demoModifiers } from '../../shared-core/plan/demo/kit.ts'
import { applyEdit } from '../../shared-core/plan/edit.ts'
import { addLight } from '../../shared-core/plan/edits/lights.ts'
import { usualLook } from '../../shared-core/plan/usual/look.ts'
import { usualRoom } from '../../shared-core/plan/usual/room.ts'
import { SCHEMA_VERSION, type Plan } from '../../shared-core/plan/schema/plan.ts'

/** A job before anybody has decided anything: the usual room, kit and drawer, and a key light to begin with. */
export function newPlan(title: string): Plan {
  const bare: Plan = {
    schemaVersion: SCHEMA_VERSION, title, brief: '', room: usualRoom, team: {},
    heads: demoHeads, modifiers: demoModifiers, gels: demoGels,
    looks: { 'look-1': { ...usualLook, name: 'Look 1' } },
  }
  const key = addLight(bare, 'look-1', {
    headId: Object.keys(demoHeads)[0] ?? '', modifierId: 'octa-100', energyJoules: 34,
    place: { xMetres: -0.75, yMetres: -0.8, zMetres: 2.05 }, aim: { xMetres: 0, yMetres: -0.1, zMetres: 1.56 },
  })
  return key.ok ? applyEdit(bare, key.edit) : bare
}
