import type { Vector } from '../arithmetic/vector.ts'
import type { SeenSurface } from './seenSurface.ts'
import type { ShinePoints } from './shine.ts'

/** Points that shine, turned to one rest frame. */
export interface TurnedPoints {
  readonly xyz: Float64Array
  readonly axis: Vector
  readonly centre: Vector
}

/** The same points in the rest frame of every step that some slot uses; null for the others. */
export function turnedPoints({ turns }: SeenSurface, { xyz, count }: ShinePoints, axis: Vector, centre: Vector): readonly (TurnedPoints | null)[] {
  return turns.map((m) => {
    if (m === null) return null
    const turned = new Float64Array(3 * count)
    for (let k = 0; k < count; k++) turned.set(turn(m, xyz[3 * k]!, xyz[3 * k + 1]!, xyz[3 * k + 2]!), 3 * k)
    return { xyz: turned, axis: turn(m, ...axis), centre: turn(m, ...centre) }
  })
}

function turn(m: Float64Array, x: number, y: number, z: number): Vector {
  return [m[0]! * x + m[1]! * y + m[2]! * z, m[3]! * x + m[4]! * y + m[5]! * z, m[6]! * x + m[7]! * y + m[8]! * z]
}
