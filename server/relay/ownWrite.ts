import type * as Y from 'yjs'
import { asStoreError, StoreError } from '../store/storeError.ts'
import type { SharedDocument } from './sharedDocument.ts'
import type { StoreHealth } from './storeHealth.ts'

/** Looks at the document and says how to change it; null leaves it as it is. Nothing else changes it meanwhile. */
export type DecideWrite = (doc: Y.Doc) => Promise<((doc: Y.Doc) => void) | null>

/** Something the relay itself writes into a document, in its turn among all else that arrives there. */
export interface OwnWrite {
  readonly kind: 'own'
  readonly decide: DecideWrite
  readonly resolve: () => void
  readonly reject: (error: unknown) => void
}

/**
 * Decides, applies and keeps one write of the relay's own, and tells whoever asked for it.
 * @returns what is news to everybody, kept by now; null when there is none.
 */
export async function serveOwnWrite(document: SharedDocument, write: OwnWrite, health: StoreHealth): Promise<Uint8Array | null> {
  try {
    if (health.notKept !== null) throw new StoreError('other', 'edits are not kept at the moment')
    const change = await write.decide(document.content)
    const news = change === null ? null : await keep(document, change, health)
    write.resolve()
    return news
  } catch (thrown) {
    write.reject(thrown)
    return null
  }
}

async function keep(document: SharedDocument, change: (doc: Y.Doc) => void, health: StoreHealth): Promise<Uint8Array | null> {
  let news: Uint8Array | null
  try {
    news = document.change(change)
    if (news !== null) await document.keep(news)
  } catch (thrown) {
    if (thrown instanceof StoreError) health.failed(asStoreError(thrown))
    await document.reload()
    throw thrown
  }
  return news
}
