import { describe, expect, it } from 'vitest'
import * as Y from 'yjs'
import { refusalText } from '../../server/relay/refusals.ts'
import { openRelay } from './openRelay.ts'
import { rawJoin, syncMessage } from './rawPeer.ts'

/** A document of three edits, and each edit as the update a client would send for it. */
function threeEdits() {
  const doc = new Y.Doc()
  const updates: Uint8Array[] = []
  doc.on('update', (update: Uint8Array) => updates.push(update))
  for (const key of ['first', 'second', 'third']) doc.getMap('m').set(key, 1)
  return { doc, updates: updates as [Uint8Array, Uint8Array, Uint8Array] }
}

describe('an edit that rests on one which did not arrive', () => {
  it('is asked for with all it rests on, and nothing is refused while that is on its way', async () => {
    const relay = await openRelay()
    const { photographer } = await relay.crew()
    const peer = await rawJoin(relay, photographer)
    const { doc, updates: [, second, third] } = threeEdits()
    peer.send(syncMessage(2, second))
    peer.send(syncMessage(2, third))
    const { stateVector } = await peer.hear('ask')
    peer.send(syncMessage(2, third))
    expect((await peer.document()).getMap('m').toJSON()).toEqual({})
    peer.send(syncMessage(1, Y.encodeStateAsUpdate(doc, stateVector)))
    expect((await peer.document()).getMap('m').toJSON()).toEqual({ first: 1, second: 1, third: 1 })
    expect(peer.heard.filter(({ kind }) => kind === 'denied')).toEqual([])
  })

  it('is not kept, nor held in memory, and its sender is told when even the answer lacks what it rests on', async () => {
    const relay = await openRelay()
    const { jobId, photographer } = await relay.crew()
    const peer = await rawJoin(relay, photographer)
    const { doc, updates: [first, second] } = threeEdits()
    peer.send(syncMessage(2, second))
    await peer.hear('ask')
    peer.send(syncMessage(1, second))
    expect((await peer.hear('denied')).reason).toBe(refusalText('incomplete'))
    expect((await relay.store.readDocument({ jobId, document: 'plan' })).updates).toEqual([])
    peer.send(syncMessage(2, first))
    expect((await peer.document()).getMap('m').toJSON()).toEqual({ first: 1 })
    peer.send(syncMessage(1, Y.encodeStateAsUpdate(doc)))
    expect((await peer.document()).getMap('m').toJSON()).toEqual({ first: 1, second: 1, third: 1 })
  })
})
