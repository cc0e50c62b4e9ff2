/**
 * Signed distances in millimetres, negative inside. Plain numbers in and out: the field is asked millions of times
 * while meshing, and tuples would spend that time in the memory allocator.
 */

/** Distance to an ellipsoid, exact at the surface and within some 10 % nearby (first-order estimate). */
export function ellipsoid(
  x: number, y: number, z: number, cx: number, cy: number, cz: number, rx: number, ry: number, rz: number,
): number {
  const px = (x - cx) / rx
  const py = (y - cy) / ry
  const pz = (z - cz) / rz
  const scaled = Math.sqrt(px * px + py * py + pz * pz)
  const qx = px / rx
  const qy = py / ry
  const qz = pz / rz
  const slope = Math.sqrt(qx * qx + qy * qy + qz * qz)
  return slope < 1e-9 ? -Math.min(rx, ry, rz) : (scaled * (scaled - 1)) / slope
}

/** Distance to a limb: a segment whose radius runs linearly from `ra` at a to `rb` at b. */
export function limb(
  x: number, y: number, z: number,
  ax: number, ay: number, az: number, ra: number, bx: number, by: number, bz: number, rb: number,
): number {
  const ux = bx - ax
  const uy = by - ay
  const uz = bz - az
  const px = x - ax
  const py = y - ay
  const pz = z - az
  const along = Math.min(1, Math.max(0, (px * ux + py * uy + pz * uz) / (ux * ux + uy * uy + uz * uz)))
  const dx = px - ux * along
  const dy = py - uy * along
  const dz = pz - uz * along
  return Math.sqrt(dx * dx + dy * dy + dz * dz) - (ra + (rb - ra) * along)
}

/** Union whose seam is filled over `k` mm, as clay would be. */
export function blend(a: number, b: number, k: number): number {
  const h = k - Math.abs(a - b)
  return h > 0 ? Math.min(a, b) - (h * h) / (4 * k) : Math.min(a, b)
}

/** `a` with `b` taken away, the edge rounded over `k` mm. */
export function carve(a: number, b: number, k: number): number {
  return -blend(-a, b, k)
}

/** One stroke of the thumb: 1 at the centre, 0 beyond the radii, smooth between. Multiply by a depth in mm. */
export function dab(
  x: number, y: number, z: number, cx: number, cy: number, cz: number, rx: number, ry: number, rz: number,
): number {
  const px = (x - cx) / rx
  const py = (y - cy) / ry
  const pz = (z - cz) / rz
  const t = 1 - (px * px + py * py + pz * pz)
  return t > 0 ? t * t : 0
}

/** As `dab`, along a segment. */
export function stroke(
  x: number, y: number, z: number,
  ax: number, ay: number, az: number, bx: number, by: number, bz: number, radius: number,
): number {
  const d = limb(x, y, z, ax, ay, az, 0, bx, by, bz, 0) / radius
  const t = 1 - d * d
  return t > 0 ? t * t : 0
}

/** 0 below `from`, 1 above `to`, smooth between. */
export function ramp(from: number, to: number, value: number): number {
  const t = Math.min(1, Math.max(0, (value - from) / (to - from)))
  return t * t * (3 - 2 * t)
}

/** Smooth curve through (place, value) pairs in rising order of place: cubic with slopes that never overshoot. */
export function curve(points: readonly (readonly [place: number, value: number])[]): (place: number) => number {
  const n = points.length
  const at = points.map((p) => p[0])
  const value = points.map((p) => p[1])
  const chord = at.slice(1).map((a, i) => (value[i + 1]! - value[i]!) / (a - at[i]!))
  const slope = at.map((_, i) => {
    if (i === 0) return chord[0]!
    if (i === n - 1) return chord[n - 2]!
    const before = chord[i - 1]!
    const after = chord[i]!
    return before * after <= 0 ? 0 : (2 * before * after) / (before + after)
  })
  return (place) => {
    if (place <= at[0]!) return value[0]!
    if (place >= at[n - 1]!) return value[n - 1]!
    let i = 0
    while (place > at[i + 1]!) i++
    const width = at[i + 1]! - at[i]!
    const t = (place - at[i]!) / width
    const u = 1 - t
    return value[i]! * u * u * (1 + 2 * t) + value[i + 1]! * t * t * (3 - 2 * t)
      + width * t * u * (slope[i]! * u - slope[i + 1]! * t)
  }
}
