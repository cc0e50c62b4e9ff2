import { PASSING_PROBLEMS, type CommandAnswer, type CommandProblem } from '../../../shared-core/notes/answer.ts'
import type { NotesCommand } from '../../../shared-core/notes/command.ts'
import type { Answer } from '../../connection/api.ts'
import { pageClock, type Clock } from '../../session/latestOnly.ts'
import { nextBatch } from './batch.ts'
import type { OutboxEntry, OutboxShelf, Refused } from './outboxShelf.ts'

/** How the sending stands. `waiting`: it is tried again by itself; `turned-away`: the relay has no seat for us any more. */
export interface Delivery {
  readonly state: 'at-rest' | 'sending' | 'waiting' | 'turned-away'
  /** Why it waits or was turned away; empty otherwise. */
  readonly words: string
}

export interface OutboxParts {
  readonly shelf: OutboxShelf
  /** To the relay: one answer a command, in order. */
  readonly post: (commands: readonly NotesCommand[]) => Promise<Answer<readonly CommandAnswer[]>>
  /** Runs it while no other page of this seat is sending. */
  readonly inTurn: (send: () => Promise<void>) => Promise<void>
  readonly onChange: () => void
  /** The relay has done these; the document may take a moment longer to show them. */
  readonly onDone: (commands: readonly OutboxEntry[]) => void
  readonly clock?: Clock
  /** Milliseconds since 1970 by this device. */
  readonly now?: () => number
}

export interface Outbox {
  /** On their way and refused, in the order they were written. */
  entries(): readonly OutboxEntry[]
  delivery(): Delivery
  /** Whether all that waits would survive a reload. */
  outlivesPage(): boolean
  /** Among the entries at once; shelved as `finishing` gives it, after all that was added before, then sent. Resolves once it is shelved. */
  add(command: NotesCommand, finishing?: Promise<NotesCommand>): Promise<void>
  /** Sends a refused one once more. */
  again(id: string): Promise<void>
  /** Takes a refused one off the shelf. */
  forget(id: string): Promise<void>
  /** Sends now what waits, without waiting out a pause: the network, or the page, is back. */
  wake(): void
  close(): void
}

const FIRST_PAUSE_MS = 1_000
const LONGEST_PAUSE_MS = 60_000

/** Problems that pass without anybody doing anything. A picture that failed may fail for ever: the person tries that again. */
const PASSES_BY_ITSELF: ReadonlySet<CommandProblem> = new Set<CommandProblem>(['too-fast', 'not-kept'])

/**
 * Carries a seat's commands to the relay, in order, until each has been answered. Sending twice is harmless, because the
 * relay does an id once; so whatever is not known to have arrived is sent again.
 */
export function createOutbox({ shelf, post, inTurn, onChange, onDone, clock = pageClock, now = Date.now }: OutboxParts): Outbox {
  let shelved: readonly OutboxEntry[] = []
  let beingShelved: readonly OutboxEntry[] = []
  let delivery: Delivery = { state: 'at-rest', words: '' }
  let pauseMs = FIRST_PAUSE_MS
  let isSending = false
  let isAskedAgain = false
  let isClosed = false
  /** Counts wakings, so that a pause begun before the last one ends in nothing. */
  let waking = 0
  /** Answered on this page: not sent again even where the shelf could not be changed. */
  const answered = new Set<string>()

  let shelving: Promise<void> = Promise.resolve()

  const stopHearing = shelf.onOtherPage(() => {
    void refresh()
    // The page that wrote it sends it, unless it was closed too soon.
    clock.after(LONGEST_PAUSE_MS, () => void (toSend().length > 0 && send()))
  })

  function toSend(): readonly OutboxEntry[] {
    return shelved.filter(({ refused, command }) => refused === null && !answered.has(command.id))
  }

  async function refresh(justShelved?: OutboxEntry): Promise<void> {
    shelved = await shelf.read()
    beingShelved = beingShelved.filter((one) => one !== justShelved)
    if (!isClosed) onChange()
  }

  function say(state: Delivery['state'], words = ''): void {
    if (delivery.state === state && delivery.words === words) return
    delivery = { state, words }
    if (!isClosed) onChange()
  }

  function wake(): void {
    pauseMs = FIRST_PAUSE_MS
    void send()
  }

  async function send(): Promise<void> {
    waking += 1
    isAskedAgain = true
    if (isSending || isClosed) return
    isSending = true
    try {
      while (isAskedAgain && !isClosed) {
        isAskedAgain = false
        await inTurn(sendAll)
      }
    } catch (thrown) {
      console.error(thrown)
      waitFor('The notes could not be sent. They are tried again.')
    } finally {
      isSending = false
    }
  }

  async function sendAll(): Promise<void> {
    let most: number | undefined
    for (;;) {
      await refresh()
      if (isClosed) return
      const waiting = toSend()
      const batch = nextBatch(waiting.map(({ command }) => command), most)
      if (batch.length === 0) return say('at-rest')
      say('sending')
      const answer = await post(batch)
      if (answer.ok) {
        const heldUpBy = await take(waiting.slice(0, batch.length), answer.value)
        if (heldUpBy !== null) return waitFor(heldUpBy)
        pauseMs = FIRST_PAUSE_MS
      } else if (isOurs(answer.status)) {
        // One of them cannot be sent as it is; alone, it shows which.
        if (batch.length === 1) await refuse(batch[0]!.id, { words: answer.words, mayTryAgain: true })
        most = 1
      } else if (isTurnedAway(answer.status)) {
        return say('turned-away', answer.words)
      } else {
        return waitFor(answer.status === null ? 'The relay does not answer. It is sent when it does.' : answer.words)
      }
    }
  }

  /** Deals with the answers to a batch; why the rest must wait, null when it need not. */
  async function take(batch: readonly OutboxEntry[], answers: readonly CommandAnswer[]): Promise<string | null> {
    let heldUpBy: string | null = answers.length === batch.length ? null : 'The relay did not answer for all. They are sent again.'
    const done: OutboxEntry[] = []
    for (const [index, entry] of batch.entries()) {
      const answer = answers[index]
      if (answer === undefined) break
      if (answer.ok) done.push(entry)
      else if (PASSES_BY_ITSELF.has(answer.code)) heldUpBy ??= answer.message
      // What follows one held up may have been refused only for want of it: it is sent again.
      else if (heldUpBy === null) await refuse(entry.command.id, { words: answer.message, mayTryAgain: PASSING_PROBLEMS.has(answer.code) })
    }
    done.forEach(({ command }) => answered.add(command.id))
    onDone(done)
    await shelf.remove(done.map(({ command }) => command.id))
    await refresh()
    return heldUpBy
  }

  async function refuse(id: string, refused: Refused): Promise<void> {
    answered.add(id)
    await shelf.mark(id, refused)
  }

  function waitFor(words: string): void {
    say('waiting', words)
    const begun = waking
    clock.after(pauseMs, () => void (begun === waking && send()))
    pauseMs = Math.min(LONGEST_PAUSE_MS, 2 * pauseMs)
  }

  return {
    entries: () => [...shelved, ...beingShelved.filter(({ command: { id } }) => !shelved.some(({ command }) => command.id === id))],
    delivery: () => delivery,
    outlivesPage: () => beingShelved.length === 0 && (shelf.outlivesPage() || toSend().length === 0),
    add(command, finishing = Promise.resolve(command)) {
      const entry: OutboxEntry = { command, writtenMs: now(), refused: null }
      beingShelved = [...beingShelved, entry]
      onChange()
      // What could not be shelved has said so where it was added, and stops nothing after it.
      shelving = shelving.catch(() => undefined).then(async () => {
        await shelf.put({ ...entry, command: await finishing })
        await refresh(entry)
        // While the relay does not answer, a new note does not cut its pause short.
        if (delivery.state !== 'waiting') void send()
      })
      return shelving
    },
    async again(id) {
      answered.delete(id)
      await shelf.mark(id, null)
      wake()
    },
    async forget(id) {
      await shelf.remove([id])
      await refresh()
    },
    wake,
    close() {
      isClosed = true
      stopHearing()
      void shelving.finally(shelf.close)
    },
  }
}

/** The request itself was not taken: the same one never will be. */
function isOurs(status: number | null): boolean {
  return status === 400 || status === 413 || status === 415 || status === 422
}

function isTurnedAway(status: number | null): boolean {
  return status === 401 || status === 403 || status === 404
}
