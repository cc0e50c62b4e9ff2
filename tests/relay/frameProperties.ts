import fc from 'fast-check'
import * as encoding from 'lib0/encoding'
import * as syncProtocol from 'y-protocols/sync'
import * as Y from 'yjs'
import { readFrame } from '../../server/relay/frames.ts'
import { Presence } from '../../server/relay/presence.ts'
import { isPlainUpdate } from '../../server/relay/plainUpdate.ts'
import { SharedDocument } from '../../server/relay/sharedDocument.ts'
import { isUpdate } from '../../server/relay/updates.ts'
import { MemoryStore } from '../../server/store/memoryStore.ts'
import { presenceMessage, syncMessage } from './rawPeer.ts'

const KEY = { jobId: 'job', document: 'plan' } as const
const seat = { seatId: 's', jobId: 'job', linkId: 'l', role: 'assistant', name: 'Tobin', expiresMs: Infinity } as const

/** How often what was sent got how far: a fuzz run that never gets past the first byte shows nothing. */
export interface Reached {
  frames: number
  updates: number
  applied: number
  broke: number
  presences: number
  slowestMs: number
}

export const nothingReached = (): Reached => ({ frames: 0, updates: 0, applied: 0, broke: 0, presences: 0, slowestMs: 0 })

/** Small documents of every kind of content that Yjs knows, as the updates their clients would send. */
const update = fc.array(fc.tuple(fc.nat(6), fc.nat(3), fc.jsonValue({ maxDepth: 2 })), { minLength: 1, maxLength: 12 }).map((steps) => {
  const doc = new Y.Doc()
  doc.clientID = 1 + steps.length
  for (const [kind, key, value] of steps) {
    const map = doc.getMap('m')
    const name = `k${key}`
    if (kind === 0) map.set(name, value)
    if (kind === 1) map.set(name, new Y.Map())
    if (kind === 2) doc.getText('t').insert(0, JSON.stringify(value).slice(0, 30))
    if (kind === 3) doc.getArray('a').push([value])
    if (kind === 4) map.delete(name)
    if (kind === 5) map.set(name, new Y.XmlElement('x'))
    if (kind === 6 && doc.getText('t').length > 1) doc.getText('t').format(0, 1, { bold: true })
  }
  return Y.encodeStateAsUpdate(doc)
})

const presence = fc.array(fc.record({ clientId: fc.nat(), clock: fc.nat(), state: fc.jsonValue({ maxDepth: 2 }) }), { maxLength: 5 })
  .map((entries) => presenceMessage(...entries))

const honest = fc.oneof(
  update.map((bytes) => syncMessage(2, bytes)), update.map((bytes) => syncMessage(1, bytes)), presence,
  update.map((bytes) => syncMessage(0, Y.encodeStateVectorFromUpdate(bytes))), fc.constant(new Uint8Array([3])))

/** An honest message with some of its bytes changed, taken out, put in, or doubled. */
const mutated = fc.tuple(honest, fc.array(fc.tuple(fc.nat(3), fc.nat(), fc.nat(255)), { minLength: 1, maxLength: 6 })).map(([message, changes]) => {
  let bytes = Array.from(message)
  for (const [kind, where, value] of changes) {
    const at = bytes.length === 0 ? 0 : where % bytes.length
    if (kind === 0) bytes[at] = value
    if (kind === 1) bytes.splice(at, 1 + (value % 4))
    if (kind === 2) bytes.splice(at, 0, value)
    if (kind === 3) bytes = [...bytes.slice(0, at), ...bytes.slice(Math.max(0, at - (value % 20))), ...bytes.slice(at)]
  }
  return Uint8Array.from(bytes.slice(0, 5_000))
})

export const anyMessage = fc.oneof({ weight: 1, arbitrary: fc.uint8Array({ maxLength: 400 }) }, { weight: 4, arbitrary: mutated }, { weight: 1, arbitrary: honest })

/**
 * What holds of every message, whatever its bytes: the reader gives a frame or nothing; presence is heard or called
 * malformed; a state vector and an update are taken or thrown out, and after what was thrown out the document is again
 * exactly what is kept. Throws where one of these does not hold.
 */
export async function takeAnyMessage(bytes: Uint8Array, reached: Reached): Promise<void> {
  const startedMs = performance.now()
  const frame = readFrame(bytes)
  if (frame !== null) reached.frames += 1
  if (frame?.kind === 'presence' && new Presence(8_000).hear({ seat }, frame.awarenessUpdate).outcome === 'heard') reached.presences += 1
  if (frame?.kind === 'ask') await ask(frame.stateVector)
  // What passes the quick look must be what Yjs decodes.
  if (frame?.kind === 'change' && isPlainUpdate(frame.update)) Y.decodeUpdate(frame.update)
  if (frame?.kind === 'change' && isUpdate(frame.update)) {
    reached.updates += 1
    await change(frame.update, reached)
  }
  reached.slowestMs = Math.max(reached.slowestMs, performance.now() - startedMs)
}

async function keptDocument(): Promise<SharedDocument> {
  const store = new MemoryStore()
  const doc = new Y.Doc()
  doc.getMap('m').set('kept', 1)
  await store.createJob({ jobId: 'job', createdMs: 0, links: [], documents: [{ document: 'plan', update: Y.encodeStateAsUpdate(doc) }] })
  return SharedDocument.load(KEY, store)
}

async function ask(stateVector: Uint8Array): Promise<void> {
  const document = await keptDocument()
  let answer: Uint8Array
  try {
    answer = document.missingFrom(stateVector)
  } catch {
    return
  }
  if (!isUpdate(answer)) throw new Error('an answer that is no update')
}

async function change(bytes: Uint8Array, reached: Reached): Promise<void> {
  const document = await keptDocument()
  const before = document.content.getMap('m').toJSON()
  try {
    document.apply([bytes])
    reached.applied += 1
  } catch {
    reached.broke += 1
    await document.reload()
    const after = document.content.getMap('m').toJSON()
    if (JSON.stringify(after) !== JSON.stringify(before)) throw new Error('not what is kept after going back to it')
  }
  if (document.content.store.pendingStructs !== null) throw new Error('something unresolved stayed behind')
}

/** The stock protocol's own encoders, whose messages must come out as they went in. */
export const stockMessage = fc.tuple(fc.constantFrom('ask', 'answer', 'update'), update).map(([kind, bytes]) => {
  const doc = new Y.Doc()
  Y.applyUpdate(doc, bytes)
  const encoder = encoding.createEncoder()
  encoding.writeVarUint(encoder, 0)
  if (kind === 'ask') syncProtocol.writeSyncStep1(encoder, doc)
  if (kind === 'answer') syncProtocol.writeSyncStep2(encoder, doc)
  if (kind === 'update') syncProtocol.writeUpdate(encoder, bytes)
  return { kind, bytes, doc, message: encoding.toUint8Array(encoder) }
})
