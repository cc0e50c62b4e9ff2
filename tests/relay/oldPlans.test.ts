import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import * as Y from 'yjs'
import { planRoot } from '../../shared-core/document/planRoot.ts'
import { SCHEMA_VERSION } from '../../shared-core/plan/schema/plan.ts'
import { MemoryStore } from '../../server/store/memoryStore.ts'
import type { DocumentKey } from '../../server/store/store.ts'
import { openRelay, type Seated, type TestRelay } from './openRelay.ts'
import { stockJoin } from './stockClient.ts'

const bearer = (seated: Seated) => ({ authorization: `Bearer ${seated.secret}` })
const oldPlan = readFileSync(new URL('../frozen-plans/version-1-late-harvest.ydoc', import.meta.url))

const docOf = (updates: readonly Uint8Array[]): Y.Doc => {
  const doc = new Y.Doc()
  for (const update of updates) Y.applyUpdate(doc, update)
  return doc
}

async function seatAt(relay: TestRelay, update: Uint8Array) {
  const { jobId, keys } = await relay.access.createJob([{ document: 'plan', update }])
  return { key: { jobId, document: 'plan' } as DocumentKey, seated: await relay.seat(jobId, keys.photographer, 'Ines') }
}

it('a plan of an older version is brought up before anybody sees it, once, and kept', async () => {
  const store = new MemoryStore()
  const relay = await openRelay({}, store)
  expect(planRoot(docOf([oldPlan])).get('schemaVersion')).toBe(1)
  const { key, seated } = await seatAt(relay, oldPlan)
  const { doc } = await stockJoin(relay, seated.seatId, bearer(seated))
  expect(planRoot(doc).get('schemaVersion')).toBe(SCHEMA_VERSION)
  const kept = await store.readDocument(key)
  expect(planRoot(docOf(kept.updates)).toJSON()).toEqual(planRoot(doc).toJSON())

  // Opened again by a relay that finds it brought up already, it is left alone.
  const laterStore = new MemoryStore()
  const later = await openRelay({}, laterStore)
  const again = await seatAt(later, Y.mergeUpdates([...kept.updates]))
  const before = (await laterStore.readDocument(again.key)).lastSequence
  await stockJoin(later, again.seated.seatId, bearer(again.seated))
  expect((await laterStore.readDocument(again.key)).lastSequence).toBe(before)
})

it.each([['of a newer version', SCHEMA_VERSION + 1], ['that no step can read', 1]])('a plan %s is left as it is, and opens', async (_, version) => {
  const odd = new Y.Doc()
  planRoot(odd).set('schemaVersion', version)
  planRoot(odd).set('looks', 'not looks at all')
  const store = new MemoryStore()
  const relay = await openRelay({}, store)
  const { seated } = await seatAt(relay, Y.encodeStateAsUpdate(odd))
  const { doc } = await stockJoin(relay, seated.seatId, bearer(seated))
  expect(planRoot(doc).get('looks')).toBe('not looks at all')
  if (version > SCHEMA_VERSION) expect(planRoot(doc).get('schemaVersion')).toBe(version)
})
