import type { z } from 'zod'
import { gelSchema, headSchema, modifierSchema } from '../schema/kit.ts'
import {
  backdropSchema, cameraSchema, finishSchema, lightSchema, lookSchema, meterSchema, pieceSchema, pointSchema, subjectSchema,
} from '../schema/look.ts'
import { planSchema, SCHEMA_VERSION, teamMemberSchema } from '../schema/plan.ts'
import { roomSchema } from '../schema/room.ts'
import { usualGel, usualHead, usualModifier } from '../usual/kit.ts'
import { usualLight } from '../usual/light.ts'
import { usualLook } from '../usual/look.ts'
import { usualPieces, usualPoint } from '../usual/pieces.ts'
import { usualRoom } from '../usual/room.ts'

/**
 * How a damaged thing is mended. A leaf that cannot be read takes its usual value; a thing without one of its
 * essentials is left out whole, since what would be shown in its place would be our invention.
 */
export interface Mending {
  readonly usual: Readonly<Record<string, unknown>>
  readonly essential: readonly string[]
}

const mendings = new Map<z.ZodType, Mending>([
  [
    planSchema,
    {
      usual: {
        schemaVersion: SCHEMA_VERSION, title: '', brief: '', room: usualRoom,
        team: {}, heads: {}, modifiers: {}, gels: {}, looks: {},
      },
      essential: [],
    },
  ],
  [roomSchema, { usual: usualRoom, essential: [] }],
  [roomSchema.shape.surfaces, { usual: usualRoom.surfaces, essential: [] }],
  [
    roomSchema.shape.columns.valueType,
    { usual: { label: '' }, essential: ['xMetres', 'yMetres', 'widthMetres', 'depthMetres'] },
  ],
  [roomSchema.shape.circuits.valueType, { usual: { label: '' }, essential: ['breakerAmps'] }],
  [teamMemberSchema, { usual: { job: '' }, essential: ['name'] }],
  [headSchema, { usual: usualHead, essential: ['fullEnergyJoules', 'lowestEnergyJoules'] }],
  [modifierSchema, { usual: usualModifier, essential: ['kind', 'widthMetres', 'heightMetres'] }],
  [gelSchema, { usual: { ...usualGel, name: 'Gel' }, essential: ['source'] }],
  [lookSchema, { usual: usualLook, essential: ['camera', 'subject', 'backdrop'] }],
  [cameraSchema, { usual: usualLook.camera, essential: [] }],
  [meterSchema, { usual: usualLook.meter, essential: [] }],
  [subjectSchema, { usual: usualLook.subject, essential: [] }],
  [backdropSchema, { usual: usualLook.backdrop, essential: [] }],
  [finishSchema, { usual: usualLook.finish, essential: [] }],
  [
    lightSchema,
    {
      usual: { ...usualLight, letter: 'A', setUpOrder: 0 },
      essential: ['headId', 'modifierId', 'place', 'aim', 'energyJoules'],
    },
  ],
  [lightSchema.shape.grid, { usual: usualLight.grid, essential: [] }],
  [pieceSchema, { usual: usualPieces.flag, essential: ['kind', 'place', 'widthMetres', 'heightMetres'] }],
  [pointSchema, { usual: usualPoint, essential: ['place'] }],
])

const nothingUsual: Mending = { usual: {}, essential: [] }

/** How things of this schema are mended; where nothing is usual (a place), every leaf is essential. */
export function mendingOf(schema: z.ZodType): Mending {
  return mendings.get(schema) ?? nothingUsual
}
