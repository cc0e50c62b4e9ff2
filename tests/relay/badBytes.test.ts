import fc from 'fast-check'
import { randomBytes } from 'node:crypto'
import { describe, expect, it } from 'vitest'
import * as Y from 'yjs'
import { CLOSE_CODES } from '../../server/relay/closeCodes.ts'
import { readFrame } from '../../server/relay/frames.ts'
import { isUpdate } from '../../server/relay/updates.ts'
import { anyMessage, nothingReached, stockMessage, takeAnyMessage } from './frameProperties.ts'
import { openRelay } from './openRelay.ts'
import { presenceMessage, rawJoin, syncMessage, updateSetting } from './rawPeer.ts'
import { expectUnharmed } from './unharmed.ts'

/**
 * An update of a map with a text and a list in it, as Yjs 13.6 writes it, with one byte changed: it decodes from end to
 * end, and Yjs throws when it puts it into a document.
 */
const BREAKING_UPDATE = Buffer.from(
  '010901002101016d0106012701016d0174020100010101840102026263c4010201030278782762016d03617272000800' +
  '0107017d018101080188010901760101617d01010103000102010903', 'hex')

describe('bytes that are no message', () => {
  it('are taken apart or thrown out, whatever they are, and leave the document as it is kept', async () => {
    const reached = nothingReached()
    await fc.assert(fc.asyncProperty(anyMessage, (bytes) => takeAnyMessage(bytes, reached)), { numRuns: 1_000 })
    // Honest and nearly honest ones among them get all the way: some ten at least of each kind, by chance a few more or less.
    expect(Math.min(reached.frames, reached.updates, reached.applied, reached.presences)).toBeGreaterThan(0)
  })

  it('of the stock protocol come out as they went in', () => {
    fc.assert(fc.property(stockMessage, ({ kind, bytes, doc, message }) => {
      const frame = readFrame(message)
      if (kind === 'ask') expect(frame).toEqual({ kind: 'ask', stateVector: Y.encodeStateVector(doc) })
      if (kind === 'answer') expect(frame).toEqual({ kind: 'change', isAnswer: true, update: Y.encodeStateAsUpdate(doc) })
      if (kind === 'update') expect(frame).toEqual({ kind: 'change', isAnswer: false, update: bytes })
    }), { numRuns: 200 })
  })

  it('of every kind end the connection with the documented code and nobody else’s', async () => {
    const relay = await openRelay()
    const { photographer, assistant, client } = await relay.crew()
    const bystander = await rawJoin(relay, client)
    const good = updateSetting('x', 'y'.repeat(50))
    const bad: Uint8Array[] = [
      new Uint8Array(0), new Uint8Array([9]), new Uint8Array([0, 7]), new Uint8Array([2, 0, 1, 65]), new Uint8Array(64).fill(255),
      randomBytes(3_000).fill(0xff, 0, 10),
      syncMessage(2, randomBytes(500)), syncMessage(2, good.slice(0, good.length - 3)), syncMessage(1, new Uint8Array([1, 255, 255, 255, 255, 7])),
      syncMessage(0, new Uint8Array([200])), new Uint8Array([0, 2, 250, 1]),
      new Uint8Array([1, 200, 1]), presenceMessage({ clientId: 5, clock: 1, state: '{broken' }), presenceMessage({ clientId: 5, clock: 1, state: 7 }),
      presenceMessage({ clientId: 5, clock: 1, state: [] }),
    ]
    for (const bytes of bad) {
      const attacker = await rawJoin(relay, assistant)
      attacker.send(bytes)
      expect({ bytes: Array.from(bytes.slice(0, 8)), code: (await attacker.closed).code })
        .toEqual({ bytes: Array.from(bytes.slice(0, 8)), code: CLOSE_CODES.badFrame.code })
    }
    const text = await rawJoin(relay, assistant)
    text.socket.send('hello')
    expect((await text.closed).code).toBe(CLOSE_CODES.badFrame.code)
    await expectUnharmed(relay, bystander, photographer)
  })

  it('at random, many of them, harm nobody', async () => {
    const relay = await openRelay()
    const { photographer, assistant, client } = await relay.crew()
    const bystander = await rawJoin(relay, client)
    for (let round = 0; round < 40; round++) {
      const attacker = await rawJoin(relay, assistant)
      const noise = randomBytes(1 + Math.floor(Math.random() * 2_000))
      // Half of them claim to be sync updates, so that the noise reaches deeper.
      attacker.send(round % 2 === 0 ? noise : syncMessage(2, noise))
      attacker.socket.close()
      await attacker.closed
    }
    await expectUnharmed(relay, bystander, photographer)
  })

  it('that decode but cannot be put into the document turn out the sender and spoil nothing sent beside them', async () => {
    expect(isUpdate(BREAKING_UPDATE)).toBe(true)
    expect(() => Y.applyUpdate(new Y.Doc(), BREAKING_UPDATE)).toThrow()
    const relay = await openRelay({ MERGE_WINDOW_MS: 500 })
    const { photographer, assistant, client } = await relay.crew()
    const bystander = await rawJoin(relay, client)
    const working = await rawJoin(relay, photographer)
    const attacker = await rawJoin(relay, assistant)
    await attacker.document()
    // The first edit goes out at once and opens the window in which the next two wait together.
    working.send(syncMessage(2, updateSetting('first', 1)))
    const before = bystander.heard.indexOf(await bystander.hear('change'))
    attacker.send(syncMessage(2, BREAKING_UPDATE))
    working.send(syncMessage(2, updateSetting('honest', 1)))
    await bystander.hear('change', () => true, before + 1)
    expect((await attacker.closed).code).toBe(CLOSE_CODES.badFrame.code)
    expect((await bystander.document()).getMap('m').toJSON()).toEqual({ first: 1, honest: 1 })
  })
})
