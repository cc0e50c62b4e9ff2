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

/** Two relays that write to one document at once take turns; more turns lost than this is a fault. */
const MOST_TURNS = 20

/**
 * Decides, applies and keeps one write of the relay's own, and tells whoever asked for it. Should another relay have
 * written meanwhile, it is decided anew on what that left.
 *
 * @param goBack brings the document back to what is kept
 * @returns what is news to everybody, kept by now; null when there is none.
 */
export async function serveOwnWrite(
  document: SharedDocument, write: OwnWrite, health: StoreHealth, goBack: () => Promise<void>,
): Promise<Uint8Array | null> {
  try {
    for (let turn = 1; ; turn++) {
      if (health.notKept !== null) throw new StoreError('other', 'edits are not kept at the moment')
      const change = await write.decide(document.content)
      const outcome = change === null ? null : await keep(document, change, health, goBack)
      if (outcome === 'conflict' && turn < MOST_TURNS) continue
      if (outcome === 'conflict') throw new StoreError('conflict', 'other relays were faster each time')
      write.resolve()
      return outcome
    }
  } catch (thrown) {
    write.reject(thrown)
    return null
  }
}

async function keep(
  document: SharedDocument, change: (doc: Y.Doc) => void, health: StoreHealth, goBack: () => Promise<void>,
): Promise<Uint8Array | null | 'conflict'> {
  try {
    const news = document.change(change)
    if (news !== null) await document.keep(news, true)
    return news
  } catch (thrown) {
    const isConflict = thrown instanceof StoreError && thrown.trouble === 'conflict'
    if (thrown instanceof StoreError && !isConflict) health.failed(asStoreError(thrown))
    await goBack()
    if (isConflict) return 'conflict'
    throw thrown
  }
}
