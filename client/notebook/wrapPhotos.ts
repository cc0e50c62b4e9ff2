import type { HandedPhotograph } from '../../shared-core/notebook/handOver/photographs.ts'
import { fileStem } from '../kit/fileStem.ts'

/** A photograph of a stand at wrap, and where its bytes are had: from the relay, or from this device. */
export interface PhotoToHand {
  readonly standId: string
  readonly address: string
  readonly isWaiting: boolean
}

export interface FetchedPhotograph extends HandedPhotograph {
  /** Null where it could not be had. */
  readonly bytes: Uint8Array | null
}

const PATIENCE_MS = 20_000
const ENDINGS: Readonly<Record<string, string>> = { 'image/png': 'png', 'image/webp': 'webp' }

/**
 * All photographs of a look's stands for the folder, `photographs/<stand>-<n>.jpg`. One that cannot be had stays in the list,
 * with the reason in words: it is named as missing, never left out.
 */
export async function fetchPhotographs(photos: readonly PhotoToHand[], standNames: ReadonlyMap<string, string>): Promise<readonly FetchedPhotograph[]> {
  const counts = new Map<string, number>()
  return Promise.all(photos.map(async ({ standId, address, isWaiting }): Promise<FetchedPhotograph> => {
    const stem = fileStem(standNames.get(standId) ?? 'a stand that is gone')
    const number = (counts.get(stem) ?? 0) + 1
    counts.set(stem, number)
    const named = (ending: string): string => `photographs/${stem}-${number}.${ending}`
    try {
      const response = await fetch(address, { signal: AbortSignal.timeout(PATIENCE_MS) })
      if (response.ok) {
        const blob = await response.blob()
        return { standId, name: named(ENDINGS[blob.type] ?? 'jpg'), missing: null, bytes: new Uint8Array(await blob.arrayBuffer()) }
      }
      return { standId, name: named('jpg'), missing: response.status === 404 ? 'the relay does not keep it any more' : `the relay answered ${response.status}`, bytes: null }
    } catch {
      return { standId, name: named('jpg'), missing: isWaiting ? 'this browser could not read it' : 'it lies with the relay, which did not answer', bytes: null }
    }
  }))
}
