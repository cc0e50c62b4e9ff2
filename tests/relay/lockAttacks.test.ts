import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import * as Y from 'yjs'
import { planRoot } from '../../shared-core/document/planRoot.ts'
import { readNotesFromDocument } from '../../shared-core/document/notesDocument.ts'
import type { Notes } from '../../shared-core/notes/notes.ts'
import { keptOfLock, verifyLock } from '../../shared-core/notes/verifyLock.ts'
import { refusalText } from '../../server/relay/refusals.ts'
import { bearer, demoCrew, lock, note, notesDocOf, notesOf, outcomes, say, yes } from './notesPeople.ts'
import { openRelay, type Seated, type TestRelay } from './openRelay.ts'
import { rawJoin, syncMessage, type RawPeer } from './rawPeer.ts'
import { startRelay, takeSeat } from './startedRelay.ts'

const folder = mkdtempSync(join(tmpdir(), 'halfstop-locks-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

/** The demo job with lock 1 made by the photographer and the client's yes to it. */
async function lockedJob() {
  const relay = await openRelay()
  const crew = await demoCrew(relay)
  expect(await outcomes(relay, crew.photographer, lock('l1'))).toEqual(['ok'])
  expect(await outcomes(relay, crew.client, yes('y1', 'l1'))).toEqual(['ok'])
  return { relay, ...crew, before: sealed(await notesOf(relay, crew.photographer)) }
}

const sealed = ({ locks, yeses }: Notes) => ({ locks, yeses })

/** Everything kept under the names a lock holds, fetched as a person's page does. */
async function keptBytes(origin: string, seated: Seated, notes: Notes, lockId: string): Promise<Map<string, Uint8Array>> {
  const kept = new Map<string, Uint8Array>()
  for (const hash of keptOfLock(notes.locks[lockId]!)) {
    const response = await fetch(`${origin}/s/${seated.seatId}/kept/${hash}`, { headers: bearer(seated) })
    if (response.ok) kept.set(hash, new Uint8Array(await response.arrayBuffer()))
  }
  return kept
}

async function verdict(relay: Pick<TestRelay, 'origin'>, jobId: string, seated: Seated, notes: Notes) {
  return verifyLock(jobId, notes, 'l1', await keptBytes(relay.origin, seated, notes, 'l1'))
}

/** What a page that had taken over the notes might do to a lock, each as a change to its own copy. */
const TAMPERINGS: readonly (readonly [what: string, tamper: (doc: Y.Doc) => void])[] = [
  ['other conditions', (doc) => setLock(doc, { conditions: 'none' })],
  ['another plan', (doc) => setLock(doc, { planHash: 'f'.repeat(64) })],
  ['another number', (doc) => setLock(doc, { number: 7 })],
  ['another maker', (doc) => setLock(doc, { by: { seatId: 'x', name: 'Nobody', role: 'photographer', atMs: 1, sequence: 1 } })],
  ['a lock of its own', (doc) => doc.getMap('locks').set('l2', { ...lockIn(doc), number: 2 })],
  ['a yes more', (doc) => doc.getMap('yeses').set('y2', { ...(doc.getMap('yeses').get('y1') as object), words: 'yes to all' })],
  ['the lock taken out', (doc) => doc.getMap('locks').delete('l1')],
  ['the yes taken out', (doc) => doc.getMap('yeses').delete('y1')],
  ['everything taken out', (doc) => { for (const map of doc.share.keys()) doc.getMap(map).clear() }],
]

const lockIn = (doc: Y.Doc): object => doc.getMap('locks').get('l1') as object
const setLock = (doc: Y.Doc, changed: object) => doc.getMap('locks').set('l1', { ...lockIn(doc), ...changed })

/** Just the change, as a peer that had the document before would send it. */
function changeOf(doc: Y.Doc, tamper: (doc: Y.Doc) => void): Uint8Array {
  const had = Y.encodeStateVector(doc)
  doc.transact(() => tamper(doc))
  return Y.encodeStateAsUpdate(doc, had)
}

describe('a lock', () => {
  it('stands against every role that writes to the notes over a raw socket, pen or no pen, in either step of sync', { timeout: 60_000 }, async () => {
    const { relay, jobId, photographer, assistant, client, before } = await lockedJob()
    await relay.post(`/s/${photographer.seatId}/pen`, { toSeatId: client.seatId }, bearer(photographer))
    const bystander = await rawJoin(relay, photographer, 'notes')
    await bystander.document()
    for (const attacker of [photographer, assistant, client]) {
      for (const [index, [what, tamper]] of TAMPERINGS.entries()) {
        const peer = await rawJoin(relay, attacker, 'notes')
        peer.send(syncMessage(index % 2 === 0 ? 2 : 1, changeOf(await notesDocOf(relay, attacker), tamper)))
        expect([what, await refusalHeard(peer)]).toEqual([what, refusalText('relay-only')])
        peer.socket.close()
      }
    }
    const after = await notesOf(relay, client)
    expect(sealed(after)).toEqual(before)
    expect(bystander.heard.filter(({ kind }) => kind === 'change')).toEqual([])
    expect(await verdict(relay, jobId, client, after)).toEqual({ intact: true, problems: [] })
  })

  it('would show each of those, had somebody made it in the store itself', async () => {
    const { relay, jobId, client, before } = await lockedJob()
    const kept = await keptBytes(relay.origin, client, await notesOf(relay, client), 'l1')
    for (const [what, tamper] of TAMPERINGS) {
      const doc = await notesDocOf(relay, client)
      tamper(doc)
      const { notes } = readNotesFromDocument(doc)
      // A second lock, and a last yes taken off the end, leave lock 1 itself whole: the first breaks its own seal, the
      // second the end of the chain that was written down.
      if (what === 'a lock of its own') expect([what, verifyLock(jobId, notes, 'l2', kept).intact]).toEqual([what, false])
      else if (what === 'the yes taken out') expect(sealed(notes)).not.toEqual(before)
      else expect([what, verifyLock(jobId, notes, 'l1', kept).intact]).toEqual([what, false])
    }
    for (const [hash, bytes] of kept) {
      const changed = new Map(kept).set(hash, Uint8Array.from([...bytes.slice(0, -1), bytes.at(-1)! ^ 1]))
      expect(verifyLock(jobId, await notesOf(relay, client), 'l1', changed).intact).toBe(false)
    }
  })

  it('stands against commands that claim another author, time, number or seal, and against roles that may not lock', async () => {
    const { relay, photographer, assistant, client, before } = await lockedJob()
    const forged = [
      { by: { seatId: photographer.seatId, name: 'Ines', role: 'photographer', atMs: 1, sequence: 1 } },
      { number: 1 }, { hash: '0'.repeat(64) }, { previousHash: null }, { planHash: '0'.repeat(64) }, { pictureHash: '0'.repeat(64) },
      { role: 'photographer' }, { seatId: photographer.seatId },
    ]
    for (const extra of forged) {
      expect([extra, await outcomes(relay, photographer, lock('l2', extra))]).toEqual([extra, ['bad-command']])
      expect([extra, await outcomes(relay, client, { ...yes('y2', 'l1'), ...extra })]).toEqual([extra, ['bad-command']])
    }
    for (const role of [assistant, client]) {
      expect(await outcomes(relay, role, lock('l2'), { ...lock('l3'), do: 'lock.edit' }, { do: 'lock.remove', id: 'r', lockId: 'l1' }))
        .toEqual(['only-photographer', 'bad-command', 'bad-command'])
    }
    expect(sealed(await notesOf(relay, client))).toEqual(before)
  })

  it('stays what it was when its own command comes again with other words, from anybody', async () => {
    const { relay, photographer, assistant, client, before } = await lockedJob()
    expect(await outcomes(relay, photographer, lock('l1', { conditions: 'quite other', askAgainSteps: 20 }))).toEqual(['ok'])
    expect(await outcomes(relay, client, { ...yes('y1', 'l1'), words: 'no' }, { ...yes('y9', 'l1'), words: 'second thought' })).toEqual(['ok', 'ok'])
    expect(await outcomes(relay, assistant, { ...yes('y1', 'l1'), words: 'no' })).toEqual(['id-taken'])
    // An id is a name within its kind: a note of that name is a note.
    expect(await outcomes(relay, client, note('l1'))).toEqual(['ok'])
    // Names that an object has of itself are no way in either.
    expect(await outcomes(relay, client, yes('y2', '__proto__'), yes('y3', 'constructor'), yes('y4', 'l9'))).toEqual(['bad-command', 'bad-command', 'no-such-lock'])
    expect(sealed(await notesOf(relay, client))).toEqual(before)
  })

  it('is superseded by a later one and stays beneath it word for word; the later is tied to it', async () => {
    const { relay, photographer, client, before } = await lockedJob()
    expect(await outcomes(relay, photographer, lock('l2', { conditions: 'deeper' }))).toEqual(['ok'])
    const after = await notesOf(relay, client)
    expect(after.locks['l1']).toEqual(before.locks['l1'])
    expect([after.locks['l2']!.number, after.locks['l2']!.previousHash]).toEqual([2, before.yeses['y1']!.hash])
    expect(await outcomes(relay, photographer, yes('y5', 'l1'))).toEqual(['superseded'])
  })

  it('keeps its plan and pictures against HTTP: nothing is put over them, taken out, or read from another job', async () => {
    const { relay, jobId, photographer, client, before } = await lockedJob()
    const { pictureHash, planHash } = before.locks['l1']!
    const png = Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 1])
    for (const hash of [pictureHash, planHash]) {
      for (const method of ['PUT', 'DELETE', 'PATCH', 'POST']) {
        const address = `${relay.origin}/s/${client.seatId}/kept/${hash}`
        const { status } = await fetch(address, { method, body: Buffer.from(png), headers: { ...bearer(client), 'content-type': 'image/png' } })
        expect([method, status >= 400 && status < 500]).toEqual([method, true])
      }
      const other = await demoCrew(relay)
      for (const path of [hash, `../../${photographer.seatId}/kept/${hash}`, `..%2f..%2f${photographer.seatId}%2fkept%2f${hash}`, `${hash}/`, `${hash.toUpperCase()}`]) {
        const { status } = await fetch(`${relay.origin}/s/${other.client.seatId}/kept/${path}`, { headers: bearer(other.client) })
        expect([path, status >= 400]).toEqual([path, true])
      }
    }
    expect(await verdict(relay, jobId, client, await notesOf(relay, client))).toEqual({ intact: true, problems: [] })
  })

  it('keeps the plan it was made of whatever is done to the plan after, and is not made of a plan that nobody saw', { timeout: 60_000 }, async () => {
    const { relay, jobId, photographer, assistant, client, before } = await lockedJob()
    const seen = before.locks['l1']!.planHash
    const hostile = await rawJoin(relay, assistant)
    const doc = await hostile.document()
    const watching = await rawJoin(relay, photographer)
    await watching.document()
    hostile.send(syncMessage(2, changeOf(doc, (plan) => {
      let deep = new Y.Map<unknown>()
      planRoot(plan).set('looks-of-my-own', deep)
      for (let level = 0; level < 200; level++) {
        const deeper = new Y.Map<unknown>()
        deep.set('in', deeper)
        deep = deeper
      }
      deep.set('huge', 'x'.repeat(50_000))
      planRoot(plan).set('title', 'Taken over')
    })))
    await watching.hear('change')
    // Locked by one who still saw the plan from before: refused in words, and nothing is written.
    expect(await outcomes(relay, photographer, lock('l2', { planHashSeen: seen }))).toEqual(['plan-moved'])
    // Everything taken out of the plan: there is nothing to lock, and the lock that stands does not move.
    hostile.send(syncMessage(2, changeOf(doc, (plan) => { for (const key of [...planRoot(plan).keys()]) planRoot(plan).delete(key) })))
    await watching.hear('change', () => true, watching.heard.length)
    expect((await say(relay, photographer, lock('l3')))[0]!.ok).toBe(false)
    const after = await notesOf(relay, client)
    expect(sealed(after)).toEqual(before)
    expect(await verdict(relay, jobId, client, after)).toEqual({ intact: true, problems: [] })
  })

  it('that was answered for is there after the relay is killed, with its pictures', { timeout: 120_000 }, async () => {
    const environment = { DATA_DIR: join(folder, 'killed'), LOG_LEVEL: 'none' }
    let relay = await startRelay(environment)
    const photographer = await takeSeat(relay.origin, relay.links['photographer']!, 'Ines')
    const client = await takeSeat(relay.origin, relay.links['client']!, 'Pell')
    expect(await outcomes(relay, photographer, lock('l1'))).toEqual(['ok'])
    expect(await outcomes(relay, client, yes('y1', 'l1'))).toEqual(['ok'])
    await relay.end('SIGKILL')
    relay = await startRelay(environment)
    const { notes } = readNotesFromDocument(await notesDocOf(relay, client))
    expect([Object.keys(notes.locks), Object.keys(notes.yeses)]).toEqual([['l1'], ['y1']])
    expect(await verdict(relay, photographer.jobId, client, notes)).toEqual({ intact: true, problems: [] })
    expect(await relay.end('SIGTERM')).toBe(0)
  })
})

/** The refusal's words; fails when the relay ends the connection without saying why. */
async function refusalHeard(peer: RawPeer): Promise<string> {
  return (await peer.hear('denied')).reason
}
