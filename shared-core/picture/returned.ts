import { add, type Vector } from '../arithmetic/vector.ts'
import { builtSet } from '../set/builtSet.ts'
import type { Scene } from '../set/scene.ts'
import { lightAtPoint, type LightAtPoint } from '../transport/lightAtPoint.ts'
import type { Receiver } from '../transport/receipt.ts'

/** Light that comes back from the room, told at six faces of a cube around the head: smooth, so six are enough. */
export interface ReturnedLight {
  /** One light at each face: +x, -x, +y, -y, +z, -z. */
  readonly faces: readonly LightAtPoint[]
}

const FACES: readonly Vector[] = [[1, 0, 0], [-1, 0, 0], [0, 1, 0], [0, -1, 0], [0, 0, 1], [0, 0, -1]]
/** Clear of head and shoulders, so that the body does not shade its own probe. */
const REACH_METRES = 0.28

const receivers = new WeakMap<object, readonly Receiver[]>()

export function returnedLight(scene: Scene, lightId: string): ReturnedLight {
  const { form } = builtSet(scene)
  let around = receivers.get(form)
  if (!around) {
    around = FACES.map((facing) => ({
      place: add(form.eyes, [facing[0] * REACH_METRES, facing[1] * REACH_METRES, facing[2] * REACH_METRES]),
      facing,
      surfaceId: null,
    }))
    receivers.set(form, around)
  }
  return { faces: around.map((receiver) => lightAtPoint(scene, lightId, receiver)) }
}

/** Weight of each face for a surface that faces n: squares of its components, which add up to 1. */
export function cubeValue(values: readonly number[], nx: number, ny: number, nz: number): number {
  return nx * nx * values[nx >= 0 ? 0 : 1]! + ny * ny * values[ny >= 0 ? 2 : 3]! + nz * nz * values[nz >= 0 ? 4 : 5]!
}
