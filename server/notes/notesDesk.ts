import type * as Y from 'yjs'
import { readNotesFromDocument, writeNotesToDocument } from '../../shared-core/document/notesDocument.ts'
import { COMMAND_PROBLEMS, type CommandAnswer, type CommandProblem } from '../../shared-core/notes/answer.ts'
import { commandSchema, type CommandOf, type NotesCommand } from '../../shared-core/notes/command.ts'
import { decide, isDoneBefore, nextSequence, roleProblem, type Brought } from '../../shared-core/notes/decide.ts'
import { voteSchema, type Stamp, type Vote } from '../../shared-core/notes/entries.ts'
import type { Notes } from '../../shared-core/notes/notes.ts'
import { Attempts } from '../access/attempts.ts'
import type { Seat } from '../access/seat.ts'
import type { Log } from '../log.ts'
import type { DecideWrite } from '../relay/ownWrite.ts'
import type { DocumentKey, Store } from '../store/store.ts'
import { StoreError } from '../store/storeError.ts'
import type { DrawingRoom } from './drawingRoom.ts'
import { FullError, type Keeper } from './keeper.ts'
import { prepare } from './prepare.ts'

export interface NotesParts {
  readonly store: Store
  readonly keeper: Keeper
  readonly drawing: DrawingRoom
  readonly log: Log
  /** The relay's own way into a document: see Relay.write. */
  readonly write: (key: DocumentKey, decide: DecideWrite) => Promise<void>
  readonly commandsPerMinute: number
  readonly now?: () => number
}

const MINUTE_MS = 60_000

/** Takes what people ask to be written into the notes, judges it, stamps it, and has the relay write it. */
export class NotesDesk {
  readonly #parts: NotesParts
  readonly #now: () => number
  readonly #pace: Attempts

  constructor(parts: NotesParts) {
    this.#parts = parts
    this.#now = parts.now ?? Date.now
    this.#pace = new Attempts(parts.commandsPerMinute, MINUTE_MS)
  }

  /** Does each command in turn, whatever came of the one before; one answer each, in their order. */
  async take(seat: Seat, commands: readonly unknown[]): Promise<CommandAnswer[]> {
    const answers: CommandAnswer[] = []
    for (const raw of commands) answers.push(await this.#answer(seat, raw))
    return answers
  }

  async #answer(seat: Seat, raw: unknown): Promise<CommandAnswer> {
    const parsed = commandSchema.safeParse(raw)
    const problem = parsed.success ? await this.#do(seat, parsed.data) : 'bad-command'
    const id = parsed.success ? parsed.data.id : idOf(raw)
    return problem === null ? { id, ok: true } : { id, ok: false, code: problem, message: COMMAND_PROBLEMS[problem] }
  }

  /** @returns why it was not done; null when it was, now or before. */
  async #do(seat: Seat, command: NotesCommand): Promise<CommandProblem | null> {
    const nowMs = this.#now()
    if (this.#pace.isExhausted(seat.seatId, nowMs)) return 'too-fast'
    this.#pace.count(seat.seatId, nowMs)
    const forbidden = roleProblem(command, seat.role)
    if (forbidden !== null) return forbidden
    try {
      if (await this.#wasDone(seat, command)) return null
      const prepared = await prepare(this.#parts, seat.jobId, command)
      if (typeof prepared === 'string') return prepared
      return await this.#write(seat, command, { jobId: seat.jobId, ...prepared })
    } catch (thrown) {
      if (thrown instanceof FullError) return 'too-many'
      if (!(thrown instanceof StoreError)) throw thrown
      this.#parts.log.warn('note not kept', { jobId: seat.jobId, detail: thrown.message })
      return 'not-kept'
    }
  }

  /** Whether a command that takes long to prepare need not be: its answer was lost on the way. */
  async #wasDone(seat: Seat, command: NotesCommand): Promise<boolean> {
    if (command.do !== 'that-one' && command.do !== 'lock.make') return false
    let done = false
    await this.#parts.write(keyOf(seat), async (doc) => {
      done = isDoneBefore(readNotesFromDocument(doc).notes, command, seat.seatId)
      return null
    })
    return done
  }

  async #write(seat: Seat, command: NotesCommand, brought: Brought): Promise<CommandProblem | null> {
    let problem: CommandProblem | null = null
    await this.#parts.write(keyOf(seat), async (doc: Y.Doc) => {
      const { notes } = readNotesFromDocument(doc)
      const by = this.#stamp(seat, notes)
      const votes = command.do === 'ballot.reveal' ? { votes: await this.#votes(seat.jobId, command) } : {}
      const decision = decide(notes, command, by, { ...brought, ...votes })
      if (!decision.ok) {
        problem = decision.code
        return null
      }
      if (command.do === 'ballot.vote') await this.#seal(seat, command, by)
      return decision.writes.length === 0 ? null : (toChange) => writeNotesToDocument(toChange, decision.writes)
    })
    return problem
  }

  #stamp({ seatId, name, role }: Seat, notes: Notes): Stamp {
    return { seatId, name, role, atMs: this.#now(), sequence: nextSequence(notes) }
  }

  /** A vote goes past the document into the store: what is not in it, nobody can be sent. */
  async #seal({ seatId, jobId }: Seat, { id, ballotId, lookId, why }: CommandOf<'ballot.vote'>, by: Stamp): Promise<void> {
    const vote: Vote = { lookId, why, by }
    await this.#parts.store.sealVote(jobId, { ballotId, commandId: id, seatId, vote: JSON.stringify(vote) })
  }

  async #votes(jobId: string, { ballotId }: CommandOf<'ballot.reveal'>): Promise<Vote[]> {
    const sealed = await this.#parts.store.sealedVotes(jobId, ballotId)
    return sealed.map(({ vote }) => voteSchema.parse(JSON.parse(vote)))
  }
}

function keyOf({ jobId }: Seat): DocumentKey {
  return { jobId, document: 'notes' }
}

/** So that an outbox can tell which of its commands was not understood. */
function idOf(raw: unknown): string {
  const id = typeof raw === 'object' && raw !== null && 'id' in raw ? raw.id : ''
  return typeof id === 'string' ? id.slice(0, 64) : ''
}
