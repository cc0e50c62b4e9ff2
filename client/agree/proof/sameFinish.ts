import { formatStops } from '../../../shared-core/plan/entry/stops.ts'
import type { Finish } from '../../../shared-core/plan/schema/look.ts'
import type { Plan } from '../../../shared-core/plan/schema/plan.ts'

/** The plan with one look finished as another is, so that two pictures differ by light and camera alone. */
export function finishedAs(plan: Plan, lookId: string, finishOfLookId: string): Plan {
  const [look, model] = [plan.looks[lookId], plan.looks[finishOfLookId]]
  if (look === undefined || model === undefined || look === model) return plan
  return { ...plan, looks: { ...plan.looks, [lookId]: { ...look, finish: model.finish } } }
}

/** Whether any of these looks is finished otherwise than the first of them. */
export function finishesDiffer(plan: Plan, lookIds: readonly string[]): boolean {
  const finishes = lookIds.flatMap((id) => plan.looks[id]?.finish ?? [])
  return finishes.some((finish) => finish !== finishes[0] && finishWords(finish) !== finishWords(finishes[0]!))
}

/** "exposure +0.3, contrast −10 %"; "as shot" where nothing is done after capture. */
export function finishWords({ exposureStops, contrast, whitePointStops, blackPoint }: Finish): string {
  const said = [
    exposureStops !== 0 && `exposure ${formatStops(exposureStops, 2)}`,
    contrast !== 0 && `contrast ${contrast > 0 ? '+' : '−'}${Math.round(Math.abs(contrast) * 100)} %`,
    whitePointStops !== 0 && `white point pulled by ${whitePointStops.toFixed(2)}`,
    blackPoint !== 0 && `black point ${(blackPoint * 100).toFixed(1)} %`,
  ].filter((words) => words !== false)
  return said.length === 0 ? 'as shot' : said.join(', ')
}
