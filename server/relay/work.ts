import { StoreError } from '../store/storeError.ts'
import type { Connection } from './connection.ts'
import type { OwnWrite } from './ownWrite.ts'
import type { Refusal } from './refusals.ts'

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
  /** Another relay may have kept updates up to that sequence. */
  | { readonly kind: 'readOn'; readonly sequence: number }
  | OwnWrite

/** Tells the senders of these changes that they were not taken, each once. */
export function refuseAll(changes: readonly Change[], refusal: Refusal): void {
  for (const connection of new Set(changes.map((change) => change.connection))) connection.refuse(refusal)
}

/** Nobody will serve these any more; those already served do not feel it. */
export function rejectOwn(work: readonly Work[]): void {
  for (const item of work) if (item.kind === 'own') item.reject(new StoreError('closed', 'the room was closed'))
}
