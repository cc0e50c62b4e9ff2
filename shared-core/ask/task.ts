import { createPredictor, type Predictor } from '../predict/predict.ts'
import type { AreaId, Prediction } from '../predict/prediction.ts'
import type { Aim } from './aim.ts'
import { lookOf, type Draft } from './draft.ts'
import type { ClearChannels } from './judge.ts'
import type { CameraRgb } from '../colour/triples.ts'
import type { Plan } from '../plan/schema/plan.ts'

/** What is asked, and the means of trying. */
export class Task {
  private readonly predictClear = createPredictor()

  /**
   * @param aims what is wanted, and what is to be kept
   * @param predictor any that gives what `predict` gives
   */
  constructor(readonly aims: readonly Aim[], private readonly predictor: Predictor) {}

  /** The same means for other aims. */
  withAims(aims: readonly Aim[]): Task {
    return new Task(aims, this.predictor)
  }

  predict({ plan, lookId }: Draft): Prediction {
    return this.predictor(plan, lookId)
  }

  /** The areas that must read true, as the same lights show them without their sheets. */
  clearChannels(draft: Draft): ClearChannels {
    const wanted = new Set(this.aims.flatMap(({ want }): AreaId[] => (want.kind === 'reads-true' ? [want.areaId] : [])))
    if (wanted.size === 0) return new Map()
    const { areas } = this.predictClear(withoutSheets(draft), draft.lookId)
    return new Map(areas.filter(({ id }) => wanted.has(id)).map(({ id, colour }): [AreaId, CameraRgb] => [id, colour.channels]))
  }
}

function withoutSheets(draft: Draft): Plan {
  const look = lookOf(draft)
  const lights = Object.fromEntries(Object.entries(look.lights).map(([id, light]) => [id, { ...light, gelIds: [] }]))
  return { ...draft.plan, looks: { ...draft.plan.looks, [draft.lookId]: { ...look, lights } } }
}
