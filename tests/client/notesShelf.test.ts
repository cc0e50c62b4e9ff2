import 'fake-indexeddb/auto'
import { afterEach, describe, expect, it, vi } from 'vitest'
import { createOutbox } from '../../client/notes/engine/outbox.ts'
import { deviceShelf } from '../../client/notes/engine/deviceShelf.ts'
import type { OutboxEntry } from '../../client/notes/engine/outboxShelf.ts'
import { newId } from '../../shared-core/plan/newId.ts'

const entry = (id: string): OutboxEntry => (
  { command: { do: 'note.add', id, lookId: 'look', pin: { on: 'look' }, text: id }, writtenMs: 5, refused: null })
const ids = (entries: readonly OutboxEntry[]) => entries.map(({ command }) => command.id)

// The database is fake-indexeddb: the W3C's IndexedDB in memory, written by others and run against the web platform's own tests.
describe('an outbox kept on the device', () => {
  afterEach(() => void vi.unstubAllGlobals())

  it('is there after a reload, in its order, with what was refused and without what was sent', async () => {
    const seatId = newId()
    const before = deviceShelf(seatId)
    for (const id of ['c', 'a', 'b', 'd']) await before.put(entry(id))
    await before.mark('a', { words: 'no', mayTryAgain: true })
    await before.remove(['b', 'never'])
    before.close()
    const after = deviceShelf(seatId)
    expect(await after.read()).toEqual([entry('c'), { ...entry('a'), refused: { words: 'no', mayTryAgain: true } }, entry('d')])
    expect(after.outlivesPage()).toBe(true)
    after.close()
  })

  it('holds an id once, and does not bring back what another page has sent', async () => {
    const seatId = newId()
    const [one, other] = [deviceShelf(seatId), deviceShelf(seatId)]
    await one.put(entry('a'))
    await other.put({ ...entry('a'), writtenMs: 9 })
    expect(await one.read()).toEqual([entry('a')])
    await other.remove(['a'])
    await one.mark('a', { words: 'no', mayTryAgain: false })
    expect(await one.read()).toEqual([])
    one.close()
    other.close()
  })

  it('tells the other pages of its seat, and no others', async () => {
    const seatId = newId()
    const [writes, hears, elsewhere] = [deviceShelf(seatId), deviceShelf(seatId), deviceShelf(newId())]
    const [heard, heardElsewhere] = [vi.fn(), vi.fn()]
    hears.onOtherPage(heard)
    elsewhere.onOtherPage(heardElsewhere)
    await writes.put(entry('a'))
    await vi.waitFor(() => expect(heard).toHaveBeenCalled())
    expect(ids(await hears.read())).toEqual(['a'])
    expect(heardElsewhere).not.toHaveBeenCalled()
    for (const shelf of [writes, hears, elsewhere]) shelf.close()
  })

  it('has what was written in the moment the page was left', async () => {
    const seatId = newId()
    const outbox = createOutbox({
      shelf: deviceShelf(seatId), onChange: () => undefined, onDone: () => undefined, inTurn: (send) => send(),
      post: async () => ({ ok: false, status: null, words: 'away' }),
    })
    const written = ['a', 'b', 'c'].map((id) => outbox.add(entry(id).command))
    expect(outbox.outlivesPage()).toBe(false)
    outbox.close()
    await Promise.all(written)
    const after = deviceShelf(seatId)
    expect(ids(await after.read())).toEqual(['a', 'b', 'c'])
    after.close()
  })

  it('lies in the page, and says so, where the browser keeps nothing', async () => {
    vi.stubGlobal('indexedDB', { open: () => { throw new DOMException('not in a private window', 'SecurityError') } })
    const shelf = deviceShelf(newId())
    await shelf.put(entry('a'))
    await shelf.put(entry('b'))
    await shelf.remove(['a'])
    expect(ids(await shelf.read())).toEqual(['b'])
    expect(shelf.outlivesPage()).toBe(false)
    shelf.close()
  })

  it('keeps a command that this page no longer knows to be copied, and does not send it', async () => {
    const seatId = newId()
    const shelf = deviceShelf(seatId)
    const strange = { ...entry('a'), command: { do: 'note.sing', id: 'a', text: 'la' } } as unknown as OutboxEntry
    await shelf.put(strange)
    const [read] = await shelf.read()
    expect([read?.command, read?.refused?.mayTryAgain]).toEqual([strange.command, false])
    shelf.close()
  })
})
