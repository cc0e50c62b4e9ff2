/** What a secret link makes of the person who opens it. */
export const ROLES = ['photographer', 'assistant', 'client'] as const
export type Role = (typeof ROLES)[number]

/**
 * The documents of a job. `plan` and `rig` are written together by people; `notes` by the relay alone, so that nobody
 * can speak as another.
 */
export const DOCUMENT_NAMES = ['plan', 'rig', 'notes'] as const
export type DocumentName = (typeof DOCUMENT_NAMES)[number]

/** Narrows an untrusted path segment. */
export function isDocumentName(text: string): text is DocumentName {
  return (DOCUMENT_NAMES as readonly string[]).includes(text)
}
