import * as Y from 'yjs'
import { isPlainUpdate } from './plainUpdate.ts'

/** As one; null when there is none. */
export function merged(updates: readonly Uint8Array[]): Uint8Array | null {
  return updates.length > 1 ? Y.mergeUpdates([...updates]) : (updates[0] ?? null)
}

/** Whether the bytes decode as an update throughout. Costs no more than their length, whatever they claim to hold. */
export function isUpdate(bytes: Uint8Array): boolean {
  if (isPlainUpdate(bytes)) return true
  try {
    Y.decodeUpdate(bytes)
    return true
  } catch {
    return false
  }
}

/** Whether it is the update that says nothing: no client, no deletion. Every join sends one. */
export function isEmptyUpdate(update: Uint8Array): boolean {
  return update.length === 2 && update[0] === 0 && update[1] === 0
}
