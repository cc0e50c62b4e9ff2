/**
 * Thins a closed mesh by collapsing edges where it matters least: quadric error metric (Garland and Heckbert 1997,
 * "Surface simplification using quadric error metrics"), with a pull towards the old vertices that keeps facets even.
 */
import { EdgeQueue } from './edgeQueue.ts'

/** A facet may not turn by more than about 70 degrees in one collapse. */
const LEAST_AGREEMENT = 0.35
/** Symmetric 4 x 4 matrix: xx xy xz xw yy yz yw zz zw ww. */
const QUADRIC = 10

/** What the errors at a place weigh: of its shape, and of facets grown larger than their neighbours. */
export type Importance = (x: number, y: number, z: number) => { readonly shape: number, readonly evenness: number }

export interface ThinnedMesh {
  readonly positions: Float64Array
  readonly triangles: Uint32Array
}

/**
 * Leaves about `wanted` vertices. Topology is kept: no collapse that would pinch the surface is made.
 */
export function thinOut(
  points: Float64Array, triangles: Uint32Array, wanted: number, importance: Importance,
): ThinnedMesh {
  const count = points.length / 3
  const p = Float64Array.from(points)
  const t = Uint32Array.from(triangles)
  const facets: number[][] = Array.from({ length: count }, () => [])
  for (let i = 0; i < t.length; i++) facets[t[i]!]!.push((i / 3) | 0)
  const quadrics = startQuadrics(p, t, importance)
  const dead = new Uint8Array(t.length / 3)
  const version = new Int32Array(count)
  const queue = new EdgeQueue()
  const best = new Float64Array(3)

  const neighbours = (v: number): number[] => {
    const out: number[] = []
    for (const f of facets[v]!) for (let c = 0; c < 3; c++) {
      const other = t[f * 3 + c]!
      if (other !== v && !out.includes(other)) out.push(other)
    }
    return out
  }
  const offer = (a: number, b: number): void => {
    const cost = placeFor(quadrics, a, b, p, best)
    queue.push(cost, a, b, version[a]! + version[b]!)
  }
  for (let v = 0; v < count; v++) for (const other of neighbours(v)) if (v < other) offer(v, other)

  const folds = (v: number, without: number): boolean => facets[v]!.some((f) => {
    const [i, j, k] = [t[f * 3]!, t[f * 3 + 1]!, t[f * 3 + 2]!]
    if (i === without || j === without || k === without) return false
    const old = normalOf(p, i, j, k, -1, best)
    const fresh = normalOf(p, i, j, k, v, best)
    const size = Math.sqrt(dot3(old, old) * dot3(fresh, fresh))
    return dot3(old, fresh) < LEAST_AGREEMENT * size || size < 1e-12
  })

  let left = count
  for (let edge = queue.pop(); edge && left > wanted; edge = queue.pop()) {
    const { a, b, stamp } = edge
    if (version[a]! < 0 || version[b]! < 0 || stamp !== version[a]! + version[b]!) continue
    const near = neighbours(a)
    const shared = neighbours(b).filter((v) => near.includes(v))
    placeFor(quadrics, a, b, p, best)
    if (!near.includes(b) || shared.length !== 2 || shared.some((v) => facets[v]!.length <= 3) || folds(a, b) || folds(b, a)) continue
    for (const f of facets[b]!) {
      const gone = t[f * 3] === a || t[f * 3 + 1] === a || t[f * 3 + 2] === a
      if (gone) dead[f] = 1
      else {
        for (let c = 0; c < 3; c++) if (t[f * 3 + c] === b) t[f * 3 + c] = a
        facets[a]!.push(f)
      }
    }
    for (const v of [a, ...shared]) facets[v] = facets[v]!.filter((f) => !dead[f])
    facets[b] = []
    p.set(best, a * 3)
    for (let i = 0; i < QUADRIC; i++) quadrics[a * QUADRIC + i] = quadrics[a * QUADRIC + i]! + quadrics[b * QUADRIC + i]!
    version[b] = -1
    version[a] = version[a]! + 1
    left--
    for (const other of neighbours(a)) offer(a, other)
  }
  return compact(p, t, dead, version)
}

function startQuadrics(p: Float64Array, t: Uint32Array, importance: Importance): Float64Array {
  const quadrics = new Float64Array((p.length / 3) * QUADRIC)
  for (let f = 0; f < t.length; f += 3) {
    const n = normalOf(p, t[f]!, t[f + 1]!, t[f + 2]!, -1, p)
    const size = Math.sqrt(dot3(n, n))
    if (size < 1e-12) continue
    const [nx, ny, nz] = [n[0] / size, n[1] / size, n[2] / size]
    for (let c = 0; c < 3; c++) {
      const v = t[f + c]!
      const [x, y, z] = [p[v * 3]!, p[v * 3 + 1]!, p[v * 3 + 2]!]
      const { shape, evenness } = importance(x, y, z)
      const weight = (size / 6) * shape
      const d = -(nx * x + ny * y + nz * z)
      const e = evenness / shape
      const parts = [
        nx * nx + e, nx * ny, nx * nz, nx * d - e * x, ny * ny + e, ny * nz, ny * d - e * y, nz * nz + e, nz * d - e * z,
        d * d + e * (x * x + y * y + z * z),
      ]
      for (let i = 0; i < QUADRIC; i++) quadrics[v * QUADRIC + i] = quadrics[v * QUADRIC + i]! + weight * parts[i]!
    }
  }
  return quadrics
}

/** Best place for the vertex that replaces a and b, into `out`; returns the error there. */
function placeFor(quadrics: Float64Array, a: number, b: number, p: Float64Array, out: Float64Array): number {
  const q = (i: number): number => quadrics[a * QUADRIC + i]! + quadrics[b * QUADRIC + i]!
  // Relative to the middle of the edge, or the last digits are lost.
  const mx = (p[a * 3]! + p[b * 3]!) / 2
  const my = (p[a * 3 + 1]! + p[b * 3 + 1]!) / 2
  const mz = (p[a * 3 + 2]! + p[b * 3 + 2]!) / 2
  const [xx, xy, xz, xw, yy, yz, yw, zz, zw, ww] = [q(0), q(1), q(2), q(3), q(4), q(5), q(6), q(7), q(8), q(9)]
  const gx = xx * mx + xy * my + xz * mz + xw
  const gy = xy * mx + yy * my + yz * mz + yw
  const gz = xz * mx + yz * my + zz * mz + zw
  const base = mx * (gx + xw) + my * (gy + yw) + mz * (gz + zw) + ww
  const cx = yy * zz - yz * yz
  const cy = xz * yz - xy * zz
  const cz = xy * yz - xz * yy
  const determinant = xx * cx + xy * cy + xz * cz
  let [dx, dy, dz] = [0, 0, 0]
  if (determinant > 1e-12) {
    dx = -(cx * gx + cy * gy + cz * gz) / determinant
    dy = -(cy * gx + (xx * zz - xz * xz) * gy + (xy * xz - xx * yz) * gz) / determinant
    dz = -(cz * gx + (xy * xz - xx * yz) * gy + (xx * yy - xy * xy) * gz) / determinant
  }
  out[0] = mx + dx
  out[1] = my + dy
  out[2] = mz + dz
  return Math.max(0, base + gx * dx + gy * dy + gz * dz)
}

type Triple = readonly [number, number, number]
const dot3 = (a: Triple, b: Triple): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]

/** Facet normal times twice its area; the corner `moved` is taken to be at `to`. */
function normalOf(p: Float64Array, i: number, j: number, k: number, moved: number, to: Float64Array): Triple {
  const at = (v: number, axis: number): number => (v === moved ? to[axis]! : p[v * 3 + axis]!)
  const [ux, uy, uz] = [at(j, 0) - at(i, 0), at(j, 1) - at(i, 1), at(j, 2) - at(i, 2)]
  const [vx, vy, vz] = [at(k, 0) - at(i, 0), at(k, 1) - at(i, 1), at(k, 2) - at(i, 2)]
  return [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx]
}

function compact(p: Float64Array, t: Uint32Array, dead: Uint8Array, version: Int32Array): ThinnedMesh {
  const place = new Int32Array(version.length)
  const positions: number[] = []
  for (let v = 0; v < version.length; v++) {
    place[v] = positions.length / 3
    if (version[v]! >= 0) positions.push(p[v * 3]!, p[v * 3 + 1]!, p[v * 3 + 2]!)
  }
  const triangles: number[] = []
  for (let i = 0; i < t.length; i++) if (!dead[(i / 3) | 0]) triangles.push(place[t[i]!]!)
  return { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) }
}
