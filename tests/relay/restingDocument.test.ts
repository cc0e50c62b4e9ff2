import { describe, expect, it } from 'vitest'
import * as Y from 'yjs'
import { SharedDocument } from '../../server/relay/sharedDocument.ts'
import { MemoryStore } from '../../server/store/memoryStore.ts'

const KEY = { jobId: 'job', document: 'plan' } as const
const NOTHING = Y.encodeStateVector(new Y.Doc())

async function documentOf(...edits: readonly ((map: Y.Map<unknown>) => void)[]) {
  const document = await SharedDocument.load(KEY, new MemoryStore())
  const page = new Y.Doc()
  for (const edit of edits) {
    const before = Y.encodeStateVector(page)
    edit(page.getMap('m'))
    const { news } = document.apply([Y.encodeStateAsUpdate(page, before)], true)
    if (news !== null) await document.keep(news)
  }
  return { document, page }
}

function contentOf(update: Uint8Array): unknown {
  const doc = new Y.Doc()
  Y.applyUpdate(doc, update)
  return doc.getMap('m').toJSON()
}

const someEdits = [1, 2, 3].map((value) => (map: Y.Map<unknown>) => void map.set(`k${value % 2}`, value))

describe('a document at rest', () => {
  it('answers as it did: one who has nothing without being built, and one who has some', async () => {
    const { document, page } = await documentOf(...someEdits)
    document.rest()
    expect(document.isBuilt).toBe(false)
    expect(contentOf(document.missingFrom(NOTHING))).toEqual({ k0: 2, k1: 3 })
    expect(Y.decodeStateVector(document.stateVector())).toEqual(Y.decodeStateVector(Y.encodeStateVector(page)))
    expect(document.isBuilt).toBe(false)
    const others = Y.encodeStateVector(page)
    page.getMap('m').set('later', true)
    document.apply([Y.encodeStateAsUpdate(page, others)], true)
    expect(document.isBuilt).toBe(true)
    const reader = new Y.Doc()
    Y.applyUpdate(reader, document.missingFrom(NOTHING))
    expect(reader.getMap('m').toJSON()).toEqual({ k0: 2, k1: 3, later: true })
    expect(Y.encodeStateAsUpdate(new Y.Doc(), document.missingFrom(Y.encodeStateVector(page))).byteLength).toBe(2)
  })

  it('passes on what comes after, and keeps it', async () => {
    const { document, page } = await documentOf(...someEdits)
    document.rest()
    const before = Y.encodeStateVector(page)
    page.getMap('m').set('k0', 'new')
    const update = Y.encodeStateAsUpdate(page, before)
    expect(document.apply([update], true).news).toEqual(update)
    // Said again it is no news.
    expect(document.apply([update]).news).toBeNull()
    expect(contentOf(document.missingFrom(NOTHING))).toEqual({ k0: 'new', k1: 3 })
  })

  it('writes on as the same one after a rest, and as another after it was read anew', async () => {
    const { document } = await documentOf()
    const write = async (value: number) => {
      const news = document.change((doc) => void doc.getMap('m').set('own', value))
      if (news !== null) await document.keep(news)
      return new Set(Y.decodeStateVector(document.stateVector()).keys())
    }
    expect((await write(1)).size).toBe(1)
    document.rest()
    expect((await write(2)).size).toBe(1)
    await document.reload()
    expect((await write(3)).size).toBe(2)
    expect(contentOf(document.missingFrom(NOTHING))).toEqual({ own: 3 })
  })

  it('never is one that takes long to build', async () => {
    const { document } = await documentOf((map) => void map.set('long', 'x'.repeat(20_000)))
    document.rest()
    expect(document.isBuilt).toBe(true)
  })
})
