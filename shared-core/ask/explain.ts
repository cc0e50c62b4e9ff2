import { capital } from '../plan/capital.ts'
import type { Look } from '../plan/schema/look.ts'
import type { Plan } from '../plan/schema/plan.ts'
import type { Prediction } from '../predict/prediction.ts'
import { changeWords } from './changeWords.ts'
import { effectWords } from './effectWords.ts'

const MOST_CHANGES_TOLD = 3

/**
 * One line of what an edit did to a look: "A 40 cm nearer: +0.9 on the camera-left cheek, +0.1 on the background,
 * softer". Null when nothing was changed that light or lens knows of.
 * @param before prediction of the look in `planBefore`
 * @param after prediction of the look in `planAfter`
 */
export function explain(planBefore: Plan, planAfter: Plan, lookId: string, before: Prediction, after: Prediction): string | null {
  const changes = changeWords(planBefore, planAfter, lookId)
  if (changes.length === 0) return null
  const more = changes.length - MOST_CHANGES_TOLD
  const told = changes.slice(0, MOST_CHANGES_TOLD).join('; ') + (more > 0 ? ` and ${more} more` : '')
  const effects = [...effectWords(before, after), ...shineWords(planBefore.looks[lookId]!, planAfter.looks[lookId]!)]
  // An f-number is written small even where a line begins.
  const begun = told.startsWith('f/') ? told : capital(told)
  return `${begun}: ${effects.length === 0 ? 'no visible change' : effects.join(', ')}`
}

/** Shine is read by no meter, and shows in few of the areas. */
function shineWords({ subject: was }: Look, { subject: is }: Look): readonly string[] {
  return was.skinSheen === is.skinSheen ? [] : [`${is.skinSheen > was.skinSheen ? 'more' : 'less'} shine on the skin`]
}
