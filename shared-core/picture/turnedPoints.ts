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
    const [a, b, c, d, e, f, g, h, i] = m as unknown as readonly [number, number, number, number, number, number, number, number, number]
    for (let k = 0; k < 3 * count; k += 3) {
      const [x, y, z] = [xyz[k]!, xyz[k + 1]!, xyz[k + 2]!]
      turned[k] = a * x + b * y + c * z
      turned[k + 1] = d * x + e * y + f * z
      turned[k + 2] = g * x + h * y + i * z
    }
    return { xyz: turned, axis: turn(m, ...axis), centre: turn(m, ...centre) }
  })
}

function turn(m: Float64Array, x: number, y: number, z: number): Vector {
  return [m[0]! * x + m[1]! * y + m[2]! * z, m[3]! * x + m[4]! * y + m[5]! * z, m[6]! * x + m[7]! * y + m[8]! * z]
}
