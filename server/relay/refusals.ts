/**
 * Why an edit was not taken, told to its sender as y-protocols' permissionDenied with the text `code: words`. The
 * connection stays; presence goes on.
 */
export const REFUSALS = {
  'no-pen': 'You can look and point, but not change the plan until the photographer hands you the pen.',
  'relay-only': 'Notes are written by the relay alone. Use the notes commands.',
  'not-kept': 'The relay cannot keep changes at the moment, so it takes none. Yours will be asked for again.',
  'document-full': 'This document has reached the largest size the relay keeps.',
  'incomplete': 'This change rests on others that never arrived here. Reload to see what is kept.',
  'presence-too-large': 'What you show of yourself to others is too large, so it is not passed on.',
} as const

export type Refusal = keyof typeof REFUSALS

/** The text on the wire. */
export function refusalText(refusal: Refusal): string {
  return `${refusal}: ${REFUSALS[refusal]}`
}
