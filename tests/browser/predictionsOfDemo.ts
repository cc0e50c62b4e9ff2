import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { predict } from '../../shared-core/predict/predict.ts'

/** Every look of the demo job predicted, as JSON: numbers print so that equal text means equal bits. */
export function predictionsOfDemo(): string {
  return JSON.stringify(Object.keys(demoPlan.looks).map((lookId) => predict(demoPlan, lookId)))
}

Object.assign(globalThis, { predictionsOfDemo })
