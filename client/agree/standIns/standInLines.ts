import type { Plan } from '../../../shared-core/plan/schema/plan.ts'
import type { Predictor } from '../../../shared-core/predict/predict.ts'
import type { Prediction } from '../../../shared-core/predict/prediction.ts'
import { standInWords } from './standInWords.ts'
import { variantsOf } from './variants.ts'

/** Of each stand-in by its key: what it shows that the picture beside it does not. */
export type StandInLines = Readonly<Record<string, readonly string[]>>

/** Yields the share done, 0-1. @throws RangeError when the plan has no such look */
export function* standInLines(plan: Plan, lookId: string, predictor: Predictor): Generator<number, StandInLines> {
  const { upper, lower } = variantsOf(plan, lookId)
  const variants = [...upper, ...lower]
  const predictions = new Map<string, Prediction>()
  const lines: Record<string, readonly string[]> = {}
  for (const { key, plan: itsPlan, against, isSheen } of variants) {
    yield predictions.size / variants.length
    const prediction = predictor(itsPlan, lookId)
    predictions.set(key, prediction)
    if (key !== against) lines[key] = standInWords(prediction, predictions.get(against)!, isSheen)
  }
  return lines
}
