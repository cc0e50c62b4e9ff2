import type { CommandProblem } from './answer.ts'
import type { CommandName, CommandOf, NotesCommand } from './command.ts'
import type { EntryKind, EntryOf, Lock, Stamp, Vote } from './entries.ts'
import { NOTES_LIMITS } from './limits.ts'
import { chainEnd, lockHash, yesHash, yesesOf } from './lockHash.ts'
import { supersededBy, type Notes } from './notes.ts'

/** One entry put in its place. */
export type NotesWrite = { readonly [Kind in EntryKind]: { readonly kind: Kind; readonly id: string; readonly entry: EntryOf<Kind> } }[EntryKind]

export type Decision =
  | { readonly ok: true; readonly writes: readonly NotesWrite[] }
  | { readonly ok: false; readonly code: CommandProblem }

/** What the relay brings to commands that need more than the notes themselves. */
export interface Brought {
  readonly jobId: string
  /** For `ballot.reveal`: the votes so far withheld, the last of each seat. */
  readonly votes?: readonly Vote[]
  /** For `that-one`. */
  readonly moment?: Pick<EntryOf<'thatOnes'>, 'lookName' | 'planHash' | 'asSeen'>
  /** For `lock.make`: names of what was kept. */
  readonly frozen?: Pick<Lock, 'lookName' | 'planHash' | 'predictionHash' | 'pictureHash' | 'standIns'>
}

/** The map in which a command leaves an entry under its own id. The others are the same done twice. */
const MAKES: { readonly [Name in CommandName]?: EntryKind } = {
  'note.add': 'notes', 'note.reply': 'replies', 'note.state': 'noteStates', 'stroke.add': 'strokes', 'ballot.open': 'ballots',
  'that-one': 'thatOnes', 'screen-check': 'screenChecks', 'lock.make': 'locks', 'yes.add': 'yeses',
}

const done: Decision = { ok: true, writes: [] }

/**
 * What a command does to the notes, or why it does nothing. Decides everything but what needs bytes or secrets: the
 * relay asks this before it writes, the page to show what is still on its way. `by` is the relay's stamp.
 */
export function decide(notes: Notes, command: NotesCommand, by: Stamp, brought: Brought): Decision {
  const kind = MAKES[command.do]
  if (kind === undefined) return decideNew(notes, command, by, brought)
  const before = own<unknown>(notes[kind], command.id) as { readonly by: Stamp } | undefined
  if (before !== undefined) return before.by.seatId === by.seatId ? done : refused('id-taken')
  if (Object.keys(notes[kind]).length >= NOTES_LIMITS[kind]) return refused('too-many')
  return decideNew(notes, command, by, brought)
}

/** Whether this seat's command has left its entry already. */
export function isDoneBefore(notes: Notes, { do: name, id }: NotesCommand, seatId: string): boolean {
  const kind = MAKES[name]
  const before = kind === undefined ? undefined : (own<unknown>(notes[kind], id) as { readonly by: Stamp } | undefined)
  return before?.by.seatId === seatId
}

/** Whether a role alone forbids a command, before anything is prepared for it. */
export function roleProblem(command: NotesCommand, role: Stamp['role']): CommandProblem | null {
  return command.do === 'lock.make' && role !== 'photographer' ? 'only-photographer' : null
}

function decideNew(notes: Notes, command: NotesCommand, by: Stamp, brought: Brought): Decision {
  const { id } = command
  switch (command.do) {
    case 'note.add': {
      const { lookId, pin, text, colour } = command
      return write({ kind: 'notes', id, entry: { lookId, pin, text, colour: colour ?? null, by } })
    }
    case 'note.reply':
      if (!Object.hasOwn(notes.notes, command.noteId)) return refused('no-such-note')
      return write({ kind: 'replies', id, entry: { noteId: command.noteId, text: command.text, by } })
    case 'note.state': return noteState(notes, command, by)
    case 'stroke.add': {
      const { lookId, line, colour, widthShare } = command
      return write({ kind: 'strokes', id, entry: { removed: false, lookId, line, colour, widthShare, by } })
    }
    case 'stroke.remove': return strokeRemoved(notes, command, by)
    case 'seen': return seen(notes, command, by)
    case 'ballot.open':
      return write({ kind: 'ballots', id, entry: { question: command.question, lookIds: command.lookIds, by, voters: [], opened: null } })
    case 'ballot.vote': return voted(notes, command, by)
    case 'ballot.reveal': return revealed(notes, command, by, brought.votes ?? [])
    case 'that-one': {
      if (brought.moment === undefined) return refused('no-plan')
      return write({ kind: 'thatOnes', id, entry: { lookId: command.lookId, words: command.words, ...brought.moment, by } })
    }
    case 'that-one.words': return worded(notes, command, by)
    case 'screen-check': return write({ kind: 'screenChecks', id, entry: { result: command.result, by } })
    case 'lock.make': return locked(notes, command, by, brought)
    case 'yes.add': return saidYes(notes, command, by)
  }
}

function noteState(notes: Notes, { id, noteId, state }: CommandOf<'note.state'>, by: Stamp): Decision {
  const note = own(notes.notes, noteId)
  if (note === undefined) return refused('no-such-note')
  if (by.role === 'client' && note.by.seatId !== by.seatId) return refused('not-yours-to-close')
  return write({ kind: 'noteStates', id, entry: { noteId, state, by } })
}

function strokeRemoved(notes: Notes, { strokeId }: CommandOf<'stroke.remove'>, by: Stamp): Decision {
  const stroke = own(notes.strokes, strokeId)
  if (stroke === undefined) return refused('no-such-stroke')
  if (stroke.by.seatId !== by.seatId) return refused('only-author')
  return stroke.removed ? done : write({ kind: 'strokes', id: strokeId, entry: { removed: true, by } })
}

/** What was seen stays seen, in whatever order the marks arrive; nobody has seen what is not written yet. */
function seen(notes: Notes, { upTo }: CommandOf<'seen'>, by: Stamp): Decision {
  const before = own(notes.seen, by.seatId)
  if (before === undefined && Object.keys(notes.seen).length >= NOTES_LIMITS.seen) return refused('too-many')
  const to = Math.min(upTo, by.sequence - 1)
  return to <= (before?.upTo ?? 0) ? done : write({ kind: 'seen', id: by.seatId, entry: { upTo: to } })
}

function voted(notes: Notes, { ballotId, lookId }: CommandOf<'ballot.vote'>, by: Stamp): Decision {
  const ballot = own(notes.ballots, ballotId)
  if (ballot === undefined) return refused('no-such-ballot')
  if (ballot.opened !== null) return refused('votes-open')
  if (lookId !== null && !ballot.lookIds.includes(lookId)) return refused('not-on-ballot')
  if (ballot.voters.some(({ seatId }) => seatId === by.seatId)) return done
  if (ballot.voters.length >= 500) return refused('too-many')
  return write({ kind: 'ballots', id: ballotId, entry: { ...ballot, voters: [...ballot.voters, { seatId: by.seatId, name: by.name }] } })
}

function revealed(notes: Notes, { ballotId }: CommandOf<'ballot.reveal'>, by: Stamp, votes: readonly Vote[]): Decision {
  const ballot = own(notes.ballots, ballotId)
  if (ballot === undefined) return refused('no-such-ballot')
  if (by.role !== 'photographer' && ballot.by.seatId !== by.seatId) return refused('only-author')
  return ballot.opened === null ? write({ kind: 'ballots', id: ballotId, entry: { ...ballot, opened: { by, votes: [...votes] } } }) : done
}

function worded(notes: Notes, { thatOneId, words }: CommandOf<'that-one.words'>, by: Stamp): Decision {
  const one = own(notes.thatOnes, thatOneId)
  if (one === undefined) return refused('no-such-that-one')
  if (one.by.seatId !== by.seatId) return refused('only-author')
  return one.words === words ? done : write({ kind: 'thatOnes', id: thatOneId, entry: { ...one, words } })
}

function locked(notes: Notes, command: CommandOf<'lock.make'>, by: Stamp, { jobId, frozen }: Brought): Decision {
  const forbidden = roleProblem(command, by.role)
  if (forbidden !== null) return refused(forbidden)
  if (frozen === undefined) return refused('no-plan')
  const { id, lookId, conditions, askAgainSteps } = command
  const before = Object.entries(notes.locks).reduce<readonly [string, Lock] | null>(
    (last, entry) => (last === null || entry[1].number > last[1].number ? entry : last), null)
  const lock = {
    number: (before?.[1].number ?? 0) + 1, lookId, ...frozen, conditions, askAgainSteps,
    previousHash: before === null ? null : chainEnd(notes, before[0]), by,
  }
  return write({ kind: 'locks', id, entry: { ...lock, hash: lockHash(jobId, id, lock) } })
}

function saidYes(notes: Notes, { id, lockId, words, screenCheckId }: CommandOf<'yes.add'>, by: Stamp): Decision {
  const end = chainEnd(notes, lockId)
  if (end === null) return refused('no-such-lock')
  if (supersededBy(notes, lockId) !== null) return refused('superseded')
  const check = screenCheckId === null ? null : own(notes.screenChecks, screenCheckId)
  if (check === undefined || (check !== null && check.by.seatId !== by.seatId)) return refused('no-such-check')
  // Who says yes twice has said it: conditions of a second thought belong into a note.
  if (yesesOf(notes, lockId).some(([, yes]) => yes.by.seatId === by.seatId)) return done
  const yes = { lockId, words, screenCheckId, previousHash: end, by }
  return write({ kind: 'yeses', id, entry: { ...yes, hash: yesHash(id, yes, check) } })
}

function own<Entry>(record: Readonly<Record<string, Entry>>, id: string): Entry | undefined {
  return Object.hasOwn(record, id) ? record[id] : undefined
}

function write(one: NotesWrite): Decision {
  return { ok: true, writes: [one] }
}

function refused(code: CommandProblem): Decision {
  return { ok: false, code }
}

/** The notes with these entries put in their places; what is not touched stays the same object. */
export function withWrites(notes: Notes, writes: readonly NotesWrite[]): Notes {
  return writes.reduce<Notes>((before, { kind, id, entry }) => ({ ...before, [kind]: { ...before[kind], [id]: entry } }), notes)
}

/** The place in the job's count that comes next: later is greater, whatever clocks say. */
export function nextSequence(notes: Notes): number {
  let last = 0
  for (const kind of Object.values(notes)) {
    for (const entry of Object.values(kind) as { readonly by?: Stamp; readonly opened?: { readonly by: Stamp } | null }[]) {
      last = Math.max(last, entry.by?.sequence ?? 0, entry.opened?.by.sequence ?? 0)
    }
  }
  return last + 1
}
