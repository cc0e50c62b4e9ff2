import { z } from 'zod'
import { idText, swatch } from '../plan/schema/quantities.ts'
import { NOTES_LIMITS } from './limits.ts'
import { pinSchema } from './pin.ts'
import { sha256Hex, writtenOrEmpty, writtenText } from './quantities.ts'
import { screenResultSchema } from './screenCheck.ts'
import { strokeShape } from './stroke.ts'

/**
 * What a person asks the relay to write into the notes. `id` is made by the page (plan/newId) and is the key by which
 * the same command sent twice does one thing; who, in what role and when is the relay's own word, and not in here.
 */
const id = idText

export const noteStates = ['open', 'answered', 'closed'] as const
export type NoteStateName = (typeof noteStates)[number]

/** Visible colour steps (CIEDE2000) past which the client is asked again. */
export const askAgainSteps = z.number().min(0.5).max(20)

/** SHA-256 of the plan's canonical JSON as the person saw it; null where the page could not make one. */
const planHashSeen = sha256Hex.nullable()

const commands = {
  'note.add': z.strictObject({ do: z.literal('note.add'), id, lookId: idText, pin: pinSchema, text: writtenText, colour: swatch.optional() }),
  'note.reply': z.strictObject({ do: z.literal('note.reply'), id, noteId: idText, text: writtenText }),
  'note.state': z.strictObject({ do: z.literal('note.state'), id, noteId: idText, state: z.enum(noteStates) }),
  'stroke.add': z.strictObject({ do: z.literal('stroke.add'), id, lookId: idText, ...strokeShape }),
  'stroke.remove': z.strictObject({ do: z.literal('stroke.remove'), id, strokeId: idText }),
  /** Everything up to this place in the relay's count was seen; the count stands in every stamp. */
  'seen': z.strictObject({ do: z.literal('seen'), id, upTo: z.number().int().min(0) }),
  'ballot.open': z.strictObject({
    do: z.literal('ballot.open'), id, question: writtenText,
    lookIds: z.array(idText).min(2).max(NOTES_LIMITS.looksPerBallot).refine((ids) => new Set(ids).size === ids.length, 'each look once'),
  }),
  /** `lookId` null: none of them. */
  'ballot.vote': z.strictObject({ do: z.literal('ballot.vote'), id, ballotId: idText, lookId: idText.nullable(), why: writtenOrEmpty }),
  'ballot.reveal': z.strictObject({ do: z.literal('ballot.reveal'), id, ballotId: idText }),
  'that-one': z.strictObject({ do: z.literal('that-one'), id, lookId: idText, words: writtenOrEmpty, planHashSeen }),
  /** A word for it, given or changed after; the moment itself stays. */
  'that-one.words': z.strictObject({ do: z.literal('that-one.words'), id, thatOneId: idText, words: writtenOrEmpty }),
  'screen-check': z.strictObject({ do: z.literal('screen-check'), id, result: screenResultSchema }),
  'lock.make': z.strictObject({
    do: z.literal('lock.make'), id, lookId: idText, conditions: writtenOrEmpty, standInsSeen: z.boolean(), askAgainSteps, planHashSeen,
  }),
  'yes.add': z.strictObject({ do: z.literal('yes.add'), id, lockId: idText, words: writtenOrEmpty, screenCheckId: idText.nullable() }),
} as const

export type CommandName = keyof typeof commands

export const commandSchema = z.discriminatedUnion('do', [
  commands['note.add'], commands['note.reply'], commands['note.state'], commands['stroke.add'], commands['stroke.remove'],
  commands['seen'], commands['ballot.open'], commands['ballot.vote'], commands['ballot.reveal'], commands['that-one'],
  commands['that-one.words'], commands['screen-check'], commands['lock.make'], commands['yes.add'],
])
export type NotesCommand = z.infer<typeof commandSchema>
export type CommandOf<Name extends CommandName> = z.infer<(typeof commands)[Name]>

/** What an outbox sends: each command is judged by itself, so one that is malformed does not hold up the others. */
export const commandBatchSchema = z.strictObject({ commands: z.array(z.unknown()).min(1).max(NOTES_LIMITS.commandsPerBatch) })
