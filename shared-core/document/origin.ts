/** Where a change of the shared document came from. */
export type Origin =
  /** A person at this device. */
  | { readonly by: 'person'; readonly seatId: string }
  /** The same person, taking back or bringing back a change. */
  | { readonly by: 'undo'; readonly seatId: string }
  /** Others' changes, as the relay passed them on. */
  | { readonly by: 'relay' }
  /** The local copy, the store, a file or the demo job. */
  | { readonly by: 'load' }

/** Whether a transaction's origin, which may be anything at all, is a change this seat's person made by an edit. */
export function isEditOf(origin: unknown, seatId: string): boolean {
  return isOrigin(origin) && origin.by === 'person' && origin.seatId === seatId
}

function isOrigin(value: unknown): value is Origin {
  return typeof value === 'object' && value !== null && 'by' in value
}
