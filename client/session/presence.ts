import { z } from 'zod'
import { readEdit } from '../../shared-core/plan/readEdit.ts'
import { coordinateMetres, idText } from '../../shared-core/plan/schema/quantities.ts'
import { SEES_PLAINLY, SHARED_PAGES, type Selection } from './board.ts'
import type { OwnPresence } from './company.ts'

/** What others say of themselves is a stranger's word: nothing of it is used before it has passed here. */

const selectionSchema = z.union([
  z.object({ kind: z.enum(['light', 'piece', 'point', 'area']), id: idText }),
  z.object({ kind: z.enum(['camera', 'subject', 'backdrop', 'room', 'kit']) }),
])

const pointerSchema = z.object({ xMetres: coordinateMetres, yMetres: coordinateMetres })

const seesSchema = z.object({
  view: z.enum(['picture', 'stops', 'leaders', 'clipping']).catch('picture'),
  soloLightId: idText.nullable().catch(null),
  before: z.boolean().catch(false),
  beforeKept: z.boolean().catch(false),
  page: z.enum(SHARED_PAGES).nullable().catch(null),
  reopened: z.object({ kind: z.enum(['lock', 'that-one']), id: idText }).nullable().catch(null),
  pointer: z.object({ frameX: z.number().min(0).max(1), frameY: z.number().min(0).max(1) }).nullable().catch(null),
  with: z.string().max(64).nullable().catch(null),
})

const seatSchema = z.object({
  seatId: z.string().min(1).max(64),
  name: z.string().max(120),
  role: z.enum(['photographer', 'assistant', 'client']),
})
export type Seat = z.infer<typeof seatSchema>

export interface StampedPresence extends OwnPresence {
  /** As the relay stamped it; a state without a stamp is nobody's. */
  readonly seat: Seat
}

const alreadyRead = new WeakMap<object, StampedPresence | null>()

/**
 * Reads one awareness state, each only once: a state that did not change comes back as the same presence. Null when the relay has not stamped it. Every other field is taken or dropped by itself, so
 * that one bad pointer does not make a person vanish.
 */
export function readPresence(state: unknown): StampedPresence | null {
  if (typeof state !== 'object' || state === null) return null
  const known = alreadyRead.get(state)
  if (known !== undefined) return known
  const presence = readFields(state as Record<string, unknown>)
  alreadyRead.set(state, presence)
  return presence
}

function readFields(fields: Record<string, unknown>): StampedPresence | null {
  const seat = seatSchema.safeParse(fields.seat)
  if (!seat.success) return null
  const selection = selectionSchema.safeParse(fields.selection)
  const pointer = pointerSchema.safeParse(fields.pointer)
  const lookId = idText.safeParse(fields.lookId)
  const sees = seesSchema.safeParse(fields.sees)
  return {
    seat: seat.data,
    selection: selection.success ? (selection.data as Selection) : null,
    inHand: readEdit(fields.inHand),
    pointer: pointer.success ? pointer.data : null,
    lookId: lookId.success ? lookId.data : null,
    sees: sees.success ? sees.data : SEES_PLAINLY,
  }
}
