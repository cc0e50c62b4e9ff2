import type { CameraView } from '../set/camera.ts'
import type { PosedSubject } from './posedSubject.ts'

/** Which facet of the subject is nearest at each point of a grid over the Frame, and how far: the picture's skeleton. */
export interface IdBuffer {
  readonly width: number
  readonly height: number
  /** Index of the facet, -1 where the background shows. */
  readonly facets: Int32Array
  readonly depths: Float32Array
  /** Place of each vertex on the grid, and its depth in metres. */
  readonly xs: Float32Array
  readonly ys: Float32Array
  readonly zs: Float32Array
}

/** Corners nearer to the camera than this are left out with their facet. */
const NEAREST_METRES = 0.05

/** Draws the subject's facets into a z-buffer. Points are the middles of `width` x `height` cells over the Frame. */
export function drawIds(subject: PosedSubject, view: CameraView, width: number, height: number): IdBuffer {
  const { triangles } = subject.asset
  const { xs, ys, zs } = project(subject.positions, view, width, height)
  const facets = new Int32Array(width * height).fill(-1)
  const depths = new Float32Array(width * height).fill(Infinity)
  for (let f = 0, i = 0; i < triangles.length; f++, i += 3) {
    const a = triangles[i]!
    const b = triangles[i + 1]!
    const c = triangles[i + 2]!
    const za = zs[a]!
    const zb = zs[b]!
    const zc = zs[c]!
    if (za < NEAREST_METRES || zb < NEAREST_METRES || zc < NEAREST_METRES) continue
    const xa = xs[a]!
    const ya = ys[a]!
    const xb = xs[b]!
    const yb = ys[b]!
    const xc = xs[c]!
    const yc = ys[c]!
    const area = (xb - xa) * (yc - ya) - (xc - xa) * (yb - ya)
    // Anticlockwise from outside is clockwise on a screen whose y runs down: back faces have the other sign.
    if (area >= 0) continue
    const left = Math.max(0, Math.ceil(xa < xb ? (xa < xc ? xa : xc) : xb < xc ? xb : xc))
    const right = Math.min(width - 1, Math.floor(xa > xb ? (xa > xc ? xa : xc) : xb > xc ? xb : xc))
    if (left > right) continue
    const top = Math.max(0, Math.ceil(ya < yb ? (ya < yc ? ya : yc) : yb < yc ? yb : yc))
    const bottom = Math.min(height - 1, Math.floor(ya > yb ? (ya > yc ? ya : yc) : yb > yc ? yb : yc))
    const inverse = 1 / area
    const ia = 1 / za
    const ib = 1 / zb
    const ic = 1 / zc
    for (let y = top; y <= bottom; y++) {
      for (let x = left; x <= right; x++) {
        const wa = ((xb - x) * (yc - y) - (xc - x) * (yb - y)) * inverse
        const wb = ((xc - x) * (ya - y) - (xa - x) * (yc - y)) * inverse
        const wc = 1 - wa - wb
        if (wa < 0 || wb < 0 || wc < 0) continue
        const depth = 1 / (wa * ia + wb * ib + wc * ic)
        const at = y * width + x
        if (depth < depths[at]!) {
          depths[at] = depth
          facets[at] = f
        }
      }
    }
  }
  return { width, height, facets, depths, xs, ys, zs }
}

function project(positions: Float32Array, view: CameraView, width: number, height: number): Pick<IdBuffer, 'xs' | 'ys' | 'zs'> {
  const count = positions.length / 3
  const xs = new Float32Array(count)
  const ys = new Float32Array(count)
  const zs = new Float32Array(count)
  const [px, py, pz] = view.place
  const [rx, ry, rz] = view.right
  const [ux, uy, uz] = view.up
  const [ax, ay, az] = view.ahead
  for (let v = 0; v < count; v++) {
    const x = positions[3 * v]! - px
    const y = positions[3 * v + 1]! - py
    const z = positions[3 * v + 2]! - pz
    const depth = x * ax + y * ay + z * az
    zs[v] = depth
    xs[v] = (view.axisX + (x * rx + y * ry + z * rz) / (depth * view.widthPerMetre)) * width - 0.5
    ys[v] = (view.axisY - (x * ux + y * uy + z * uz) / (depth * view.heightPerMetre)) * height - 0.5
  }
  return { xs, ys, zs }
}
