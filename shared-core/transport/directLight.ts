import { type AngularProfile, angularProfile, profileAt } from '../photometry/angularProfile.ts'
import { type LatticeSize, unitLattice } from '../photometry/lattice.ts'
import { clippedCorners, polygonView, viewPolygon } from '../photometry/polygon.ts'
import type { Emitter } from '../set/emitter.ts'
import { type EmitterPoints, emitterPoints } from '../set/emitterPoints.ts'
import type { Occluders } from '../set/occluders.ts'

/**
 * Light straight from a front: the closed form of a uniform front, times the ratio that lobe, grid and shadows make of it
 * at fixed points, sum(w g V) / sum(w). With nothing to weigh, the closed form alone.
 */

/** What the last `addDirectLight` calls have added up: flat, dome out, dome to the light. Set to 0 before the first. */
export const directSum = { flat: 0, domeOut: 0, domeToLight: 0 }

/** Fixed points by how large the front looks: distance over its full width. */
function latticeFor(distanceInWidths: number): LatticeSize {
  return distanceInWidths > 6 ? 13 : distanceInWidths > 0.9 ? 34 : distanceInWidths > 0.4 ? 89 : 233
}

/** Below this the part of a front above the horizon holds too few of its points: it gets points of its own. */
const FEWEST_USABLE_SHARE = 0.5

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
  weighPoints(points, profile, emitter, blockers === 0 ? null : occluders, px, py, pz, nx, ny, nz, tx, ty, tz)
  directSum.domeOut += domeOut * ratio(weighed.domeOut, weighed.domeOutOpen)
  directSum.domeToLight += domeToLight * ratio(weighed.domeToLight, weighed.domeToLightOpen)
  if (!isLit) return
  if (isCut && weighed.usable < FEWEST_USABLE_SHARE * points.count) {
    placeAboveHorizon(emitter, cornerCount, px, py, pz)
    weighPoints(abovePoints, profile, emitter, blockers === 0 ? null : occluders, px, py, pz, nx, ny, nz, tx, ty, tz)
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
  points: EmitterPoints, profile: AngularProfile, emitter: Emitter, occluders: Occluders | null,
  px: number, py: number, pz: number, nx: number, ny: number, nz: number, tx: number, ty: number, tz: number,
): void {
  const { xyz, count, cellMetres } = points
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
    if (occluders !== null && light > 0) {
      const visible = occluders.visibleShare(sx, sy, sz, cellMetres)
      light *= visible > 0 && visible < 1 ? visibleQuarters(occluders, emitter, sx, sy, sz, cellMetres) : visible
    }
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

/** The four quarters of a patch that an edge crosses, each asked alone. */
function visibleQuarters(
  occluders: Occluders, { across, up }: Emitter, sx: number, sy: number, sz: number, cellMetres: number,
): number {
  const quarter = cellMetres / 4
  const half = cellMetres / 2
  let visible = 0
  for (let k = 0; k < 4; k++) {
    const u = (k & 1) === 0 ? quarter : -quarter
    const v = (k & 2) === 0 ? quarter : -quarter
    visible += occluders.visibleShare(
      sx + u * across[0] + v * up[0], sy + u * across[1] + v * up[1], sz + u * across[2] + v * up[2], half)
  }
  return visible / 4
}

/** Corners of the part above the horizon on the front, as u, v pairs. */
const cutOnFront = new Float64Array(2 * 66)
const abovePoints = { xyz: new Float64Array(3 * 89), count: 0, cellMetres: 0 }

/**
 * Points of the part of a front above the horizon: a lattice of its own over the clipped polygon that the last
 * `viewPolygon` left, so that even a sliver of a box right behind the subject gets its share of them.
 */
function placeAboveHorizon(emitter: Emitter, cornerCount: number, px: number, py: number, pz: number): void {
  const { across, up, centre } = emitter
  let left = Infinity
  let right = -Infinity
  let bottom = Infinity
  let top = -Infinity
  for (let i = 0; i < cornerCount; i++) {
    const x = clippedCorners[3 * i]! + px - centre[0]
    const y = clippedCorners[3 * i + 1]! + py - centre[1]
    const z = clippedCorners[3 * i + 2]! + pz - centre[2]
    const u = x * across[0] + y * across[1] + z * across[2]
    const v = x * up[0] + y * up[1] + z * up[2]
    cutOnFront[2 * i] = u
    cutOnFront[2 * i + 1] = v
    left = Math.min(left, u)
    right = Math.max(right, u)
    bottom = Math.min(bottom, v)
    top = Math.max(top, v)
  }
  const lattice = unitLattice(89)
  let count = 0
  for (let i = 0; i < lattice.length; i += 2) {
    const u = left + (right - left) * lattice[i]!
    const v = bottom + (top - bottom) * lattice[i + 1]!
    if (!isInCut(u, v, cornerCount)) continue
    abovePoints.xyz[3 * count] = centre[0] + u * across[0] + v * up[0]
    abovePoints.xyz[3 * count + 1] = centre[1] + u * across[1] + v * up[1]
    abovePoints.xyz[3 * count + 2] = centre[2] + u * across[2] + v * up[2]
    count++
  }
  abovePoints.count = count
  abovePoints.cellMetres = Math.sqrt((2 * (right - left) * (top - bottom)) / lattice.length)
}

function isInCut(u: number, v: number, cornerCount: number): boolean {
  let au = cutOnFront[2 * cornerCount - 2]!
  let av = cutOnFront[2 * cornerCount - 1]!
  for (let i = 0; i < cornerCount; i++) {
    const bu = cutOnFront[2 * i]!
    const bv = cutOnFront[2 * i + 1]!
    if ((bu - au) * (v - av) - (bv - av) * (u - au) < 0) return false
    au = bu
    av = bv
  }
  return true
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
  const visible = blockers === 0 ? 1 : occluders.visibleShare(cx, cy, cz, emitter.front.widthMetres)
  const exposure = (visible * emitter.front.fluxShare) / (4 * Math.PI * away * away)
  const cosOut = ((cx - px) * nx + (cy - py) * ny + (cz - pz) * nz) / away
  const cosToLight = ((cx - px) * tx + (cy - py) * ty + (cz - pz) * tz) / away
  directSum.flat += exposure * Math.max(0, cosOut)
  directSum.domeOut += (exposure * (1 + cosOut)) / 2
  directSum.domeToLight += (exposure * (1 + cosToLight)) / 2
}
