import type { Plan } from '../../../shared-core/plan/schema/plan.ts'

/**
 * The plan with one look seen from another look's camera: its place, lens and format. Aperture, ISO, shutter and white
 * balance stay the look's own, so that each is exposed as it is meant.
 */
export function seenFrom(plan: Plan, lookId: string, cameraOfLookId: string): Plan {
  const [look, model] = [plan.looks[lookId], plan.looks[cameraOfLookId]]
  if (look === undefined || model === undefined || look === model) return plan
  const { place, aim, focalLengthMillimetres, sensorWidthMillimetres, sensorHeightMillimetres } = model.camera
  const camera = { ...look.camera, place, aim, focalLengthMillimetres, sensorWidthMillimetres, sensorHeightMillimetres }
  return { ...plan, looks: { ...plan.looks, [lookId]: { ...look, camera } } }
}
