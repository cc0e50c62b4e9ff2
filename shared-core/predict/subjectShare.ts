import { add, scale } from '../arithmetic/vector.ts'
import { builtSet } from '../set/builtSet.ts'
import { sightThrough } from '../set/camera.ts'
import { Occluders } from '../set/occluders.ts'
import type { Scene } from '../set/scene.ts'

const ACROSS = 10
const DOWN = 14
/** Far past any subject. */
const FAR_METRES = 30

/** Share of the frame that the subject covers, 0-1, counted on a grid of sight lines. */
export function subjectShareOf(scene: Scene): number {
  const { form, view } = builtSet(scene)
  const body = new Occluders(form.parts, [], [])
  let covered = 0
  for (let row = 0; row < DOWN; row++) {
    for (let column = 0; column < ACROSS; column++) {
      const sight = sightThrough(view, (column + 0.5) / ACROSS, (row + 0.5) / DOWN)
      const far = add(view.place, scale(sight, FAR_METRES))
      covered += 1 - body.shareSeen(view.place, far, 0.001)
    }
  }
  return covered / (ACROSS * DOWN)
}
