/** What the relay said when it did not take something: y-protocols' permissionDenied with the text `code: words`. */
export interface Refusal {
  readonly code: string
  readonly words: string
}

/** Parts the relay's text; a text of another form is all words. */
export function readRefusal(text: string): Refusal {
  const parts = /^([a-z][a-z-]*): (.+)$/s.exec(text)
  return { code: parts?.[1] ?? 'refused', words: parts?.[2] ?? (text === '' ? 'The relay did not take this change.' : text) }
}

/**
 * What a refusal means for the copy here. `not-kept` passes by itself: the relay asks for the change again, so it stays.
 * Presence is not the plan. Everything else will be refused for ever, so the copy here must go back to the relay's.
 */
export function meaningOf({ code }: Refusal): 'start-over' | 'keep-waiting' | 'only-words' {
  if (code === 'not-kept') return 'keep-waiting'
  return code === 'presence-too-large' ? 'only-words' : 'start-over'
}
