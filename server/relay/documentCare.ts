import type { Log } from '../log.ts'
import type { DocumentKey } from '../store/store.ts'
import { asStoreError, StoreError } from '../store/storeError.ts'
import type { RelayLimits } from './limits.ts'
import type { SharedDocument } from './sharedDocument.ts'
import type { StoreHealth } from './storeHealth.ts'

/**
 * Back to what is kept. While a database is out of reach that has to wait: the document stays stale, and nothing of it
 * may be shown until then.
 *
 * @returns what others kept meanwhile, for everybody here; null when nothing.
 * @throws StoreError when what is kept cannot be read at all
 */
export async function goBack(document: SharedDocument, health: StoreHealth): Promise<Uint8Array | null> {
  try {
    return await document.reload()
  } catch (thrown) {
    if (!(thrown instanceof StoreError) || thrown.trouble !== 'unreachable') throw thrown
    health.failed(thrown)
    return null
  }
}

/** Takes in what other relays kept. @returns what of it is news to everybody here; null when nothing. */
export async function readOn(document: SharedDocument, health: StoreHealth): Promise<Uint8Array | null> {
  try {
    return await document.readOn()
  } catch (thrown) {
    health.failed(asStoreError(thrown))
    return null
  }
}

/**
 * Brings a plan of an older version up to today's, before anybody is shown it. A store that takes nothing just now leaves
 * it as it was, and the next opening tries again; another relay that does the same at the same moment has done it.
 */
export async function bringUp(document: SharedDocument, health: StoreHealth): Promise<void> {
  const news = await document.bringUp()
  if (news === null) return
  try {
    await document.keep(news, true)
  } catch (thrown) {
    const error = asStoreError(thrown)
    if (error.trouble !== 'conflict') health.failed(error)
    await goBack(document, health)
  }
}

/** Folds the log. One that cannot be folded is only longer: the next time will do. */
export async function fold(document: SharedDocument, key: DocumentKey, log: Log): Promise<void> {
  try {
    await document.compact()
  } catch (thrown) {
    log.warn('document not compacted', { ...key, detail: asStoreError(thrown).message })
  }
}

/** Whether it may grow no more, even folded. */
export async function isFull(
  document: SharedDocument, key: DocumentKey, { limits, log }: { readonly limits: RelayLimits; readonly log: Log },
): Promise<boolean> {
  if (document.bytes > limits.documentBytes) await fold(document, key, log)
  return document.bytes > limits.documentBytes
}
