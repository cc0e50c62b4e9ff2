import { describe, expect, it } from 'vitest'
import { canonicalJson } from '../../shared-core/notes/canonical.ts'
import { sha256 } from '../../shared-core/arithmetic/sha256.ts'
import { ballotsOf } from '../../client/notes/engine/ballots.ts'
import { keptPlan } from '../../client/notes/engine/keptThings.ts'
import type { NotesDraft } from '../../client/notes/engine/draft.ts'
import { threadsOf } from '../../client/notes/engine/threads.ts'
import { unreadOf } from '../../client/notes/engine/unread.ts'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { bearer, demoCrew, demoLookId, notesOf } from '../relay/notesPeople.ts'
import { openRelay } from '../relay/openRelay.ts'
import { until } from '../relay/until.ts'
import { newDevice, openPage } from './notesPerson.ts'

const note = (text: string): NotesDraft => ({ do: 'note.add', lookId: demoLookId, pin: { on: 'look' }, text })
const looks = Object.keys(demoPlan.looks).slice(0, 2)
const secondLookId = looks[1] ?? 'other'
const texts = (notes: { readonly notes: Readonly<Record<string, { readonly text: string }>> }) => Object.values(notes.notes).map(({ text }) => text).sort()

describe('notes on a page', () => {
  it('are shown at once as on their way, and as kept once the relay has written them', async () => {
    const relay = await openRelay()
    const { client } = await demoCrew(relay)
    const page = openPage(relay, client, newDevice())
    const id = page.board().send(note('more plum'))!
    expect(page.board().onTheWayIds.has(id)).toBe(true)
    expect([page.board().notes.notes[id]?.text, page.board().notes.notes[id]?.by.name, page.board().kept.notes]).toEqual(['more plum', 'Pell', {}])
    await page.comeBack()
    await until(() => page.board().kept.notes[id] !== undefined && page.board().onTheWay.length === 0)
    expect([page.board().delivery.state, page.board().notes.notes[id]]).toEqual(['at-rest', page.board().kept.notes[id]])
  })

  it('of two people who were offline for days merge whole: notes, answers and votes, through a reload, in any order', async () => {
    const relay = await openRelay()
    const { client, assistant, photographer } = await demoCrew(relay)
    const [clients, assistants, photographers] = [newDevice(), newDevice(), newDevice()]
    const asks = openPage(relay, photographer, photographers)
    await asks.comeBack()
    const ballotId = asks.board().send({ do: 'ballot.open', question: 'Which one?', lookIds: [demoLookId, secondLookId] })!
    await until(() => asks.board().kept.ballots[ballotId] !== undefined)

    // Both have seen the question, and then lose the network.
    for (const [seated, device] of [[client, clients], [assistant, assistants]] as const) {
      const page = openPage(relay, seated, device)
      await page.comeBack()
      await until(() => page.board().kept.ballots[ballotId] !== undefined)
      page.leave()
    }
    const clientBefore = openPage(relay, client, clients)
    const assistantBefore = openPage(relay, assistant, assistants)
    for (const [page, name, lookId] of [[clientBefore, 'client', demoLookId], [assistantBefore, 'assistant', secondLookId]] as const) {
      const first = page.board().send(note(`${name} 0`))!
      for (let number = 1; number < 130; number++) page.board().send(note(`${name} ${number}`))
      page.board().send({ do: 'note.reply', noteId: first, text: `${name} again` })
      page.board().send({ do: 'ballot.vote', ballotId, lookId, why: `${name} likes it` })
      expect(page.board().onTheWay.length).toBe(132)
      await until(() => page.board().outlivesPage)
      page.leave()
    }

    const clientAfter = openPage(relay, client, clients)
    const assistantAfter = openPage(relay, assistant, assistants)
    await until(() => clientAfter.board().onTheWay.length === 132 && assistantAfter.board().onTheWay.length === 132)
    await Promise.all([clientAfter.comeBack(), assistantAfter.comeBack()])
    await until(() => [clientAfter, assistantAfter].every((page) => page.board().onTheWay.length === 0))
    await until(() => Object.keys(asks.board().kept.notes).length === 260)
    for (const page of [clientAfter, assistantAfter]) {
      await until(() => Object.keys(page.board().kept.replies).length === 2 && page.board().kept.ballots[ballotId]?.voters.length === 2)
      expect(texts(page.board().notes)).toEqual(texts(asks.board().kept))
      expect(page.board().refused).toEqual([])
    }
    const [view] = ballotsOf(clientAfter.board().notes, clientAfter.board().ownVotes, client)
    expect([view!.voted, view!.votes, view!.ownVote?.lookId, view!.mayOpen]).toEqual([2, null, demoLookId, false])
    expect(JSON.stringify(asks.board().kept)).not.toContain('likes it')

    asks.board().send({ do: 'ballot.reveal', ballotId })
    await until(() => clientAfter.board().kept.ballots[ballotId]?.opened !== null)
    const [opened] = ballotsOf(clientAfter.board().notes, {}, client)
    expect(opened!.tally).toEqual([{ lookId: demoLookId, votes: 1 }, { lookId: secondLookId, votes: 1 }, { lookId: null, votes: 0 }])
    expect([opened!.ownVote?.why, opened!.isOpened]).toEqual(['client likes it', true])
  })

  it('do one thing when the answer was lost and they go twice', async () => {
    const relay = await openRelay()
    const { client, photographer } = await demoCrew(relay)
    const page = openPage(relay, client, newDevice())
    await page.comeBack()
    page.network.losesAnswers = true
    const id = page.board().send(note('once'))!
    await until(() => page.board().delivery.state === 'waiting' && page.board().kept.notes[id] !== undefined)
    page.network.losesAnswers = false
    page.clock.moveOn(1_000)
    await until(() => page.board().onTheWay.length === 0)
    expect(page.posted.flat().filter((command) => command.id === id).length).toBe(2)
    expect(texts(await notesOf(relay, photographer))).toEqual(['once'])
  })

  it('that two pages of a seat send at once from the same shelf are there once', async () => {
    const relay = await openRelay()
    const { client, photographer } = await demoCrew(relay)
    const device = newDevice()
    const away = openPage(relay, client, device)
    for (let number = 0; number < 20; number++) away.board().send(note(`n${number}`))
    await until(() => away.board().outlivesPage)
    const other = openPage(relay, client, device)
    away.network.isUp = true
    other.network.isUp = true
    away.store.wake()
    other.store.wake()
    await until(() => away.board().onTheWay.length + other.board().onTheWay.length === 0)
    expect(Object.keys((await notesOf(relay, photographer)).notes).length).toBe(20)
    expect([...away.board().refused, ...other.board().refused]).toEqual([])
  })

  it('that are refused keep their text, with the relay’s words, and hold up nothing else', async () => {
    const relay = await openRelay()
    const { client } = await demoCrew(relay)
    const device = newDevice()
    const page = openPage(relay, client, device)
    const lost = page.board().send({ do: 'note.reply', noteId: 'nowhere', text: 'a long thought' })!
    const kept = page.board().send(note('arrives'))!
    await page.comeBack()
    await until(() => page.board().kept.notes[kept] !== undefined && page.board().refused.length === 1)
    expect(page.board().refused[0]).toMatchObject({ command: { id: lost, text: 'a long thought' }, words: 'That note is not there.', mayTryAgain: false })
    const reloaded = openPage(relay, client, device)
    await until(() => reloaded.board().refused.length === 1)
    reloaded.board().forget(lost)
    await until(() => reloaded.board().refused.length === 0)
  })

  it('that say nothing, or too much, are not taken', async () => {
    const relay = await openRelay()
    const { client } = await demoCrew(relay)
    const page = openPage(relay, client, newDevice())
    expect([page.board().send(note('  ')), page.board().send(note('x'.repeat(2_001)))]).toEqual([null, null])
  })

  it('are unread for others until they say that they have seen them, and never for their author', async () => {
    const relay = await openRelay()
    const { client, photographer } = await demoCrew(relay)
    const says = openPage(relay, client, newDevice())
    const reads = openPage(relay, photographer, newDevice())
    await says.comeBack()
    await reads.comeBack()
    const id = says.board().send(note('more plum'))!
    await until(() => reads.board().kept.notes[id] !== undefined && says.board().kept.notes[id] !== undefined)
    const unread = ({ board }: typeof says) => unreadOf(board().notes, board().seat.seatId).count
    expect([unread(says), unread(reads), threadsOf(reads.board().notes, photographer.seatId)[0]?.isUnread]).toEqual([0, 1, true])
    reads.board().markSeen()
    await until(() => unread(reads) === 0)
    await until(() => reads.board().onTheWay.length === 0)
    const sent = reads.posted.length
    reads.board().markSeen()
    expect(reads.posted.length).toBe(sent)
    const reply = says.board().send({ do: 'note.reply', noteId: id, text: 'or deeper' })!
    await until(() => reads.board().kept.replies[reply] !== undefined)
    expect([unread(reads), threadsOf(reads.board().notes, photographer.seatId)[0]?.isUnread]).toEqual([1, true])
  })

  it('say which plan was seen, and "that one" gives back exactly that', async () => {
    const relay = await openRelay()
    const { client, photographer } = await demoCrew(relay)
    const page = openPage(relay, client, newDevice())
    await page.comeBack()
    const id = page.board().send({ do: 'that-one', lookId: demoLookId, words: 'this' })!
    await until(() => page.board().kept.thatOnes[id] !== undefined)
    const one = page.board().kept.thatOnes[id]!
    expect([one.asSeen, one.planHash, one.lookName]).toEqual([true, sha256(canonicalJson(demoPlan)), demoPlan.looks[demoLookId]!.name])
    const fetchKept = async (hash: string) => {
      const response = await fetch(`${relay.origin}/s/${photographer.seatId}/kept/${hash}`, { headers: bearer(photographer) })
      return { ok: true as const, value: new Uint8Array(await response.arrayBuffer()) }
    }
    expect(await keptPlan(one.planHash, fetchKept)).toEqual({ ok: true, value: demoPlan })
    const forged = await keptPlan(one.planHash, async () => ({ ok: true, value: new TextEncoder().encode('{}') }))
    expect(forged.ok).toBe(false)
  })
})
