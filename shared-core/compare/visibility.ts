import type { FrameDifference } from './shownLook.ts'

export type Visibility = 'visible' | 'just-visible' | 'not-visible'

/**
 * Steps of CIEDE2000: below 1 nobody sees a difference side by side, below 2 only who looks for it (from memory; after
 * Mokrzycki and Tatol 2011).
 */
const SEEN_BY_WHO_LOOKS = 1
const SEEN = 2

export function visibilityOf({ greatest }: FrameDifference): Visibility {
  return greatest >= SEEN ? 'visible' : greatest >= SEEN_BY_WHO_LOOKS ? 'just-visible' : 'not-visible'
}

export const VISIBILITY_WORDS: Readonly<Record<Visibility, string>> = {
  'visible': 'visible', 'just-visible': 'just visible', 'not-visible': 'not visible',
}

export interface AskingAgain {
  readonly isNeeded: boolean
  /** "The picture has moved by 3.4 visible steps, 2 were agreed: the client has to be asked again" */
  readonly words: string
}

/**
 * Whether who said yes has to be asked again: where some part of the picture has moved by more visible colour steps
 * (CIEDE2000) than the photographer said would do without.
 * @param limitSteps 0.5-20
 */
export function askAgain(all: FrameDifference, limitSteps: number): AskingAgain {
  const moved = steps(all.greatest)
  const isNeeded = all.greatest > limitSteps
  if (isNeeded) return { isNeeded, words: `The picture has moved by ${moved}; ${steps(limitSteps)} may pass without asking. The client has to be asked again` }
  if (visibilityOf(all) === 'not-visible') return { isNeeded, words: 'Nothing of the picture has visibly moved' }
  return { isNeeded, words: `The picture has moved by ${moved}, within the ${steps(limitSteps)} that may pass without asking` }
}

/** The same to who is asked for a yes, without a number; @param hasSaidYes says too whether they are asked again. */
export function askAgainPlainly(all: FrameDifference, limitSteps: number, hasSaidYes: boolean): AskingAgain {
  const isNeeded = all.greatest > limitSteps
  const asking = !hasSaidYes ? '' : isNeeded ? '. You will be asked again' : '. You will not be asked again'
  return { isNeeded, words: `${changedWords(visibilityOf(all), isNeeded)}${asking}` }
}

function changedWords(visibility: Visibility, isPastAgreed: boolean): string {
  if (isPastAgreed) return 'The picture has changed by more than was agreed'
  if (visibility === 'not-visible') return 'No visible change'
  return `The picture has changed ${visibility === 'visible' ? 'visibly' : 'a little'}, within what was agreed`
}

function steps(count: number): string {
  const rounded = Math.round(count * 10) / 10
  return `${rounded} visible ${rounded === 1 ? 'step' : 'steps'}`
}
