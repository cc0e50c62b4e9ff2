import { z } from 'zod'
import { idText, swatch } from '../plan/schema/quantities.ts'
import { askAgainSteps, noteStates } from './command.ts'
import { NOTES_LIMITS } from './limits.ts'
import { pinSchema } from './pin.ts'
import { momentMs, sha256Hex, writtenOrEmpty, writtenText } from './quantities.ts'
import { screenResultSchema } from './screenCheck.ts'
import { strokeShape } from './stroke.ts'

/** Who did it, in what role, when, and where it stands in the job's count: the relay's own word. */
export const stampSchema = z.strictObject({
  seatId: z.string().min(1).max(64),
  name: z.string().min(1).max(120),
  role: z.enum(['photographer', 'assistant', 'client']),
  atMs: momentMs,
  /** Rises by one with everything written: later is greater, whatever clocks say. */
  sequence: z.number().int().min(1),
})
export type Stamp = z.infer<typeof stampSchema>

export const noteSchema = z.strictObject({ lookId: idText, pin: pinSchema, text: writtenText, colour: swatch.nullable(), by: stampSchema })
export const replySchema = z.strictObject({ noteId: idText, text: writtenText, by: stampSchema })
/** Each change of a note's state stays on record; the latest counts. */
export const noteStateSchema = z.strictObject({ noteId: idText, state: z.enum(noteStates), by: stampSchema })
/** A line taken back keeps its place, empty, so that the same command sent again does not bring it back. */
export const strokeSchema = z.discriminatedUnion('removed', [
  z.strictObject({ removed: z.literal(false), lookId: idText, ...strokeShape, by: stampSchema }),
  z.strictObject({ removed: z.literal(true), by: stampSchema }),
])
export const seenSchema = z.strictObject({ upTo: z.number().int().min(0) })

export const voteSchema = z.strictObject({ lookId: idText.nullable(), why: writtenOrEmpty, by: stampSchema })
export const ballotSchema = z.strictObject({
  question: writtenText,
  lookIds: z.array(idText).min(2).max(NOTES_LIMITS.looksPerBallot),
  by: stampSchema,
  /** Who has voted; how, nobody is told before all is opened. */
  voters: z.array(z.strictObject({ seatId: z.string().max(64), name: z.string().max(120) })).max(500),
  /** Null until opened. */
  opened: z.strictObject({ by: stampSchema, votes: z.array(voteSchema).max(500) }).nullable(),
})

export const thatOneSchema = z.strictObject({
  lookId: idText, lookName: z.string().max(120), words: writtenOrEmpty,
  /** The whole plan at that instant, kept under this name. */
  planHash: sha256Hex,
  /** Whether that is what the person had before their eyes; null where their page could not say. */
  asSeen: z.boolean().nullable(),
  by: stampSchema,
})

export const screenCheckSchema = z.strictObject({ result: screenResultSchema, by: stampSchema })

export const lockSchema = z.strictObject({
  /** 1, 2, 3 … through the job: what a print and a phone carry. */
  number: z.number().int().min(1),
  lookId: idText,
  lookName: z.string().max(120),
  conditions: writtenOrEmpty,
  askAgainSteps,
  /** Names of kept things: the plan's canonical JSON, the prediction's, and the Frame as the relay drew it (PNG). */
  planHash: sha256Hex,
  predictionHash: sha256Hex,
  pictureHash: sha256Hex,
  /** The stand-ins as they were seen; empty when they were not. */
  standIns: z.array(z.strictObject({ words: z.string().max(60), itaDegrees: z.number().min(-90).max(90), pictureHash: sha256Hex })).max(12),
  /** End of the chain of the lock before, so that none can be taken out unseen; null for the first. */
  previousHash: sha256Hex.nullable(),
  /** Over all of the above and the stamp: see lockHash. */
  hash: sha256Hex,
  by: stampSchema,
})

export const yesSchema = z.strictObject({
  lockId: idText, words: writtenOrEmpty,
  /** On what screen it was judged; null: not checked. */
  screenCheckId: idText.nullable(),
  /** End of the lock's chain before this yes. */
  previousHash: sha256Hex,
  hash: sha256Hex,
  by: stampSchema,
})

/** The maps of a notes document, by name, with the schema of their entries. */
export const ENTRY_SCHEMAS = {
  notes: noteSchema, replies: replySchema, noteStates: noteStateSchema, strokes: strokeSchema, seen: seenSchema,
  ballots: ballotSchema, thatOnes: thatOneSchema, screenChecks: screenCheckSchema, locks: lockSchema, yeses: yesSchema,
} as const
export type EntryKind = keyof typeof ENTRY_SCHEMAS
export const ENTRY_KINDS = Object.keys(ENTRY_SCHEMAS) as readonly EntryKind[]
export type EntryOf<Kind extends EntryKind> = z.infer<(typeof ENTRY_SCHEMAS)[Kind]>

export type Note = EntryOf<'notes'>
export type Reply = EntryOf<'replies'>
export type NoteState = EntryOf<'noteStates'>
export type Stroke = EntryOf<'strokes'>
export type Vote = z.infer<typeof voteSchema>
export type Ballot = EntryOf<'ballots'>
export type ThatOne = EntryOf<'thatOnes'>
export type ScreenCheck = EntryOf<'screenChecks'>
export type Lock = EntryOf<'locks'>
export type Yes = EntryOf<'yeses'>
