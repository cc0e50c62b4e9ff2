import { WEDGE_STEPS, type ScreenResult } from '../../../shared-core/notes/screenCheck.ts'

/** What is the matter with a screen, as its person would say it, and what to do. */
export interface ScreenFault {
  readonly key: 'too-dim' | 'crushed-blacks' | 'burnt-whites' | 'night-tint' | 'grey-cast' | 'hues-alike' | 'coloured-surround'
  readonly words: string
  readonly remedy: string
}

/** What somebody answered: the result as it is kept, and what only words are made of. */
export interface ScreenAnswers extends Pick<ScreenResult, 'neutralSurround' | 'darkStepsSeen' | 'lightStepsSeen' | 'hueOrder' | 'tooDim'> {
  readonly grey: GreyLook
}

export type GreyLook = 'neutral' | 'yellowish' | 'bluish' | 'greenish' | 'pinkish'

/** Steps at either end that a screen good enough for colour lets one tell apart. Common practice, no source. */
export const ENOUGH_STEPS = 8
/** Neighbours in the row of hues that may change places: their steps are small. Common practice, no source. */
const MOST_SWAPS = 1

/** Everything that is wrong, the worst for judging colour first; empty where nothing is. */
export function screenFaults({ neutralSurround, darkStepsSeen, lightStepsSeen, hueOrder, tooDim, grey }: ScreenAnswers): readonly ScreenFault[] {
  const faults: ScreenFault[] = []
  const missesDark = darkStepsSeen < ENOUGH_STEPS
  if (grey === 'yellowish') {
    faults.push({ key: 'night-tint', words: 'Night tint', remedy: 'Switch off the evening or reading colours of this screen: with them everything looks warmer than it is.' })
  } else if (grey !== 'neutral') {
    faults.push({ key: 'grey-cast', words: `Grey looks ${grey}`, remedy: 'Reset the screen’s colour to its standard setting, or look on another one.' })
  }
  if (tooDim) faults.push({ key: 'too-dim', words: 'Too dim', remedy: 'Turn the screen up, or the room down, until the light patch is as bright as paper.' })
  // A dim screen hides dark steps by itself; only on a bright enough one is it the blacks that are at fault.
  if (missesDark && !tooDim) {
    faults.push({ key: 'crushed-blacks', words: `Crushed blacks: ${darkStepsSeen} of ${WEDGE_STEPS} dark steps`, remedy: 'Deep violets and dark hair will look like black here. Take a high-contrast or film mode off, and light off the glass.' })
  }
  if (lightStepsSeen < ENOUGH_STEPS) {
    faults.push({ key: 'burnt-whites', words: `Burnt whites: ${lightStepsSeen} of ${WEDGE_STEPS} light steps`, remedy: 'A tinted background will look white here. Take the contrast down.' })
  }
  if (swapsIn(hueOrder) > MOST_SWAPS) {
    faults.push({ key: 'hues-alike', words: 'Neighbouring hues look alike', remedy: 'Take filters for colour vision or vivid modes off; if hues still look alike, let somebody else judge them with you.' })
  }
  if (!neutralSurround) faults.push({ key: 'coloured-surround', words: 'Coloured surroundings', remedy: 'Coloured light or a coloured wall beside the screen shifts what is seen: turn from it.' })
  return faults
}

/** How many neighbours would have to change places to put the row right; a patch not put counts as one with each it lacks. */
export function swapsIn(order: readonly number[]): number {
  return order.reduce((sum, patch, at) => sum + order.slice(at + 1).filter((later) => later < patch).length, 0)
}

/** In one line: "Good enough for colour", or what is wrong. */
export function faultWords(faults: readonly ScreenFault[]): string {
  return faults.length === 0 ? 'Good enough to judge colour on' : faults.map(({ words }) => words).join(' · ')
}
