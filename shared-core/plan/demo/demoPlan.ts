import { SCHEMA_VERSION, type Plan } from '../schema/plan.ts'
import { demoGels, demoHeads, demoModifiers } from './kit.ts'
import { dusk, duskDraft1, firstLight } from './looks.ts'
import { demoRoom } from './room.ts'
import { demoTeam } from './team.ts'

/**
 * The job a first start opens: two portraits for an invented lip-colour house, physically complete. Powers are start
 * values.
 */
export const demoPlan: Plan = {
  schemaVersion: SCHEMA_VERSION,
  title: 'Late Harvest',
  brief:
    'Quillenmar launches four lip colours, fig to apricot. Two portraits, half-length, one model. ' +
    'Dusk in an orchard: apricot on jaw and shoulder, violet in the shade side, moss green glow behind; lips must read ' +
    'true. First light: bright, pistachio wrap, background clean white.',
  room: demoRoom,
  team: demoTeam,
  heads: demoHeads,
  modifiers: demoModifiers,
  gels: demoGels,
  looks: { dusk, 'dusk-draft-1': duskDraft1, 'first-light': firstLight },
}

/** The look that opens first. */
export const demoLookId = 'dusk'
