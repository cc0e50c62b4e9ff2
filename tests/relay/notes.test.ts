import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import * as Y from 'yjs'
import { SqliteStore } from '../../server/store/sqliteStore.ts'
import { stateOfNote } from '../../shared-core/notes/notes.ts'
import { bearer, demoCrew, demoLookId, note, notesDocOf, notesOf, outcomes, say } from './notesPeople.ts'
import { openRelay } from './openRelay.ts'
import { rawJoin, socketUrl, RawPeer } from './rawPeer.ts'

const folder = mkdtempSync(join(tmpdir(), 'halfstop-notes-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

describe('notes', () => {
  it('are seen at once by everybody on the job, stamped by the relay', async () => {
    const relay = await openRelay()
    const { photographer, client } = await relay.crew()
    const watching = await rawJoin(relay, photographer, 'notes')
    await watching.document()
    const beforeMs = Date.now()
    expect(await outcomes(relay, client, note('n1'))).toEqual(['ok'])
    await watching.hear('change')
    const { by, text } = (await notesOf(relay, photographer)).notes['n1']!
    expect([text, by.seatId, by.name, by.role, by.sequence]).toEqual(['more plum', client.seatId, 'Pell', 'client', 1])
    expect(by.atMs).toBeGreaterThanOrEqual(beforeMs)
    expect(by.atMs).toBeLessThanOrEqual(Date.now())
  })

  it('cannot be stamped by their sender, nor sent with another seat\'s secret', async () => {
    const relay = await openRelay()
    const { photographer, client } = await relay.crew()
    const forged = { ...note('n1'), by: { seatId: photographer.seatId, name: 'Ines', role: 'photographer', atMs: 1, sequence: 1 } }
    expect(await say(relay, client, forged)).toEqual([{ id: 'n1', ok: false, code: 'bad-command', message: expect.any(String) as string }])
    const response = await relay.post(`/s/${photographer.seatId}/notes`, { commands: [note('n2')] }, bearer(client))
    expect(response.status).toBe(401)
    expect((await notesOf(relay, client)).notes).toEqual({})
  })

  it('are not taken from pages of other sites', async () => {
    const relay = await openRelay()
    const { client } = await relay.crew()
    const headers = { ...bearer(client), origin: 'https://elsewhere.example' }
    expect((await relay.post(`/s/${client.seatId}/notes`, { commands: [note('n1')] }, headers)).status).toBe(403)
    expect((await relay.post(`/s/${client.seatId}/kept`, {}, headers)).status).toBe(403)
  })

  it('do one thing when sent twice, at once or later, and leave the log as it was', async () => {
    const relay = await openRelay()
    const { jobId, client, photographer } = await relay.crew()
    await Promise.all([say(relay, client, note('n1')), say(relay, client, note('n1')), say(relay, client, note('n1', 'other words'))])
    const logged = (await relay.store.readDocument({ jobId, document: 'notes' })).lastSequence
    expect(await outcomes(relay, client, note('n1'))).toEqual(['ok'])
    expect(await outcomes(relay, photographer, note('n1'))).toEqual(['id-taken'])
    expect((await relay.store.readDocument({ jobId, document: 'notes' })).lastSequence).toBe(logged)
    expect(Object.keys((await notesOf(relay, client)).notes)).toEqual(['n1'])
  })

  it('judge each command of a batch by itself, in its order', async () => {
    const relay = await openRelay()
    const { client, photographer } = await relay.crew()
    expect(await outcomes(relay, client,
      note('n1'), { do: 'note.reply', id: 'r1', noteId: 'n1', text: 'or deeper' }, { do: 'nonsense', id: 'x' }, 7,
      { do: 'note.reply', id: 'r2', noteId: 'nowhere', text: 'lost' }, { ...note('n2'), text: '' },
    )).toEqual(['ok', 'ok', 'bad-command', 'bad-command', 'no-such-note', 'bad-command'])
    expect(await outcomes(relay, photographer, { do: 'note.state', id: 's1', noteId: 'n1', state: 'answered' })).toEqual(['ok'])
    const notes = await notesOf(relay, photographer)
    expect([Object.keys(notes.notes), Object.keys(notes.replies), stateOfNote(notes, 'n1')]).toEqual([['n1'], ['r1'], 'answered'])
  })

  it('of two people offline merge whole, in whatever order their outboxes come', async () => {
    const relay = await openRelay()
    const { client, assistant, photographer } = await relay.crew()
    const outbox = (name: string) => Array.from({ length: 40 }, (_, index) => note(`${name}${index}`, `${name} ${index}`))
    await Promise.all([say(relay, client, ...outbox('c')), say(relay, assistant, ...outbox('a'))])
    const { notes } = await notesOf(relay, photographer)
    expect(Object.keys(notes).length).toBe(80)
    const sequences = Object.values(notes).map(({ by }) => by.sequence)
    expect(new Set(sequences).size).toBe(80)
    for (const name of ['c', 'a']) {
      const own = outbox(name).map(({ id }) => notes[id]!.by.sequence)
      expect(own).toEqual([...own].sort((one, other) => one - other))
    }
  })

  it('are limited in pace a seat, in words that say to wait', async () => {
    const relay = await openRelay({ NOTES_PER_MINUTE: 3 })
    const { client, photographer } = await relay.crew()
    expect(await outcomes(relay, client, ...['a', 'b', 'c', 'd'].map((id) => note(id)))).toEqual(['ok', 'ok', 'ok', 'too-fast'])
    expect(await outcomes(relay, photographer, note('e'))).toEqual(['ok'])
    expect((await relay.post(`/s/${client.seatId}/notes`, { commands: Array.from({ length: 101 }, () => note('x')) }, bearer(client))).status).toBe(400)
  })

  it('stay with their job', async () => {
    const relay = await openRelay()
    const one = await relay.crew()
    const other = await relay.crew()
    await say(relay, one.client, note('n1'))
    expect((await notesOf(relay, other.photographer)).notes).toEqual({})
    expect(await outcomes(relay, other.client, { do: 'note.reply', id: 'r', noteId: 'n1', text: 'x' })).toEqual(['no-such-note'])
  })

  it('are refused, and not shown, while nothing can be kept; sent again they are there once', async () => {
    const store = new SqliteStore(join(folder, 'full.db'))
    const relay = await openRelay({ PROBE_MS: 20 }, store)
    const { client, photographer } = await relay.crew()
    const watching = await rawJoin(relay, photographer, 'notes')
    await watching.document()
    store.limitBytes(1)
    const long = note('n1', 'x'.repeat(2_000))
    let answers: string[] = []
    for (let index = 0; index < 60 && !answers.includes('not-kept'); index++) answers = await outcomes(relay, client, { ...long, id: `n${index}` })
    expect(answers).toEqual(['not-kept'])
    const shown = Object.keys((await notesOf(relay, photographer)).notes).length
    expect(watching.heard.filter(({ kind }) => kind === 'change').length).toBe(shown)
    store.limitBytes(null)
    for (let patience = 0; patience < 200 && answers[0] !== 'ok'; patience++) {
      await new Promise((resolve) => setTimeout(resolve, 20))
      answers = await outcomes(relay, client, { ...long, id: 'again' })
    }
    expect(Object.keys((await notesOf(relay, photographer)).notes).filter((id) => id === 'again')).toEqual(['again'])
  })

  it('are written when nobody is on the notes, and the room closes after', async () => {
    const relay = await openRelay({ ROOM_IDLE_MS: 0 })
    const { client } = await relay.crew()
    for (let count = 0; count < 20; count++) {
      expect(await outcomes(relay, client, note(`n${count}`))).toEqual(['ok'])
      await new Promise((resolve) => setTimeout(resolve, count % 3))
    }
    expect(Object.keys((await notesOf(relay, client)).notes).length).toBe(20)
  })
})

describe('votes', () => {
  const ballot = { do: 'ballot.open', id: 'b1', lookIds: ['dusk', 'dawn'], question: 'Which one?' }
  const vote = (id: string, lookId: string | null, why: string) => ({ do: 'ballot.vote', id, ballotId: 'b1', lookId, why })
  /** What no sync may carry before the opening. */
  const SECRETS = ['secret-of-pell', 'secret-of-tobin', 'second-thought']

  it('are withheld from everybody until opened: by sync, by news, in the log; only who has voted is seen', async () => {
    const relay = await openRelay()
    const { jobId, photographer, assistant, client } = await relay.crew()
    const watching = await rawJoin(relay, photographer, 'notes')
    await watching.document()
    await say(relay, photographer, ballot)
    expect(await outcomes(relay, client, vote('v1', 'dusk', 'secret-of-pell'), vote('v3', 'dawn', 'second-thought'))).toEqual(['ok', 'ok'])
    expect(await outcomes(relay, assistant, vote('v2', null, 'secret-of-tobin'))).toEqual(['ok'])
    const sent = watching.heard.flatMap((heard) => (heard.kind === 'change' || heard.kind === 'answer' ? [heard.update] : []))
    for (const seated of [photographer, assistant, client]) sent.push(Y.encodeStateAsUpdate(await notesDocOf(relay, seated)))
    sent.push(...(await relay.store.readDocument({ jobId, document: 'notes' })).updates)
    for (const secret of SECRETS) {
      expect(sent.some((bytes) => Buffer.from(bytes).includes(secret))).toBe(false)
      expect(relay.logLines.join('\n')).not.toContain(secret)
    }
    const before = (await notesOf(relay, photographer)).ballots['b1']!
    expect([before.opened, before.voters.map(({ name }) => name)]).toEqual([null, ['Pell', 'Tobin']])

    expect(await outcomes(relay, client, { do: 'ballot.reveal', id: 'o0', ballotId: 'b1' })).toEqual(['only-author'])
    expect(await outcomes(relay, photographer, { do: 'ballot.reveal', id: 'o1', ballotId: 'b1' })).toEqual(['ok'])
    const { opened } = (await notesOf(relay, client)).ballots['b1']!
    expect(opened!.votes.map(({ lookId, why, by }) => [by.name, lookId, why])).toEqual([
      ['Pell', 'dawn', 'second-thought'], ['Tobin', null, 'secret-of-tobin'],
    ])
    expect(await outcomes(relay, client, vote('v4', 'dusk', 'too late'))).toEqual(['votes-open'])
    expect(await outcomes(relay, photographer, { do: 'ballot.reveal', id: 'o1', ballotId: 'b1' })).toEqual(['ok'])
  })

  it('count the last of a seat, whichever of them arrives again', async () => {
    const relay = await openRelay()
    const { photographer, client } = await relay.crew()
    await say(relay, photographer, ballot)
    await say(relay, client, vote('v1', 'dusk', ''), vote('v2', 'dawn', ''), vote('v1', 'dusk', ''))
    expect(await outcomes(relay, client, vote('v9', 'noon', ''), { ...vote('v8', 'dusk', ''), ballotId: 'nowhere' })).toEqual(['not-on-ballot', 'no-such-ballot'])
    await say(relay, photographer, { do: 'ballot.reveal', id: 'o1', ballotId: 'b1' })
    const { votes } = (await notesOf(relay, client)).ballots['b1']!.opened!
    expect(votes.map(({ lookId }) => lookId)).toEqual(['dawn'])
  })
})

describe('that one', () => {
  it('keeps the plan as it was at that instant, whatever happens to it after', async () => {
    const relay = await openRelay()
    const { client, photographer } = await demoCrew(relay)
    const command = { do: 'that-one', id: 't1', lookId: demoLookId, words: 'there!', planHashSeen: null }
    expect(await outcomes(relay, client, command, { ...command, id: 't2', lookId: 'nowhere' }, { ...command, id: 't3', planHashSeen: '0'.repeat(64) })).toEqual(['ok', 'no-such-look', 'ok'])
    const { thatOnes } = await notesOf(relay, photographer)
    expect([thatOnes['t1']?.asSeen, thatOnes['t3']?.asSeen]).toEqual([null, false])
    const response = await fetch(`${relay.origin}/s/${client.seatId}/kept/${thatOnes['t1']!.planHash}`, { headers: bearer(client) })
    const { demoPlan } = await import('../../shared-core/plan/demo/demoPlan.ts')
    expect(await response.json()).toEqual(JSON.parse(JSON.stringify(demoPlan)))
  })
})

describe('kept things', () => {
  // Signatures: PNG specification 5.2; JPEG ITU-T T.81; WebP RFC 9649.
  const png = Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 1, 2, 3])
  const attach = (relay: { origin: string }, seated: { seatId: string; secret: string }, bytes: Uint8Array, type: string) =>
    fetch(`${relay.origin}/s/${seated.seatId}/kept`, {
      method: 'POST', body: Buffer.from(bytes), headers: { 'content-type': type, authorization: `Bearer ${seated.secret}` },
    })

  it('come back byte for byte to the job alone, never to be run', async () => {
    const relay = await openRelay()
    const one = await relay.crew()
    const other = await relay.crew()
    const posted = await attach(relay, one.client, png, 'image/png')
    expect(posted.status).toBe(201)
    const { hash } = (await posted.json()) as { hash: string }
    const address = (seated: { seatId: string }) => `${relay.origin}/s/${seated.seatId}/kept/${hash}`
    const got = await fetch(address(one.photographer), { headers: bearer(one.photographer) })
    expect(new Uint8Array(await got.arrayBuffer())).toEqual(png)
    expect([got.headers.get('content-type'), got.headers.get('x-content-type-options')]).toEqual(['image/png', 'nosniff'])
    expect(got.headers.get('content-security-policy')).toContain("default-src 'none'")
    expect((await fetch(address(other.client), { headers: bearer(other.client) })).status).toBe(404)
    expect((await fetch(address(one.client))).status).toBe(401)
    expect((await fetch(address(one.client), { headers: bearer(other.client) })).status).toBe(401)
  })

  it('are pictures by their own bytes, within size, pace and what the job may keep', async () => {
    const relay = await openRelay({ MAX_ATTACHMENT_BYTES: 1_000, ATTACHMENTS_PER_MINUTE: 9, MAX_KEPT_BYTES: 100_000 })
    const { client } = await relay.crew()
    const status = async (bytes: Uint8Array, type: string) => (await attach(relay, client, bytes, type)).status
    const text = new TextEncoder()
    expect(await status(text.encode('<svg onload="x">'), 'image/svg+xml')).toBe(415)
    expect(await status(text.encode('<html>'), 'image/png')).toBe(415)
    expect(await status(png, 'text/html')).toBe(415)
    expect(await status(png, 'image/jpeg')).toBe(415)
    expect(await status(Uint8Array.from([0xff, 0xd8, 0xff, 0xe0]), 'image/jpeg')).toBe(201)
    expect(await status(Uint8Array.from([...text.encode('RIFF'), 1, 0, 0, 0, ...text.encode('WEBP')]), 'image/webp')).toBe(201)
    expect(await status(Uint8Array.from([...png, ...new Uint8Array(1_000)]), 'image/png')).toBe(413)
    expect(await status(png, 'image/png')).toBe(201)
    expect(await status(png, 'image/png')).toBe(201)
    expect(await status(png, 'image/png')).toBe(429)
  })

  it('are refused past what a job may keep', async () => {
    const relay = await openRelay({ MAX_KEPT_BYTES: 15 })
    const { client } = await relay.crew()
    expect((await attach(relay, client, png, 'image/png')).status).toBe(201)
    expect((await attach(relay, client, png, 'image/png')).status).toBe(201)
    expect((await attach(relay, client, Uint8Array.from([...png, 4]), 'image/png')).status).toBe(409)
  })

  it('must be there before a screen check names one', async () => {
    const relay = await openRelay()
    const { client } = await relay.crew()
    const { hash } = (await (await attach(relay, client, png, 'image/png')).json()) as { hash: string }
    const check = (id: string, swatchPhotoHash: string) => ({
      do: 'screen-check', id,
      result: { neutralSurround: true, darkStepsSeen: 9, lightStepsSeen: 11, hueOrder: [], nightTint: false, tooDim: false, swatchPhotoHash, screenWords: '' },
    })
    expect(await outcomes(relay, client, check('c1', hash), check('c2', '0'.repeat(64)))).toEqual(['ok', 'no-such-picture'])
  })
})

it('a withdrawn link ends notes, kept things and live notes at once', async () => {
  const relay = await openRelay()
  const { client, photographer } = await relay.crew()
  const looking = new RawPeer(socketUrl(relay, client.seatId, 'notes'), bearer(client))
  await looking.opened
  await relay.post(`/s/${photographer.seatId}/links`, { action: 'revoke', role: 'client' }, bearer(photographer))
  expect((await looking.closed).code).toBe(4410)
  expect((await relay.post(`/s/${client.seatId}/notes`, { commands: [note('n1')] }, bearer(client))).status).toBe(403)
  expect((await fetch(`${relay.origin}/s/${client.seatId}/kept/${'0'.repeat(64)}`, { headers: bearer(client) })).status).toBe(403)
})
