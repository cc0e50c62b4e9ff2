import { describe, expect, it } from 'vitest'
import type { Answer } from '../../client/connection/api.ts'
import { nextBatch } from '../../client/notes/engine/batch.ts'
import { createOutbox } from '../../client/notes/engine/outbox.ts'
import type { OutboxEntry } from '../../client/notes/engine/outboxShelf.ts'
import { pageShelf } from '../../client/notes/engine/pageShelf.ts'
import { COMMAND_PROBLEMS, type CommandAnswer, type CommandProblem } from '../../shared-core/notes/answer.ts'
import type { NotesCommand } from '../../shared-core/notes/command.ts'
import { until } from '../relay/until.ts'
import { HandClock } from './handClock.ts'

const note = (id: string, text = id): NotesCommand => ({ do: 'note.add', id, lookId: 'look', pin: { on: 'look' }, text })
const reply = (id: string, noteId: string): NotesCommand => ({ do: 'note.reply', id, noteId, text: id })
const lock = (id: string): NotesCommand => (
  { do: 'lock.make', id, lookId: 'look', conditions: '', standInsSeen: false, askAgainSteps: 2, planHashSeen: null })

const refusal = (id: string, code: CommandProblem): CommandAnswer => ({ id, ok: false, code, message: COMMAND_PROBLEMS[code] })
const problem = (status: number | null, words = `status ${status}`): Answer<never> => ({ ok: false, status, words })
const taken = (commands: readonly NotesCommand[]): Answer<readonly CommandAnswer[]> => (
  { ok: true, value: commands.map(({ id }) => ({ id, ok: true })) })

type Relay = (commands: readonly NotesCommand[]) => Answer<readonly CommandAnswer[]>

/** An outbox with the relay's answers in the test's hands; `answer` may be changed on the way. */
function outboxTo(answer: Relay) {
  const clock = new HandClock()
  const posted: string[][] = []
  const done: string[] = []
  const relay = { answer }
  const outbox = createOutbox({
    shelf: pageShelf(), clock, now: () => 0, onChange: () => undefined,
    inTurn: (send) => send(),
    onDone: (entries) => void done.push(...entries.map(({ command }) => command.id)),
    async post(commands) {
      posted.push(commands.map(({ id }) => id))
      return relay.answer(commands)
    },
  })
  const restsAs = (state: string) => until(() => outbox.delivery().state === state)
  return { outbox, clock, posted, done, relay, restsAs }
}

describe('an outbox', () => {
  it('waits ever longer while nothing answers, at most a minute, and goes at once when woken', async () => {
    const { outbox, clock, posted, relay, restsAs, done } = outboxTo(() => problem(null))
    await outbox.add(note('a'))
    for (const seconds of [1, 2, 4, 8, 16, 32, 60, 60]) {
      await restsAs('waiting')
      const before = posted.length
      clock.moveOn(1_000 * seconds - 1)
      expect(posted.length).toBe(before)
      clock.moveOn(1)
      await until(() => posted.length === before + 1)
    }
    await restsAs('waiting')
    relay.answer = taken
    outbox.wake()
    await restsAs('at-rest')
    expect([done, outbox.entries()]).toEqual([['a'], []])
    // The pause that was left over ends in nothing.
    const sent = posted.length
    clock.moveOn(120_000)
    expect(posted.length).toBe(sent)
  })

  it('does not hurry a relay that does not answer with every new note, and keeps their order', async () => {
    const { outbox, posted, relay, restsAs, done } = outboxTo(() => problem(503))
    await outbox.add(note('a'))
    await restsAs('waiting')
    await outbox.add(reply('b', 'a'))
    await outbox.add(note('c'))
    expect(posted).toEqual([['a']])
    relay.answer = taken
    outbox.wake()
    await restsAs('at-rest')
    expect([posted, done]).toEqual([[['a'], ['a', 'b', 'c']], ['a', 'b', 'c']])
  })

  it('does not believe a refusal that follows one held up: an answer to a note that is not there yet', async () => {
    const { outbox, clock, relay, restsAs, done } = outboxTo(() => problem(null))
    await outbox.add(note('a'))
    await outbox.add(reply('b', 'a'))
    await outbox.add(note('c'))
    await restsAs('waiting')
    relay.answer = () => ({ ok: true, value: [refusal('a', 'too-fast'), refusal('b', 'no-such-note'), { id: 'c', ok: true }] })
    outbox.wake()
    await until(() => outbox.delivery().words === COMMAND_PROBLEMS['too-fast'])
    expect(outbox.entries().map(({ command, refused }) => [command.id, refused])).toEqual([['a', null], ['b', null]])
    relay.answer = taken
    clock.moveOn(1_000)
    await restsAs('at-rest')
    expect(done).toEqual(['c', 'a', 'b'])
  })

  it('keeps what is refused, and sends it again only when asked', async () => {
    const { outbox, posted, relay, restsAs, done } = outboxTo(([one]) => ({ ok: true, value: [refusal(one!.id, 'picture-failed')] }))
    await outbox.add(lock('l'))
    await until(() => outbox.entries()[0]?.refused !== null)
    await restsAs('at-rest')
    expect(outbox.entries()[0]?.refused).toEqual({ words: COMMAND_PROBLEMS['picture-failed'], mayTryAgain: true })
    outbox.wake()
    expect(posted).toEqual([['l']])
    relay.answer = taken
    await outbox.again('l')
    await until(() => done.length === 1)
    expect(outbox.entries()).toEqual([])
  })

  it('finds the one that makes a whole request unfit, and sends the others', async () => {
    const { outbox, relay, restsAs, done } = outboxTo(() => problem(null))
    for (const id of ['a', 'bad', 'c']) await outbox.add(note(id))
    await restsAs('waiting')
    relay.answer = (commands) => (commands.some(({ id }) => id === 'bad') ? problem(413, 'too large') : taken(commands))
    outbox.wake()
    await restsAs('at-rest')
    expect(done).toEqual(['a', 'c'])
    expect(outbox.entries().map(({ command, refused }) => [command.id, refused?.words])).toEqual([['bad', 'too large']])
  })

  it('sends nothing any more when the seat is gone, and keeps what was written', async () => {
    const { outbox, clock, posted, restsAs } = outboxTo(() => problem(403, 'This link was withdrawn.'))
    await outbox.add(note('a'))
    await restsAs('turned-away')
    clock.moveOn(600_000)
    expect([posted.length, outbox.delivery().words, outbox.entries().length]).toEqual([1, 'This link was withdrawn.', 1])
  })

  it('has what was added at once, however slow the shelf, and shelves it in its order', async () => {
    const put: string[] = []
    let opens: () => void = () => undefined
    const opened = new Promise<void>((resolve) => void (opens = resolve))
    const shelf = pageShelf()
    const slow = { ...shelf, put: async (entry: OutboxEntry) => {
      await opened
      put.push(entry.command.id)
      await shelf.put(entry)
    } }
    const outbox = createOutbox({
      shelf: slow, clock: new HandClock(), onChange: () => undefined, onDone: () => undefined, inTurn: (send) => send(), post: async () => problem(null),
    })
    let finish: () => void = () => undefined
    void outbox.add(note('a'), new Promise((resolve) => void (finish = () => resolve(note('a', 'finished')))))
    const last = outbox.add(note('b'))
    expect([outbox.entries().map(({ command }) => command.id), put]).toEqual([['a', 'b'], []])
    opens()
    finish()
    await last
    expect(put).toEqual(['a', 'b'])
    expect(outbox.entries().map(({ command }) => ('text' in command ? command.text : ''))).toEqual(['finished', 'b'])
  })

  it('sends in the end what another page wrote and was closed before it could send', async () => {
    const shelf = pageShelf()
    let tell: () => void = () => undefined
    const clock = new HandClock()
    const done: string[] = []
    const outbox = createOutbox({
      shelf: { ...shelf, onOtherPage: (listener) => {
        tell = listener
        return () => undefined
      } },
      clock, onChange: () => undefined, onDone: (entries) => void done.push(...entries.map(({ command }) => command.id)),
      inTurn: (send) => send(), post: async (commands) => taken(commands),
    })
    await shelf.put({ command: note('a'), writtenMs: 0, refused: null })
    tell()
    await until(() => outbox.entries().length === 1)
    expect(done).toEqual([])
    clock.moveOn(60_000)
    await until(() => done.length === 1)
  })

  it('does not send without end what a broken shelf will not let go of', async () => {
    const stuck = { ...pageShelf(), remove: async () => undefined }
    let posts = 0
    const outbox = createOutbox({
      shelf: stuck, clock: new HandClock(), onChange: () => undefined, onDone: () => undefined, inTurn: (send) => send(),
      post: async (commands) => {
        posts += 1
        return taken(commands)
      },
    })
    await outbox.add(note('a'))
    await until(() => outbox.delivery().state === 'at-rest' && posts > 0)
    expect(posts).toBe(1)
  })
})

describe('a batch', () => {
  it('holds no more than the relay takes, and a lock goes alone', () => {
    const many = Array.from({ length: 250 }, (_, index) => note(`n${index}`))
    expect(nextBatch(many).length).toBe(100)
    expect(nextBatch([note('a'), note('b'), lock('l'), note('c')]).map(({ id }) => id)).toEqual(['a', 'b'])
    expect(nextBatch([lock('l'), note('c')]).map(({ id }) => id)).toEqual(['l'])
  })

  it('of long strokes is short, but never empty', () => {
    const points = Array.from({ length: 400 }, () => ({ xMetres: 0.123456789012345, yMetres: 0.123456789012345, zMetres: 0.123456789012345 }))
    const strokes = Array.from({ length: 100 }, (_, index): NotesCommand => (
      { do: 'stroke.add', id: `s${index}`, lookId: 'look', line: { on: 'surface', points }, colour: '#ffffff', widthShare: 0.01 }))
    const batch = nextBatch(strokes)
    expect(batch.length).toBeGreaterThan(0)
    expect(JSON.stringify(batch).length).toBeLessThan(300_000)
  })
})
