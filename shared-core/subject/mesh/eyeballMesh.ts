import { cosine, sine } from '../../arithmetic/portable.ts'
import { EYE, eyeball } from '../field/eye.ts'
import { gradientAt } from './ontoSurface.ts'

export interface PartMesh {
  readonly positions: Float64Array
  readonly normals: Float64Array
  readonly triangles: Uint32Array
}

const SEGMENTS = 36
/** Rings by angle from straight ahead: close over the cornea, wide where the socket hides them. */
const RING_DEGREES = [3, 7, 11, 15, 19, 22.5, 25, 27.5, 30, 33, 37, 42, 48, 55, 63, 72, 82, 100, 130]

/** One eyeball as a closed mesh of its own, in mm. `side` -1 is camera left. */
export function eyeballMesh(side: -1 | 1): PartMesh {
  const positions: number[] = []
  const put = (polar: number, around: number): void => {
    const [dx, dy, dz] = [sine(polar) * cosine(around), -cosine(polar), sine(polar) * sine(around)]
    let far: number = EYE.radius
    for (let round = 0; round < 12; round++) far -= eyeball(EYE.x + dx * far, EYE.y + dy * far, EYE.z + dz * far)
    positions.push(EYE.x + dx * far, EYE.y + dy * far, EYE.z + dz * far)
  }
  put(0, 0)
  for (const degrees of RING_DEGREES) {
    for (let s = 0; s < SEGMENTS; s++) put((degrees * Math.PI) / 180, (2 * Math.PI * s) / SEGMENTS)
  }
  put(Math.PI, 0)
  const triangles: number[] = []
  const at = (ring: number, s: number): number => 1 + ring * SEGMENTS + (s % SEGMENTS)
  const end = positions.length / 3 - 1
  for (let s = 0; s < SEGMENTS; s++) {
    triangles.push(0, at(0, s), at(0, s + 1))
    for (let ring = 0; ring + 1 < RING_DEGREES.length; ring++) {
      triangles.push(at(ring, s), at(ring + 1, s), at(ring + 1, s + 1), at(ring, s), at(ring + 1, s + 1), at(ring, s + 1))
    }
    triangles.push(at(RING_DEGREES.length - 1, s), end, at(RING_DEGREES.length - 1, s + 1))
  }
  const normals = new Float64Array(positions.length)
  for (let v = 0; v < positions.length; v += 3) {
    const g = gradientAt(eyeball, positions[v]!, positions[v + 1]!, positions[v + 2]!, 0.05)
    const size = Math.sqrt(g[0] * g[0] + g[1] * g[1] + g[2] * g[2])
    normals.set([(side * g[0]) / size, g[1] / size, g[2] / size], v)
  }
  // Mirroring turns the facets inside out: the other eye takes them in the other order.
  const facing = side === 1 ? triangles : triangles.map((_, i) => triangles[i - (i % 3) + [0, 2, 1][i % 3]!]!)
  return {
    positions: Float64Array.from(positions, (value, i) => (i % 3 === 0 ? side * value : value)),
    normals,
    triangles: Uint32Array.from(facing),
  }
}
