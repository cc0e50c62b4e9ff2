import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { createPredictor, type Predictor } from '../../shared-core/predict/predict.ts'
import type { Prediction } from '../../shared-core/predict/prediction.ts'

/**
 * Predicts each look once, for checks that ask again and again for the same sheets on the same light. Equal looks of plans
 * that share everything else are one look: an edit keeps the branches it does not touch.
 */
export function rememberingPredictor(): Predictor {
  const predict = createPredictor()
  const known = new Map<string, Prediction>()
  const numbers = new WeakMap<object, number>()
  let count = 0
  const identity = (branch: unknown): unknown => {
    if (typeof branch !== 'object' || branch === null) return branch
    if (!numbers.has(branch)) numbers.set(branch, count++)
    return numbers.get(branch)
  }
  const rest = ({ looks: _, ...others }: Plan): unknown => Object.entries(others).map(([name, branch]) => [name, identity(branch)])
  return (plan, lookId) => {
    const key = JSON.stringify([lookId, plan.looks[lookId], rest(plan)])
    const found = known.get(key) ?? predict(plan, lookId)
    known.set(key, found)
    return found
  }
}
