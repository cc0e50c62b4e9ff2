import { add, scale, type Vector } from '../arithmetic/vector.ts'
import { builtSet } from '../set/builtSet.ts'
import type { Scene } from '../set/scene.ts'
import { lightAtPoint, type LightAtPoint } from '../transport/lightAtPoint.ts'
import type { Receiver } from '../transport/receipt.ts'
import { FACES } from './openness.ts'
import { returnedAmount, type ReturnedColour } from './returnedColour.ts'
import type { SeenSurface } from './seenSurface.ts'

/** Light that comes back from the room, told at six faces of a cube around the head: smooth, so six are enough. */
export interface ReturnedLight {
  /** One light at each face: +x, -x, +y, -y, +z, -z. */
  readonly faces: readonly LightAtPoint[]
}

const DIRECTIONS: readonly Vector[] = [[1, 0, 0], [-1, 0, 0], [0, 1, 0], [0, -1, 0], [0, 0, 1], [0, 0, -1]]
/** Clear of head and shoulders, so that the body does not shade its own probe. */
const REACH_METRES = 0.28

const receivers = new WeakMap<object, readonly Receiver[]>()

export function returnedLight(scene: Scene, lightId: string): ReturnedLight {
  const { form } = builtSet(scene)
  let around = receivers.get(form)
  if (!around) {
    around = DIRECTIONS.map((facing) => ({ place: add(form.eyes, scale(facing, REACH_METRES)), facing, surfaceId: null }))
    receivers.set(form, around)
  }
  return { faces: around.map((receiver) => lightAtPoint(scene, lightId, receiver)) }
}

/** Weight of each face for a surface that faces n: squares of its components, which add up to 1. */
export function cubeValue(values: readonly number[], nx: number, ny: number, nz: number): number {
  return nx * nx * values[nx >= 0 ? 0 : 1]! + ny * ny * values[ny >= 0 ? 2 : 3]! + nz * nz * values[nz >= 0 ? 4 : 5]!
}

/**
 * Adds to each slot what the room returns on it: the cube's light past the subject itself. Boards and flats are left
 * out, because they stand near enough to be lights of their own.
 */
export function addReturned(into: Float32Array, around: ReturnedLight, colour: ReturnedColour, seen: SeenSurface): void {
  const cube = around.faces.map((face) => returnedAmount(face, colour, (surfaceId) => !surfaceId.startsWith('piece:')))
  const { faces: shares } = seen.openness
  const turned = seen.turns.map((turn) => (turn === null ? null : DIRECTIONS.map((axis) => cubeValue(cube, ...turnedBack(turn, axis)))))
  for (let slot = 0; slot < seen.count; slot++) {
    const own = FACES * seen.vertices[slot]!
    const faces = turned[seen.steps[slot]!]!
    let sum = 0
    for (let face = 0; face < FACES; face++) sum += shares[own + face]! * faces[face]!
    into[slot] = into[slot]! + sum
  }
}

/** A direction at rest as it stands in the set: the turn's inverse is its transpose. */
function turnedBack(m: Float64Array, [x, y, z]: Vector): Vector {
  return [m[0]! * x + m[3]! * y + m[6]! * z, m[1]! * x + m[4]! * y + m[7]! * z, m[2]! * x + m[5]! * y + m[8]! * z]
}
