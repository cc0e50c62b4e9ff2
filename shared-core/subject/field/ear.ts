import { blend, carve, ellipsoid, ramp } from './primitives.ts'

const BACKWARD_TILT = 0.22
const OUTWARD = 0.24
const tiltCosine = 1 / Math.sqrt(1 + BACKWARD_TILT * BACKWARD_TILT)
const tiltSine = BACKWARD_TILT * tiltCosine
const outCosine = 1 / Math.sqrt(1 + OUTWARD * OUTWARD)
const outSine = OUTWARD * outCosine

/** The outer ear. `x` folded. */
export function ear(x: number, y: number, z: number): number {
  const px = (x - 70) * 1.07
  const py = (y - 12) * 1.07
  const pz = (z + 19) * 1.07
  if (px * px + py * py + pz * pz > 3600) return 60
  // Local axes: up along the ear, back along its breadth, out of its plane.
  const up = pz * tiltCosine + py * tiltSine
  const level = py * tiltCosine - pz * tiltSine
  const back = level * outCosine + px * outSine
  const out = px * outCosine - level * outSine
  const breadth = 16.5 + 0.11 * up
  const q = Math.sqrt((up / 30) * (up / 30) + (back / breadth) * (back / breadth))
  const bowl = 0.012 * (up * up * 0.25 + back * back)
  const w = out - bowl + Math.max(0, -up - 12) * 0.42
  const rimBack = (q - 0.93) * breadth
  const plate = Math.max(Math.abs(w) - 1.6, rimBack * 0.9)
  const rim = Math.sqrt(rimBack * rimBack + (w - 1.4) * (w - 1.4)) - (1.0 + 1.5 * Math.max(ramp(-8, 2, back), ramp(2, 12, up)))
  const inner = Math.sqrt((q - 0.56) * breadth * (q - 0.56) * breadth + (w - 0.8) * (w - 0.8)) - 2.4
  let d = blend(plate, rim, 2.5)
  d = blend(d, inner + Math.max(0, 2 - back) * 0.5 + Math.max(0, -up - 12) * 0.3, 2.5)
  const lobe = ellipsoid(up, back, out, -22, -6.5, -4.6, 7.5, 6.2, 3.4)
  d = blend(d, lobe, 4)
  const root = ellipsoid(up, back, out, -2, -8, -5, 22, 12, 6)
  d = blend(d, root, 5)
  const concha = ellipsoid(up, back, out, -6, -3.5, 3, 11, 7.5, 6.5)
  d = carve(d, concha, 3)
  const tragus = ellipsoid(up, back, out, -6, -12, 1.2, 5.5, 3.4, 3)
  return blend(d, tragus, 3) / 1.07
}
