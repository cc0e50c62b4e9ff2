import { randomBytes } from 'node:crypto'
import { describe, expect, it } from 'vitest'
import * as Y from 'yjs'
import { CLOSE_CODES } from '../../server/relay/closeCodes.ts'
import { refusalText } from '../../server/relay/refusals.ts'
import { openRelay } from './openRelay.ts'
import { presenceMessage, rawJoin, syncMessage, updateSetting } from './rawPeer.ts'
import { expectUnharmed } from './unharmed.ts'
import { until } from './until.ts'

describe('too much', () => {
  it('in one message ends the connection with 1009, others unharmed', async () => {
    const relay = await openRelay({ MAX_MESSAGE_BYTES: 10_000 })
    const { photographer, assistant, client } = await relay.crew()
    const bystander = await rawJoin(relay, client)
    const attacker = await rawJoin(relay, assistant)
    attacker.send(syncMessage(2, updateSetting('x', 'y'.repeat(20_000))))
    expect((await attacker.closed).code).toBe(CLOSE_CODES.tooLarge.code)
    await expectUnharmed(relay, bystander, photographer)
  })

  it('presence is refused in words and not passed on', async () => {
    const relay = await openRelay()
    const { photographer, client } = await relay.crew()
    const bystander = await rawJoin(relay, client)
    const attacker = await rawJoin(relay, photographer)
    attacker.send(presenceMessage({ clientId: 77, clock: 1, state: { big: 'x'.repeat(9_000) } }))
    expect((await attacker.hear('denied')).reason).toBe(refusalText('presence-too-large'))
    attacker.send(presenceMessage({ clientId: 77, clock: 2, state: { small: true } }))
    await bystander.hear('presence', ({ states }) => states.has(77))
    expect(bystander.heard.some((heard) => heard.kind === 'presence' && JSON.stringify([...heard.states]).includes('xxx'))).toBe(false)
  })

  it('for a document is refused in words, and what was there stays', async () => {
    const relay = await openRelay({ MAX_DOCUMENT_BYTES: 20_000 })
    const { photographer } = await relay.crew()
    const peer = await rawJoin(relay, photographer)
    const doc = new Y.Doc()
    doc.on('update', (update: Uint8Array) => peer.send(syncMessage(2, update)))
    for (let count = 0; count < 5; count++) {
      doc.getMap('m').set(`k${count}`, randomBytes(8_000).toString('base64').slice(0, 8_000))
      await peer.document()
    }
    expect((await peer.hear('denied')).reason).toBe(refusalText('document-full'))
    expect([...(await peer.document()).getMap('m').keys()].sort()).toEqual(['k0', 'k1', 'k2'])
  })

  it('at once ends the connection of a flood, others unharmed', async () => {
    const relay = await openRelay({ MESSAGES_PER_SECOND: 10 })
    const { photographer, assistant, client } = await relay.crew()
    const bystander = await rawJoin(relay, client)
    const attacker = await rawJoin(relay, assistant)
    for (let count = 0; count < 400; count++) attacker.send(new Uint8Array([3]))
    expect((await attacker.closed).code).toBe(CLOSE_CODES.tooFast.code)
    await expectUnharmed(relay, bystander, photographer)
  })

  it('waiting for one who never reads drops that one alone', async () => {
    const relay = await openRelay({ MAX_BUFFERED_BYTES: 100_000, BYTES_PER_SECOND: 100_000_000 })
    const { photographer, assistant, client } = await relay.crew()
    const reading = await rawJoin(relay, client)
    const deaf = await rawJoin(relay, assistant)
    deaf.socket.pause()
    const working = await rawJoin(relay, photographer)
    const doc = new Y.Doc()
    doc.on('update', (update: Uint8Array) => working.send(syncMessage(2, update)))
    const isDropped = () => relay.logLines.some((line) => line.includes('"went"') && line.includes(assistant.seatId) && line.includes('slowReader'))
    for (let count = 0; !isDropped() && count < 400; count++) {
      doc.getMap('m').set('big', randomBytes(75_000).toString('base64'))
      await working.document()
    }
    await until(isDropped)
    expect((await reading.document()).getMap('m').get('big')).toBe(doc.getMap('m').get('big'))
  })
})
