import type { Vector } from '../arithmetic/vector.ts'

/**
 * What a flat or domed receptor sees of a uniform polygon, in closed form.
 *
 * Lambert's polygon formula (Photometria, 1760; also Howell, A Catalog of Radiation Heat Transfer Configuration
 * Factors, section B): the integral of the direction over the solid angle of a polygon is
 * 1/2 * sum of (angle between neighbouring corners) * (unit normal of the plane through them and the point).
 */

const MOST_CORNERS = 64
/** Corners relative to the point, before and after the clip. */
const relative = new Float64Array(3 * MOST_CORNERS)
const clipped = new Float64Array(3 * (MOST_CORNERS + 2))

/** Result of the last call of `viewPolygon`; read at once, since the next call overwrites it. */
export const polygonView = {
  /** Solid angle in steradians. */
  solidAngle: 0,
  /** Integral of the unit direction over the solid angle; nothing clipped. */
  x: 0,
  y: 0,
  z: 0,
  /** Integral of the cosine over the part above the receptor's horizon. */
  aboveHorizon: 0,
  /** Whether the horizon cuts the polygon. */
  isCut: false,
}

/**
 * Looks at a flat convex polygon from a point. Fills `polygonView`.
 *
 * @param corners x, y, z of each corner in metres, in order, at most 64
 * @param px,py,pz the point
 * @param nx,ny,nz unit normal of the receptor
 */
export function viewPolygon(
  corners: Float64Array, cornerCount: number,
  px: number, py: number, pz: number,
  nx: number, ny: number, nz: number,
): void {
  let anyAbove = false
  let anyBelow = false
  for (let i = 0; i < cornerCount; i++) {
    const x = corners[3 * i]! - px
    const y = corners[3 * i + 1]! - py
    const z = corners[3 * i + 2]! - pz
    relative[3 * i] = x
    relative[3 * i + 1] = y
    relative[3 * i + 2] = z
    if (x * nx + y * ny + z * nz > 0) anyAbove = true
    else anyBelow = true
  }
  integrateDirection(relative, cornerCount)
  const signedSolidAngle = solidAngle(relative, cornerCount)
  // Which way round the corners run must not matter: light comes from where the polygon is.
  const sign = signedSolidAngle < 0 ? -1 : 1
  polygonView.solidAngle = sign * signedSolidAngle
  polygonView.x = sign * sum.x
  polygonView.y = sign * sum.y
  polygonView.z = sign * sum.z
  polygonView.isCut = anyAbove && anyBelow
  if (!anyAbove) {
    polygonView.aboveHorizon = 0
  } else if (!anyBelow) {
    polygonView.aboveHorizon = Math.max(0, polygonView.x * nx + polygonView.y * ny + polygonView.z * nz)
  } else {
    const count = clipAtHorizon(cornerCount, nx, ny, nz)
    integrateDirection(clipped, count)
    polygonView.aboveHorizon = Math.max(0, sign * (sum.x * nx + sum.y * ny + sum.z * nz))
  }
}

const sum = { x: 0, y: 0, z: 0 }

function integrateDirection(points: Float64Array, count: number): void {
  let sx = 0
  let sy = 0
  let sz = 0
  let ax = points[3 * count - 3]!
  let ay = points[3 * count - 2]!
  let az = points[3 * count - 1]!
  for (let i = 0; i < count; i++) {
    const bx = points[3 * i]!
    const by = points[3 * i + 1]!
    const bz = points[3 * i + 2]!
    const cx = ay * bz - az * by
    const cy = az * bx - ax * bz
    const cz = ax * by - ay * bx
    const sine = Math.sqrt(cx * cx + cy * cy + cz * cz)
    if (sine > 0) {
      const weight = Math.atan2(sine, ax * bx + ay * by + az * bz) / (2 * sine)
      sx += cx * weight
      sy += cy * weight
      sz += cz * weight
    }
    ax = bx
    ay = by
    az = bz
  }
  sum.x = sx
  sum.y = sy
  sum.z = sz
}

/**
 * Solid angle of a polygon as a fan of triangles, signed by the order of its corners: Van Oosterom and Strackee,
 * IEEE Trans. Biomed. Eng. 30 (1983) 125.
 */
function solidAngle(points: Float64Array, count: number): number {
  const ax = points[0]!
  const ay = points[1]!
  const az = points[2]!
  const a = Math.sqrt(ax * ax + ay * ay + az * az)
  let total = 0
  for (let i = 1; i < count - 1; i++) {
    const bx = points[3 * i]!
    const by = points[3 * i + 1]!
    const bz = points[3 * i + 2]!
    const cx = points[3 * i + 3]!
    const cy = points[3 * i + 4]!
    const cz = points[3 * i + 5]!
    const b = Math.sqrt(bx * bx + by * by + bz * bz)
    const c = Math.sqrt(cx * cx + cy * cy + cz * cz)
    const triple = ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx)
    const below = a * b * c + (ax * bx + ay * by + az * bz) * c + (ax * cx + ay * cy + az * cz) * b +
      (bx * cx + by * cy + bz * cz) * a
    total += 2 * Math.atan2(triple, below)
  }
  return total
}

/** Sutherland and Hodgman's clip of one polygon at one plane; returns how many corners remain. */
function clipAtHorizon(count: number, nx: number, ny: number, nz: number): number {
  let kept = 0
  let ax = relative[3 * count - 3]!
  let ay = relative[3 * count - 2]!
  let az = relative[3 * count - 1]!
  let heightA = ax * nx + ay * ny + az * nz
  for (let i = 0; i < count; i++) {
    const bx = relative[3 * i]!
    const by = relative[3 * i + 1]!
    const bz = relative[3 * i + 2]!
    const heightB = bx * nx + by * ny + bz * nz
    if (heightA > 0 !== heightB > 0) {
      const share = heightA / (heightA - heightB)
      clipped[3 * kept] = ax + (bx - ax) * share
      clipped[3 * kept + 1] = ay + (by - ay) * share
      clipped[3 * kept + 2] = az + (bz - az) * share
      kept++
    }
    if (heightB > 0) {
      clipped[3 * kept] = bx
      clipped[3 * kept + 1] = by
      clipped[3 * kept + 2] = bz
      kept++
    }
    ax = bx
    ay = by
    az = bz
    heightA = heightB
  }
  return kept
}

/** Corners as one run of numbers, the form the closed forms read. */
export function cornersOf(polygon: readonly Vector[]): Float64Array {
  const corners = new Float64Array(3 * polygon.length)
  polygon.forEach((corner, i) => corners.set(corner, 3 * i))
  return corners
}

/**
 * Configuration factor from a plane element to a flat convex polygon: the share of a perfect white sky that the polygon
 * would be. Illuminance = pi * luminance * factor. Parts below the element's horizon do not count; exact.
 *
 * @param polygon corners in order, either way round, 3 to 64
 * @param point the element
 * @param normal unit normal of the element
 * @throws RangeError for fewer than 3 or more than 64 corners
 */
export function configurationFactor(polygon: readonly Vector[], point: Vector, normal: Vector): number {
  if (polygon.length < 3 || polygon.length > MOST_CORNERS) throw new RangeError(`a polygon of ${polygon.length} corners`)
  viewPolygon(cornersOf(polygon), polygon.length, point[0], point[1], point[2], normal[0], normal[1], normal[2])
  return polygonView.aboveHorizon / Math.PI
}
