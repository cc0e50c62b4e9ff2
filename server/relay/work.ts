import { StoreError } from '../store/storeError.ts'
import type { Connection } from './connection.ts'
import type { OwnWrite } from './ownWrite.ts'
import type { Refusal } from './refusals.ts'
import { isUpdate } from './updates.ts'

/** What waits in a room to be served. */
export interface Change {
  readonly kind: 'change'
  readonly connection: Connection
  readonly update: Uint8Array
  readonly isAnswer: boolean
}

export type Work =
  | Change
  | { readonly kind: 'ask'; readonly connection: Connection; readonly stateVector: Uint8Array }
  /** Ask one, or everybody who may write, for what the relay does not have. */
  | { readonly kind: 'catchUp'; readonly connection: Connection | null }
  /** Nobody says anything just now. */
  | { readonly kind: 'rest' }
  /** Another relay may have kept updates up to that sequence. */
  | { readonly kind: 'readOn'; readonly sequence: number }
  | OwnWrite

/**
 * Whether what other relays kept must be read before this is served: at news of it; before an answer to one who may come
 * from another relay; before a write that is decided by what the document holds.
 */
export function wantsReading(item: Work, lastSequence: number): boolean {
  return item.kind === 'ask' || item.kind === 'own' || (item.kind === 'readOn' && item.sequence > lastSequence)
}

/** The changes that may be applied. Senders of the others are told, once each. */
export function sift(work: readonly Work[], refusalOf: (connection: Connection) => Refusal | null): Change[] {
  const refused = new Map<Connection, Refusal>()
  const changes = work.filter((item): item is Change => {
    if (item.kind !== 'change') return false
    const refusal = refusalOf(item.connection)
    if (refusal !== null) refused.set(item.connection, refusal)
    else if (!isUpdate(item.update)) item.connection.close('badFrame')
    else return true
    return false
  })
  for (const [connection, refusal] of refused) connection.refuse(refusal)
  return changes
}

/** Tells the senders of these changes that they were not taken, each once. */
export function refuseAll(changes: readonly Change[], refusal: Refusal): void {
  for (const connection of new Set(changes.map((change) => change.connection))) connection.refuse(refusal)
}

/** Nobody will serve these any more; those already served do not feel it. */
export function rejectOwn(work: readonly Work[]): void {
  for (const item of work) if (item.kind === 'own') item.reject(new StoreError('closed', 'the room was closed'))
}
