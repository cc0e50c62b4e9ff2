import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import type { Prediction } from '../../shared-core/predict/prediction.ts'

/** After so many an engine has the prediction's code in machine words; three times as many made no drag smoother. */
const MOVES = 12
/** Nobody is kept waiting at the start: page and first pictures come before. */
const FIRST_AFTER_MS = 900
/** A few milliseconds each with room between, so that whatever a person does comes first. */
const BETWEEN_MS = 20

/**
 * Predicts a light on the move, unseen, while the page is idle, so that a hand's first drag finds the prediction
 * compiled.
 * @param predict one of its own: what the page's remembers of the plan must not be lost
 * @returns how to stop
 */
export function rehearseNumbers(predict: (plan: Plan, lookId: string) => Prediction, plan: Plan, lookId: string): () => void {
  const look = plan.looks[lookId]
  const first = Object.entries(look?.lights ?? {})[0]
  if (look === undefined || first === undefined) return () => undefined
  const [lightId, light] = first
  const withLightMoved = (byMetres: number): Plan => {
    const moved = { ...light, place: { ...light.place, xMetres: light.place.xMetres + byMetres } }
    return { ...plan, looks: { ...plan.looks, [lookId]: { ...look, lights: { ...look.lights, [lightId]: moved } } } }
  }

  let moves = 0
  const once = () => {
    predict(withLightMoved(moves / 500), lookId)
    if (++moves < MOVES) next = setTimeout(once, BETWEEN_MS)
  }
  let next = setTimeout(once, FIRST_AFTER_MS)
  const stop = () => clearTimeout(next)
  // A hand has come: from here on it compiles for itself.
  addEventListener('pointerdown', stop, { capture: true, once: true })
  return stop
}
