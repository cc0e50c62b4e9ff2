import { createStore, type StoreApi } from 'zustand/vanilla'
import type { NotesCommand } from '../../../shared-core/notes/command.ts'
import { ENTRY_KINDS } from '../../../shared-core/notes/entries.ts'
import { noNotes, type Notes } from '../../../shared-core/notes/notes.ts'
import type { Plan } from '../../../shared-core/plan/schema/plan.ts'
import type { SeatInfo } from '../../connection/seat.ts'
import { commandOf } from './draft.ts'
import { isStillToShow, layOver } from './layOver.ts'
import type { NotesBoard } from './notesBoard.ts'
import { createOutbox, type OutboxParts } from './outbox.ts'
import type { OutboxEntry } from './outboxShelf.ts'
import type { OwnVotesKept } from './ownVotes.ts'
import { planHash } from './planHash.ts'
import { latestSequence, seenUpTo } from './unread.ts'

/** Where the notes come from: a shared document, or a test. */
export interface NotesSource {
  read(): Notes
  isHere(): boolean
  onChange(listener: () => void): () => void
}

export interface NotesParts extends Omit<OutboxParts, 'onChange' | 'onDone'> {
  readonly seat: SeatInfo
  readonly source: NotesSource
  /** The plan before the person's eyes. */
  readonly shownPlan: () => Plan
  readonly ownVotes: OwnVotesKept
}

export interface NotesStore extends StoreApi<NotesBoard> {
  /** The relay can be reached again: what waits is sent now. */
  wake(): void
  close(): void
}

/** The notes of a job for one seat. */
export function createNotesStore({ seat, source, shownPlan, ownVotes, ...sending }: NotesParts): NotesStore {
  const own = { seat, lookName: (lookId: string) => shownPlan().looks[lookId]?.name ?? '' }
  /** Done by the relay, but not yet in the document here. */
  let doneAhead: readonly OutboxEntry[] = []

  const store = createStore<NotesBoard>()(() => ({
    seat,
    notes: noNotes,
    kept: noNotes,
    isHere: false,
    onTheWay: [],
    onTheWayIds: new Set(),
    refused: [],
    delivery: { state: 'at-rest', words: '' },
    outlivesPage: true,
    ownVotes: ownVotes.read(),
    send(draft) {
      const command = commandOf(draft)
      if (command === null) return null
      if (command.do === 'ballot.vote') rememberVote(command)
      void outbox.add(command, withPlanSeen(command, shownPlan()))
      return command.id
    },
    markSeen() {
      const { kept, notes } = store.getState()
      const upTo = latestSequence(kept)
      if (upTo > seenUpTo(notes, seat.seatId)) store.getState().send({ do: 'seen', upTo })
    },
    again: (id) => void outbox.again(id),
    forget: (id) => void outbox.forget(id),
  }))

  const outbox = createOutbox({
    ...sending,
    onChange: () => show(),
    onDone(entries) {
      doneAhead = [...doneAhead, ...entries]
      show()
    },
  })

  function rememberVote({ id, ballotId, lookId, why }: NotesCommand & { readonly do: 'ballot.vote' }): void {
    const votes = { ...ownVotes.read(), [ballotId]: { commandId: id, lookId, why } }
    ownVotes.keep(votes)
    store.setState({ ownVotes: votes })
  }

  function takeDocument(): void {
    store.setState(({ kept }) => ({ kept: sharingGroups(kept, source.read()), isHere: source.isHere() }))
    show()
  }

  function show(): void {
    const { kept } = store.getState()
    const entries = outbox.entries()
    doneAhead = doneAhead.filter((entry) => isStillToShow(kept, entry, own))
    const ahead = new Set(doneAhead.map(({ command }) => command.id))
    const waiting = entries.filter(({ refused, command }) => refused === null && !ahead.has(command.id))
    store.setState({
      notes: layOver(kept, [...doneAhead, ...waiting], own),
      onTheWay: waiting.map(({ command }) => command),
      onTheWayIds: new Set(waiting.map(({ command }) => command.id)),
      refused: entries.flatMap(({ command, refused }) => (refused === null ? [] : [{ command, ...refused }])),
      delivery: outbox.delivery(),
      outlivesPage: outbox.outlivesPage(),
    })
  }

  const stop = source.onChange(takeDocument)
  takeDocument()
  outbox.wake()
  return {
    ...store,
    wake: outbox.wake,
    close() {
      stop()
      outbox.close()
    },
  }
}

async function withPlanSeen(command: NotesCommand, seen: Plan): Promise<NotesCommand> {
  if (command.do !== 'that-one' && command.do !== 'lock.make') return command
  // Without it the command still stands: the relay then says only that it does not know what was seen.
  return { ...command, planHashSeen: await planHash(seen).catch(() => null) }
}

/** The next reading, with the groups in which nothing changed as the same objects, so that what selects one draws no more often than it must. */
function sharingGroups(before: Notes, next: Notes): Notes {
  return Object.fromEntries(ENTRY_KINDS.map((kind) => {
    const [old, now]: readonly Readonly<Record<string, unknown>>[] = [before[kind], next[kind]] as const
    const ids = Object.keys(now!)
    const isSame = ids.length === Object.keys(old!).length && ids.every((id) => old![id] === now![id])
    return [kind, isSame ? old : now]
  })) as unknown as Notes
}
