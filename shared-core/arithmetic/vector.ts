/**
 * Points and directions in the set: x to camera right, y from the camera towards the backdrop, z up, in metres.
 * A tuple, so that JSON, typed arrays and tests read the same.
 */
export type Vector = readonly [x: number, y: number, z: number]

export const add = (a: Vector, b: Vector): Vector => [a[0] + b[0], a[1] + b[1], a[2] + b[2]]
export const subtract = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
export const scale = (a: Vector, factor: number): Vector => [a[0] * factor, a[1] * factor, a[2] * factor]
export const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
export const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
]
export const length = (a: Vector): number => Math.sqrt(dot(a, a))
export const distance = (a: Vector, b: Vector): number => length(subtract(a, b))

/** The direction of `a`; a zero vector gives `fallback`, since a piece aimed at itself still has to face somewhere. */
export function direction(a: Vector, fallback: Vector = [0, 1, 0]): Vector {
  const size = length(a)
  return size > 1e-12 ? scale(a, 1 / size) : fallback
}
