/**
 * Everything that the API can answer in place of what was asked. On the wire: the status, and a body of
 * `{ code, message, details? }` whose message is a sentence for the person.
 */
export const PROBLEMS = {
  'not-found': { status: 404, message: 'There is nothing at this address.' },
  'wrong-method': { status: 405, message: 'This address is not used that way.' },
  'foreign-origin': { status: 403, message: 'Pages of other sites may not ask this.' },
  'not-json': { status: 415, message: 'Send JSON, with the content type application/json.' },
  'bad-json': { status: 400, message: 'That is not JSON.' },
  'bad-request': { status: 400, message: 'The request is not of the form this address takes.' },
  'too-large': { status: 413, message: 'That is larger than this relay takes.' },
  'bad-plan': { status: 422, message: 'The plan cannot be used as it is. Each problem is named with its place.' },
  'wrong-key': { status: 403, message: 'This link opens no job. Check that it was copied whole, or ask for it again.' },
  'too-many-tries': { status: 429, message: 'Too many tries from here. Wait a minute.' },
  'withdrawn': { status: 403, message: 'This link was withdrawn. Ask the photographer for a new one.' },
  'expired': { status: 403, message: 'This link has run out. Ask the photographer for a new one.' },
  'too-many-seats': { status: 409, message: 'This link has seated as many people as it may. Ask the photographer for a new one.' },
  'no-seat': { status: 401, message: 'You have no seat here. Open the link you were given again.' },
  'only-photographer': { status: 403, message: 'Only the photographer can do that.' },
  'no-such-client': { status: 404, message: 'The pen can be handed to a client who is on this job, and there is none such.' },
  'no-such-link': { status: 404, message: 'This job has no such link.' },
  'own-link': { status: 409, message: 'You came in by this link yourself. Make a new one, or withdraw all of its role.' },
  'no-new-jobs': { status: 403, message: 'New jobs cannot be started on this relay.' },
  'no-demo': { status: 404, message: 'The demo job cannot be opened from here.' },
  'not-a-picture': { status: 415, message: 'Only pictures can be attached: PNG, JPEG or WebP.' },
  'full': { status: 409, message: 'This job keeps as much as this relay allows.' },
  'not-kept': { status: 503, message: 'The relay cannot keep anything at the moment. Try again later.' },
  'fault': { status: 500, message: 'The relay met a fault of its own. Try again.' },
} as const

export type ProblemCode = keyof typeof PROBLEMS

/** Thrown by a route to answer with a problem. */
export class Problem extends Error {
  constructor(readonly code: ProblemCode, readonly details: readonly object[] = []) {
    super(PROBLEMS[code].message)
    this.name = 'Problem'
  }
}
