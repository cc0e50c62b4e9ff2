import { add, scale, type Vector } from '../arithmetic/vector.ts'
import { emittersOf } from './emitter.ts'
import type { SceneLight } from './scene.ts'

/** Depth of a head behind its modifier, with its tilting bracket. Common practice, no source. */
const HEAD_DEPTH_METRES = 0.3

/** What a light takes up in the set: its outline front and back, and the stand under it. */
export interface LightBody {
  readonly corners: readonly Vector[]
  /** From where the bracket holds the head straight down to the floor. */
  readonly standTop: Vector
  readonly standFoot: Vector
}

export function lightBody(light: SceneLight): LightBody {
  const front = emittersOf(light)[0]!
  const depth = Math.max(light.modifier.depthMetres, HEAD_DEPTH_METRES)
  const back = scale(front.axis, -depth)
  // A box tapers to the head: its back is drawn as a third of its front.
  const behind = front.outline.map((corner): Vector => {
    const inward = add(front.centre, scale([corner[0] - front.centre[0], corner[1] - front.centre[1], corner[2] - front.centre[2]], 1 / 3))
    return add(inward, back)
  })
  const standTop = add(front.centre, back)
  return { corners: [...front.outline, ...behind], standTop, standFoot: [standTop[0], standTop[1], 0] }
}
