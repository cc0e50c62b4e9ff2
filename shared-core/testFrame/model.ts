import type { CameraRgb } from '../colour/triples.ts'
import type { Plan } from '../plan/schema/plan.ts'
import { createPredictor } from '../predict/predict.ts'
import type { Prediction } from '../predict/prediction.ts'
import { areaLightOf, meanChannels, type AreaLight } from './areaLight.ts'
import { slipsOf, type Slip } from './slips.ts'
import { showingOf, type Showing } from './shown.ts'

/** A look as a test frame is held against it: its areas, and every slip tried. Plain data but for numbers in arrays. */
export interface TestFrameModel {
  readonly lookId: string
  readonly areas: readonly ModelArea[]
  readonly lights: readonly { readonly id: string; readonly letter: string }[]
  readonly whiteBalanceKelvin: number
  readonly showing: Showing
  readonly planned: AreaLight
  /** The lens's stray light for each unit of the areas' mean. */
  readonly veilShare: CameraRgb
  readonly slips: readonly Slip[]
}

export interface ModelArea {
  readonly id: string
  readonly label: string
  readonly frameX: number
  readonly frameY: number
}

/** What stands in the Frame and can be compared. */
export function areasToCompare(prediction: Prediction): readonly ModelArea[] {
  return prediction.areas.filter(({ inFrame }) => inFrame).map(({ id, label, frameX, frameY }) => ({ id, label, frameX, frameY }))
}

/**
 * The model of a look, one slip a step; each step says how many there are so far.
 * @throws RangeError when the plan has no such look.
 */
export function* buildTestFrameModel(plan: Plan, lookId: string): Generator<number, TestFrameModel> {
  const predictor = createPredictor()
  const base = predictor(plan, lookId)
  const look = plan.looks[lookId]!
  const areas = areasToCompare(base)
  const lights = base.lights.filter(({ on }) => on).map(({ id, letter }) => ({ id, letter }))
  const [areaIds, lightIds] = [areas.map(({ id }) => id), lights.map(({ id }) => id)]
  const planned = areaLightOf(base, areaIds, lightIds)
  const slips: Slip[] = []
  for (const slip of slipsOf(predictor, plan, lookId, base, areaIds, lightIds)) {
    slips.push(slip)
    yield slips.length
  }
  const mean = meanChannels(planned)
  const { veil } = base.background.haze
  return {
    lookId, areas, lights, planned, slips,
    whiteBalanceKelvin: look.camera.whiteBalanceKelvin,
    showing: showingOf(look.camera.whiteBalanceKelvin, look.finish),
    veilShare: [0, 1, 2].map((k) => (mean[k]! > 0 ? veil[k]! / mean[k]! : 0)) as unknown as CameraRgb,
  }
}

/** The model in one go. @throws RangeError when the plan has no such look. */
export function testFrameModel(plan: Plan, lookId: string): TestFrameModel {
  const steps = buildTestFrameModel(plan, lookId)
  for (;;) {
    const { done, value } = steps.next()
    if (done) return value
  }
}
