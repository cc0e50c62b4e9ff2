import { createHash } from 'node:crypto'
import { afterEach, describe, expect, it, vi } from 'vitest'
import { layOver } from '../../client/notes/engine/layOver.ts'
import { checkLock } from '../../client/notes/engine/keptThings.ts'
import { locksOf, ownScreenCheck, standingLock } from '../../client/notes/engine/locks.ts'
import type { OutboxEntry } from '../../client/notes/engine/outboxShelf.ts'
import { planHash, sha256OffThread } from '../../client/notes/engine/planHash.ts'
import { createReopening, reopenKept } from '../../client/notes/engine/reopen.ts'
import { isPinnedTo, strokesOf, threadsOf } from '../../client/notes/engine/threads.ts'
import { canonicalJson } from '../../shared-core/notes/canonical.ts'
import type { NotesCommand } from '../../shared-core/notes/command.ts'
import { decide, withWrites, type Brought } from '../../shared-core/notes/decide.ts'
import { noNotes, type Notes } from '../../shared-core/notes/notes.ts'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { demoLookId } from '../relay/notesPeople.ts'

const people = {
  photographer: { seatId: 'p', jobId: 'job', name: 'Ines', role: 'photographer' },
  client: { seatId: 'c', jobId: 'job', name: 'Pell', role: 'client' },
} as const
type Who = keyof typeof people

const sha256Of = (text: string) => createHash('sha256').update(text).digest('hex')
const things = { plan: canonicalJson(demoPlan), prediction: '{}', picture: 'a picture' }
const frozen = {
  lookName: 'One', planHash: sha256Of(things.plan), predictionHash: sha256Of(things.prediction), pictureHash: sha256Of(things.picture), standIns: [],
}

/** The notes after the relay has done these, in order. */
function after(...said: readonly (readonly [Who, NotesCommand])[]): Notes {
  return said.reduce<Notes>((notes, [who, command], index) => {
    const { seatId, name, role } = people[who]
    const brought: Brought = { jobId: 'job', frozen }
    const decision = decide(notes, command, { seatId, name, role, atMs: 1_000, sequence: index + 1 }, brought)
    if (!decision.ok) throw new Error(decision.code)
    return withWrites(notes, decision.writes)
  }, noNotes)
}

const lock = (id: string, lookId = demoLookId): NotesCommand => (
  { do: 'lock.make', id, lookId, conditions: '', standInsSeen: false, askAgainSteps: 2, planHashSeen: null })
const yes = (id: string, lockId: string, screenCheckId: string | null = null): NotesCommand => ({ do: 'yes.add', id, lockId, words: '', screenCheckId })
const check = (id: string): NotesCommand => ({
  do: 'screen-check', id,
  result: { neutralSurround: true, darkStepsSeen: 9, lightStepsSeen: 9, hueOrder: [0, 1], nightTint: false, tooDim: false, swatchPhotoHash: null, screenWords: 'phone' },
})
const onTheWay = (...commands: readonly NotesCommand[]): OutboxEntry[] => commands.map((command) => ({ command, writtenMs: 7, refused: null }))
const ofClient = { seat: people.client, lookName: () => 'One' }

describe('locks as seen', () => {
  const notes = after(
    ['photographer', lock('l1')], ['client', check('s1')], ['client', yes('y1', 'l1', 's1')], ['photographer', lock('other', 'otherLook')],
    ['photographer', lock('l2')])

  it('come latest first, each with its yeses, their screens, and which took whose place', () => {
    const locks = locksOf(notes, 'c')
    expect(locks.map(({ id, lock: { number }, supersededBy, supersedes, hasSaidYes }) => [id, number, supersededBy, supersedes, hasSaidYes])).toEqual([
      ['l2', 3, null, 'l1', false], ['other', 2, null, null, false], ['l1', 1, 'l2', null, true],
    ])
    expect(locks[2]!.yeses.map(({ yes: { by }, check: screen }) => [by.name, screen?.result.screenWords])).toEqual([['Pell', 'phone']])
    expect([locks[2]!.chainEnd, locks[0]!.chainEnd]).toEqual([notes.yeses['y1']!.hash, notes.locks['l2']!.hash])
    expect([standingLock(locks, demoLookId)?.id, standingLock(locks, 'nowhere')]).toEqual(['l2', null])
    expect([ownScreenCheck(notes, 'c')?.id, ownScreenCheck(notes, 'p')]).toEqual(['s1', null])
  })

  it('are checked over what the relay keeps; while it does not answer, nothing is said', async () => {
    const kept = new Map(Object.values(things).map((text) => [sha256Of(text), new TextEncoder().encode(text)]))
    const fetchFrom = (found: typeof kept) => async (hash: string) => {
      const bytes = found.get(hash)
      return bytes === undefined ? { ok: false as const, status: 404, words: 'gone' } : { ok: true as const, value: bytes }
    }
    expect(await checkLock(people.client, notes, 'l1', fetchFrom(kept))).toEqual({ ok: true, value: { intact: true, problems: [] } })
    const forged = new Map(kept).set(frozen.pictureHash, new TextEncoder().encode('another picture'))
    expect(await checkLock(people.client, notes, 'l1', fetchFrom(forged))).toMatchObject({ ok: true, value: { intact: false } })
    const silent = await checkLock(people.client, notes, 'l1', async () => ({ ok: false, status: null, words: 'away' }))
    expect(silent).toEqual({ ok: false, status: null, words: 'away' })
  })

  it('and votes being opened are not laid over: what makes them is the relay’s', () => {
    const open: NotesCommand = { do: 'ballot.open', id: 'b', question: 'Which?', lookIds: [demoLookId, 'x'] }
    const laid = layOver(noNotes, onTheWay(lock('l'), open, { do: 'ballot.reveal', id: 'r', ballotId: 'b' }, yes('y', 'l')), ofClient)
    expect([laid.locks, laid.yeses, laid.ballots['b']?.opened]).toEqual([{}, {}, null])
  })
})

describe('threads', () => {
  it('have their answers under them and the latest state, one’s own on the way too', () => {
    const notes = after(
      ['client', { do: 'note.add', id: 'n1', lookId: demoLookId, pin: { on: 'light', lightId: 'key' }, text: 'softer' }],
      ['client', { do: 'note.add', id: 'n2', lookId: demoLookId, pin: { on: 'look' }, text: 'good' }],
      ['photographer', { do: 'note.reply', id: 'r1', noteId: 'n1', text: 'so?' }],
      ['photographer', { do: 'note.state', id: 's1', noteId: 'n1', state: 'answered' }])
    const laid = layOver(notes, onTheWay({ do: 'note.reply', id: 'r2', noteId: 'n1', text: 'yes' }, { do: 'note.state', id: 's2', noteId: 'n1', state: 'closed' }), ofClient)
    const threads = threadsOf(laid, 'c')
    expect(threads.map(({ id, state, replies, isUnread }) => [id, state, replies.map((one) => one.id), isUnread])).toEqual([
      ['n1', 'closed', ['r1', 'r2'], true], ['n2', 'open', [], false],
    ])
    expect([isPinnedTo(threads[0]!.note.pin, { on: 'light', id: 'key' }), isPinnedTo(threads[0]!.note.pin, { on: 'light', id: 'rim' })]).toEqual([true, false])
    expect(isPinnedTo({ on: 'subject', place: { xMetres: 0, yMetres: 0, zMetres: 0 }, areaId: 'cheek' }, { on: 'area', id: 'cheek' })).toBe(true)
  })

  it('leave out lines that were taken back', () => {
    const line = (id: string): NotesCommand => (
      { do: 'stroke.add', id, lookId: demoLookId, line: { on: 'frame', points: [[0.1, 0.2]] }, colour: '#ff8800', widthShare: 0.01 })
    const laid = layOver(after(['client', line('a')]), onTheWay(line('b'), { do: 'stroke.remove', id: 'x', strokeId: 'a' }), ofClient)
    expect(strokesOf(laid, demoLookId).map(({ id }) => id)).toEqual(['b'])
  })
})

describe('the hash of a plan', () => {
  afterEach(() => void vi.unstubAllGlobals())

  it('is the same with and without the browser’s own (Node’s crypto is the judge)', async () => {
    const bytes = new TextEncoder().encode(things.plan)
    expect(await sha256OffThread(bytes)).toBe(sha256Of(things.plan))
    expect(await planHash(demoPlan)).toBe(sha256Of(things.plan))
    vi.stubGlobal('crypto', { getRandomValues: () => undefined })
    expect(await sha256OffThread(bytes)).toBe(sha256Of(things.plan))
  })
})

describe('what was kept', () => {
  it('is shown exactly as it was, or not at all, in words', async () => {
    const reopen = vi.fn()
    const thing = { kind: 'lock' as const, id: 'l1' }
    const fetchKept = async () => ({ ok: true as const, value: new TextEncoder().encode(things.plan) })
    expect(await reopenKept({ reopen }, { planHash: frozen.planHash, lookId: demoLookId }, 'lock 1', thing, fetchKept)).toBeNull()
    expect(reopen).toHaveBeenCalledExactlyOnceWith({ plan: demoPlan, lookId: demoLookId, words: 'lock 1', kept: thing })
    for (const kept of [{ planHash: sha256Of('else'), lookId: demoLookId }, { planHash: frozen.planHash, lookId: 'nowhere' }]) {
      expect(await reopenKept({ reopen }, kept, 'lock 1', thing, fetchKept)).toEqual(expect.any(String))
    }
    expect(reopen).toHaveBeenCalledOnce()
  })

  it('is the last that was asked for, whichever arrives first, and nothing after leaving', async () => {
    const notes = after(['photographer', lock('l1')], ['photographer', lock('l2')])
    const shown: (string | undefined)[] = []
    const arrive: (() => void)[] = []
    const reopening = createReopening(
      { getState: () => ({ reopen: (kept) => void shown.push(kept?.words) }) }, { getState: () => ({ notes, seat: people.client }) },
      async () => {
        await new Promise<void>((resolve) => void arrive.push(resolve))
        return { ok: true, value: new TextEncoder().encode(things.plan) }
      })
    const [first, second] = [reopening.lock('l1'), reopening.lock('l2')]
    await vi.waitFor(() => expect(arrive.length).toBe(2))
    arrive[1]!()
    await second
    arrive[0]!()
    await first
    expect(shown).toEqual(['lock 2, One'])
    const late = reopening.lock('l1')
    await vi.waitFor(() => expect(arrive.length).toBe(3))
    reopening.leave()
    arrive[2]!()
    await late
    expect(shown).toEqual(['lock 2, One', undefined])
    expect(await reopening.lock('nowhere')).toEqual(expect.any(String))
  })
})
