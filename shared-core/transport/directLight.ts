import { type AngularProfile, angularProfile, profileAt } from '../photometry/angularProfile.ts'
import type { LatticeSize } from '../photometry/lattice.ts'
import { clippedCorners, polygonView, viewPolygon } from '../photometry/polygon.ts'
import type { Emitter } from '../set/emitter.ts'
import { emitterPoints } from '../set/emitterPoints.ts'
import type { Occluders } from '../set/occluders.ts'

/**
 * Light straight from a front: the closed form of a uniform front, times the ratio that lobe, grid and shadows make of it
 * at fixed points, sum(w g V) / sum(w). With nothing to weigh, the closed form alone.
 */

/** What the last `addDirectLight` calls have added up: flat, dome out, dome to the light. Set to 0 before the first. */
export const directSum = { flat: 0, domeOut: 0, domeToLight: 0 }

/** Fixed points by how large the front looks: distance over its full width. */
function latticeFor(distanceInWidths: number): LatticeSize {
  return distanceInWidths > 6 ? 13 : distanceInWidths > 2.5 ? 34 : distanceInWidths > 0.6 ? 89 : 233
}

/** Below this the part of a front above the horizon holds too few of its points: it gets points of its own. */
const FEWEST_USABLE_SHARE = 0.35

/**
 * Adds what one front gives at a point to `directSum`.
 *
 * @param owner index of the light, whose own fronts do not block it
 * @param px,py,pz the point
 * @param nx,ny,nz the way a flat receptor and a dome face
 * @param tx,ty,tz the way to the light's front, for a dome turned to it
 * @param wantsDomes false where only a surface is lit
 */
export function addDirectLight(
  emitter: Emitter, owner: number, occluders: Occluders,
  px: number, py: number, pz: number, nx: number, ny: number, nz: number, tx: number, ty: number, tz: number,
  wantsDomes: boolean,
): void {
  const { centre, axis } = emitter
  const dx = px - centre[0]
  const dy = py - centre[1]
  const dz = pz - centre[2]
  const distance = Math.sqrt(dx * dx + dy * dy + dz * dz)
  if (emitter.front.shape === 'sphere') {
    addBareTube(emitter, owner, occluders, px, py, pz, nx, ny, nz, tx, ty, tz, distance)
    return
  }
  if (dx * axis[0] + dy * axis[1] + dz * axis[2] <= 0) return
  viewPolygon(emitter.corners, emitter.outline.length, px, py, pz, nx, ny, nz)
  const isLit = polygonView.aboveHorizon > 0
  if (!isLit && !wantsDomes) return
  const radiance = emitter.axialRadiancePerLumenSecond
  const flat = radiance * polygonView.aboveHorizon
  const { solidAngle, x, y, z, isCut, cornerCount } = polygonView
  const domeOut = (radiance * (solidAngle + x * nx + y * ny + z * nz)) / 2
  const domeToLight = (radiance * (solidAngle + x * tx + y * ty + z * tz)) / 2

  const profile = angularProfile(emitter.front.lobeExponent, emitter.front.grid)
  const blockers = occluders.consider(px, py, pz, centre[0], centre[1], centre[2], emitter.radiusMetres, owner)
  if (blockers === 0 && profile.isUniform) {
    directSum.flat += flat
    directSum.domeOut += domeOut
    directSum.domeToLight += domeToLight
    return
  }
  const points = emitterPoints(emitter, latticeFor(distance / (2 * emitter.radiusMetres)))
  weighPoints(points.xyz, points.count, points.cellMetres, profile, emitter, blockers === 0 ? null : occluders,
    px, py, pz, nx, ny, nz, tx, ty, tz)
  directSum.domeOut += domeOut * ratio(weighed.domeOut, weighed.domeOutOpen)
  directSum.domeToLight += domeToLight * ratio(weighed.domeToLight, weighed.domeToLightOpen)
  if (!isLit) return
  if (isCut && weighed.usable < FEWEST_USABLE_SHARE * points.count) {
    const count = placeAboveHorizon(emitter, cornerCount, px, py, pz)
    weighPoints(aboveHorizonPoints, count, aboveHorizonCell, profile, emitter, blockers === 0 ? null : occluders,
      px, py, pz, nx, ny, nz, tx, ty, tz)
  }
  directSum.flat += flat * ratio(weighed.flat, weighed.flatOpen)
}

function ratio(part: number, whole: number): number {
  return whole > 0 ? part / whole : 0
}

const weighed = {
  flat: 0, flatOpen: 0, domeOut: 0, domeOutOpen: 0, domeToLight: 0, domeToLightOpen: 0,
  /** Points above the flat receptor's horizon. */
  usable: 0,
}

function weighPoints(
  xyz: Float64Array, count: number, cell: number, profile: AngularProfile, emitter: Emitter, occluders: Occluders | null,
  px: number, py: number, pz: number, nx: number, ny: number, nz: number, tx: number, ty: number, tz: number,
): void {
  const [ax, ay, az] = emitter.axis
  let flat = 0
  let flatOpen = 0
  let domeOut = 0
  let domeOutOpen = 0
  let domeToLight = 0
  let domeToLightOpen = 0
  let usable = 0
  for (let i = 0; i < 3 * count; i += 3) {
    const sx = xyz[i]!
    const sy = xyz[i + 1]!
    const sz = xyz[i + 2]!
    const x = sx - px
    const y = sy - py
    const z = sz - pz
    const inverseSquare = 1 / (x * x + y * y + z * z)
    const inverse = Math.sqrt(inverseSquare)
    const cosAtFront = -(x * ax + y * ay + z * az) * inverse
    if (cosAtFront <= 0) continue
    const weight = cosAtFront * inverseSquare
    const cosOut = (x * nx + y * ny + z * nz) * inverse
    const outWeight = weight * (1 + cosOut) / 2
    const toLightWeight = weight * (1 + (x * tx + y * ty + z * tz) * inverse) / 2
    domeOutOpen += outWeight
    domeToLightOpen += toLightWeight
    let light = profileAt(profile, cosAtFront)
    if (occluders !== null && light > 0) light *= occluders.visibleShare(px, py, pz, sx, sy, sz, cell)
    domeOut += outWeight * light
    domeToLight += toLightWeight * light
    if (cosOut <= 0) continue
    usable++
    flatOpen += weight * cosOut
    flat += weight * cosOut * light
  }
  weighed.flat = flat
  weighed.flatOpen = flatOpen
  weighed.domeOut = domeOut
  weighed.domeOutOpen = domeOutOpen
  weighed.domeToLight = domeToLight
  weighed.domeToLightOpen = domeToLightOpen
  weighed.usable = usable
}

const POINTS_ABOVE_HORIZON = 64
const aboveHorizonPoints = new Float64Array(3 * POINTS_ABOVE_HORIZON)
let aboveHorizonCell = 0

/**
 * Points of the part of a front above the horizon, spread over the clipped polygon that the last `viewPolygon` left, so
 * that even a sliver of a box right behind the subject gets its share of them. Returns how many.
 */
function placeAboveHorizon(emitter: Emitter, cornerCount: number, px: number, py: number, pz: number): number {
  const { across, up } = emitter
  // Equal numbers in each triangle of the fan would crowd the small ones: each takes points by its area.
  let area = 0
  for (let i = 1; i < cornerCount - 1; i++) area += triangleArea(i, across, up)
  aboveHorizonCell = Math.sqrt(area / (POINTS_ABOVE_HORIZON))
  let placed = 0
  let passed = 0
  for (let i = 1; i < cornerCount - 1; i++) {
    passed += triangleArea(i, across, up) / area
    const until = i === cornerCount - 2 ? POINTS_ABOVE_HORIZON : Math.round(passed * POINTS_ABOVE_HORIZON)
    const count = until - placed
    for (let k = 0; k < count; k++) placeInTriangle(i, k, count, 3 * (placed + k), px, py, pz)
    placed += count
  }
  return placed
}

function triangleArea(i: number, across: readonly number[], up: readonly number[]): number {
  const c = clippedCorners
  const u = (k: number) => (c[3 * k]! - c[0]!) * across[0]! + (c[3 * k + 1]! - c[1]!) * across[1]! + (c[3 * k + 2]! - c[2]!) * across[2]!
  const v = (k: number) => (c[3 * k]! - c[0]!) * up[0]! + (c[3 * k + 1]! - c[1]!) * up[1]! + (c[3 * k + 2]! - c[2]!) * up[2]!
  return Math.abs(u(i) * v(i + 1) - u(i + 1) * v(i)) / 2
}

/** The k-th of `count` points of a triangle, equal in area: the square-root map of a golden-ratio sequence. */
function placeInTriangle(i: number, k: number, count: number, at: number, px: number, py: number, pz: number): void {
  const c = clippedCorners
  const far = Math.sqrt((k + 0.5) / count)
  const golden = (k + 0.5) * 0.6180339887498949
  const side = golden - Math.floor(golden)
  const toFirst = 1 - far
  const toSecond = far * (1 - side)
  const toThird = far * side
  const b = 3 * i
  aboveHorizonPoints[at] = px + toFirst * c[0]! + toSecond * c[b]! + toThird * c[b + 3]!
  aboveHorizonPoints[at + 1] = py + toFirst * c[1]! + toSecond * c[b + 1]! + toThird * c[b + 4]!
  aboveHorizonPoints[at + 2] = pz + toFirst * c[2]! + toSecond * c[b + 2]! + toThird * c[b + 5]!
}

/** A bare tube shines alike all round: a point, with shadows as soft as the tube is wide. */
function addBareTube(
  emitter: Emitter, owner: number, occluders: Occluders,
  px: number, py: number, pz: number, nx: number, ny: number, nz: number, tx: number, ty: number, tz: number,
  distance: number,
): void {
  const [cx, cy, cz] = emitter.centre
  // Nearer than its own radius the inverse square would run away: the tube's surface is as near as one can come.
  const away = Math.max(distance, emitter.radiusMetres)
  const blockers = occluders.consider(px, py, pz, cx, cy, cz, emitter.radiusMetres, owner)
  const visible = blockers === 0 ? 1 : occluders.visibleShare(px, py, pz, cx, cy, cz, emitter.front.widthMetres)
  const exposure = (visible * emitter.front.fluxShare) / (4 * Math.PI * away * away)
  const cosOut = ((cx - px) * nx + (cy - py) * ny + (cz - pz) * nz) / away
  const cosToLight = ((cx - px) * tx + (cy - py) * ty + (cz - pz) * tz) / away
  directSum.flat += exposure * Math.max(0, cosOut)
  directSum.domeOut += (exposure * (1 + cosOut)) / 2
  directSum.domeToLight += (exposure * (1 + cosToLight)) / 2
}
