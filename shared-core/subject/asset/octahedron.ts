/**
 * Directions on an octahedron unfolded to a square: after Meyer et al. 2010, "On floating-point normal vectors".
 * The square runs from -1 to 1; up (z) is its middle.
 */

/** Cells along one side of the square of directions in which the subject's own shadow is known. */
export const DIRECTION_SIDE = 32
export const DIRECTION_COUNT = DIRECTION_SIDE * DIRECTION_SIDE

/** Place on the square of a direction of any length, into `out[0]`, `out[1]`. */
export function squareOf(x: number, y: number, z: number, out: Float64Array): void {
  const size = Math.abs(x) + Math.abs(y) + Math.abs(z)
  const u = x / size
  const v = y / size
  out[0] = z >= 0 ? u : (1 - Math.abs(v)) * (u >= 0 ? 1 : -1)
  out[1] = z >= 0 ? v : (1 - Math.abs(u)) * (v >= 0 ? 1 : -1)
}

/** Unit direction at a place on the square, into `out` from `at`. */
export function directionOf(u: number, v: number, out: Float32Array | Float64Array, at: number): void {
  const z = 1 - Math.abs(u) - Math.abs(v)
  const x = z >= 0 ? u : (1 - Math.abs(v)) * (u >= 0 ? 1 : -1)
  const y = z >= 0 ? v : (1 - Math.abs(u)) * (v >= 0 ? 1 : -1)
  const size = Math.sqrt(x * x + y * y + z * z)
  out[at] = x / size
  out[at + 1] = y / size
  out[at + 2] = z / size
}

/** Middle directions of all cells, row by row: x, y, z each. */
export function cellDirections(): Float64Array {
  const out = new Float64Array(DIRECTION_COUNT * 3)
  for (let cell = 0; cell < DIRECTION_COUNT; cell++) {
    const u = ((cell % DIRECTION_SIDE) + 0.5) / DIRECTION_SIDE * 2 - 1
    const v = (Math.floor(cell / DIRECTION_SIDE) + 0.5) / DIRECTION_SIDE * 2 - 1
    directionOf(u, v, out, cell * 3)
  }
  return out
}

const place = new Float64Array(2)

function stepOf(value: number): number {
  return Math.min(DIRECTION_SIDE - 1, Math.max(0, Math.floor(((value + 1) / 2) * DIRECTION_SIDE)))
}

/** The cell that a direction of any length falls in. */
export function cellOf(x: number, y: number, z: number): number {
  squareOf(x, y, z, place)
  return stepOf(place[1]!) * DIRECTION_SIDE + stepOf(place[0]!)
}
