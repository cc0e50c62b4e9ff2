import { type AngularProfile, angularProfile, profileAt } from '../photometry/angularProfile.ts'
import { discCosineIntegral } from '../photometry/disc.ts'
import type { CellCount } from '../photometry/frontCells.ts'
import { polygonView, viewPolygon } from '../photometry/polygon.ts'
import { domeWeight, flatWeight } from '../photometry/receptor.ts'
import type { Emitter } from '../set/emitter.ts'
import { type EmitterPoints, emitterPoints } from '../set/emitterPoints.ts'
import type { Occluders } from '../set/occluders.ts'

/**
 * Light straight from a front: the closed form of a uniform front, times the ratio that lobe, grid and shadows make of it
 * at fixed points, sum(w g V) / sum(w). With nothing to weigh, the closed form alone.
 */

/** What the last `addDirectLight` calls have added up: flat, dome out, dome to the light. Set to 0 before the first. */
export const directSum = { flat: 0, domeOut: 0, domeToLight: 0 }

/** Cells by how large the front looks: distance over its full width. */
function cellsFor(distanceInWidths: number): CellCount {
  return distanceInWidths > 4 ? 16 : distanceInWidths > 0.7 ? 81 : distanceInWidths > 0.35 ? 144 : 256
}

/**
 * Adds what one front gives at a point to `directSum`.
 *
 * @param owner index of the light, whose own fronts do not block it
 * @param px,py,pz the point
 * @param nx,ny,nz the way a flat receptor and a dome face
 * @param tx,ty,tz the way to the light's front, for a dome turned to it
 * @param wantsDomes false where only a surface is lit
 * @param cells into which the front is cut where something has to be weighed; by how large it looks unless said
 */
export function addDirectLight(
  emitter: Emitter, owner: number, occluders: Occluders,
  px: number, py: number, pz: number, nx: number, ny: number, nz: number, tx: number, ty: number, tz: number,
  wantsDomes: boolean, cells?: CellCount,
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
  const height = dx * axis[0] + dy * axis[1] + dz * axis[2]
  if (height <= 0) return
  viewPolygon(emitter.corners, emitter.outline.length, px, py, pz, nx, ny, nz)
  const isLit = polygonView.aboveHorizon > 0
  if (!isLit && !wantsDomes) return
  const radiance = emitter.axialRadiancePerLumenSecond
  const { solidAngle, x, y, z, isCut, aboveHorizon } = polygonView
  const isWholeDisc = emitter.front.shape === 'disc' && isLit && !isCut
  const flat = radiance * (isWholeDisc ? wholeDisc(emitter, height, dx, dy, dz, nx, ny, nz) : aboveHorizon)
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
  const points = emitterPoints(emitter, cells ?? cellsFor(distance / (2 * emitter.radiusMetres)))
  if (!wantsDomes) {
    const visible = flatShare(points, profile, emitter, blockers === 0 ? null : occluders, px, py, pz, nx, ny, nz)
    if (visible !== null) {
      directSum.flat += flat * visible
      return
    }
  }
  weighPoints(points, profile, emitter, blockers === 0 ? null : occluders, px, py, pz, nx, ny, nz, tx, ty, tz)
  directSum.domeOut += domeOut * ratio(weighed.domeOut, weighed.domeOutOpen)
  directSum.domeToLight += domeToLight * ratio(weighed.domeToLight, weighed.domeToLightOpen)
  if (!isLit) return
  // A sliver above the horizon may hold no cell's middle: then the front as a whole says what is visible.
  directSum.flat += flat * (weighed.flatOpen > 0
    ? weighed.flat / weighed.flatOpen : ratio(weighed.domeToLight, weighed.domeToLightOpen))
}

/** Cosine integral of a round front that the horizon does not cut. */
function wholeDisc(
  { axis, front }: Emitter, height: number, dx: number, dy: number, dz: number, nx: number, ny: number, nz: number,
): number {
  const x = dx - height * axis[0]
  const y = dy - height * axis[1]
  const z = dz - height * axis[2]
  const offset = Math.sqrt(x * x + y * y + z * z)
  const cosToDisc = -(nx * axis[0] + ny * axis[1] + nz * axis[2])
  const cosToAxis = offset > 0 ? -(nx * x + ny * y + nz * z) / offset : 0
  return discCosineIntegral(front.widthMetres / 2, height, offset, cosToDisc, cosToAxis)
}

function ratio(part: number, whole: number): number {
  return whole > 0 ? part / whole : 0
}

/**
 * Share of a front's light on a flat receptor that lobe, grid and shadows leave, 0-1; null where no cell's middle is above
 * the horizon. The same sum as `weighPoints` takes, without the domes.
 */
function flatShare(
  { xyz, count, shares, cellWidthMetres, cellHeightMetres }: EmitterPoints, profile: AngularProfile, emitter: Emitter,
  occluders: Occluders | null, px: number, py: number, pz: number, nx: number, ny: number, nz: number,
): number | null {
  const cell = Math.sqrt(cellWidthMetres * cellHeightMetres)
  const [ax, ay, az] = emitter.axis
  let flat = 0
  let flatOpen = 0
  for (let i = 0; i < count; i++) {
    const sx = xyz[3 * i]!
    const sy = xyz[3 * i + 1]!
    const sz = xyz[3 * i + 2]!
    const x = sx - px
    const y = sy - py
    const z = sz - pz
    const out = x * nx + y * ny + z * nz
    const before = -(x * ax + y * ay + z * az)
    if (out <= 0 || before <= 0) continue
    const inverseSquare = 1 / (x * x + y * y + z * z)
    const weight = before * out * inverseSquare * inverseSquare * shares[i]!
    flatOpen += weight
    const light = profile.isUniform ? 1 : profileAt(profile, before * Math.sqrt(inverseSquare))
    if (light <= 0) continue
    if (occluders === null) {
      flat += weight * light
      continue
    }
    const visible = occluders.visibleShare(sx, sy, sz, cell)
    flat += weight * light * (visible > 0 && visible < 1
      ? visibleQuarters(occluders, emitter, sx, sy, sz, cellWidthMetres, cellHeightMetres) : visible)
  }
  return flatOpen > 0 ? flat / flatOpen : null
}

const weighed = { flat: 0, flatOpen: 0, domeOut: 0, domeOutOpen: 0, domeToLight: 0, domeToLightOpen: 0 }

function weighPoints(
  points: EmitterPoints, profile: AngularProfile, emitter: Emitter, occluders: Occluders | null,
  px: number, py: number, pz: number, nx: number, ny: number, nz: number, tx: number, ty: number, tz: number,
): void {
  const { xyz, count, shares, cellWidthMetres, cellHeightMetres } = points
  const cell = Math.sqrt(cellWidthMetres * cellHeightMetres)
  const [ax, ay, az] = emitter.axis
  let flat = 0
  let flatOpen = 0
  let domeOut = 0
  let domeOutOpen = 0
  let domeToLight = 0
  let domeToLightOpen = 0
  for (let i = 0; i < count; i++) {
    const sx = xyz[3 * i]!
    const sy = xyz[3 * i + 1]!
    const sz = xyz[3 * i + 2]!
    const x = sx - px
    const y = sy - py
    const z = sz - pz
    const inverseSquare = 1 / (x * x + y * y + z * z)
    const inverse = Math.sqrt(inverseSquare)
    const cosAtFront = -(x * ax + y * ay + z * az) * inverse
    if (cosAtFront <= 0) continue
    const weight = cosAtFront * inverseSquare * shares[i]!
    const cosOut = (x * nx + y * ny + z * nz) * inverse
    const outWeight = weight * domeWeight(cosOut)
    const toLightWeight = weight * domeWeight((x * tx + y * ty + z * tz) * inverse)
    domeOutOpen += outWeight
    domeToLightOpen += toLightWeight
    let light = profileAt(profile, cosAtFront)
    if (occluders !== null && light > 0) {
      const visible = occluders.visibleShare(sx, sy, sz, cell)
      light *= visible > 0 && visible < 1
        ? visibleQuarters(occluders, emitter, sx, sy, sz, cellWidthMetres, cellHeightMetres) : visible
    }
    domeOut += outWeight * light
    domeToLight += toLightWeight * light
    if (cosOut <= 0) continue
    flatOpen += weight * cosOut
    flat += weight * cosOut * light
  }
  weighed.flat = flat
  weighed.flatOpen = flatOpen
  weighed.domeOut = domeOut
  weighed.domeOutOpen = domeOutOpen
  weighed.domeToLight = domeToLight
  weighed.domeToLightOpen = domeToLightOpen
}

/** A cell that an edge crosses is asked again in quarters. */
function visibleQuarters(
  occluders: Occluders, { across, up }: Emitter, sx: number, sy: number, sz: number, cellWidth: number, cellHeight: number,
): number {
  const halfCell = Math.sqrt(cellWidth * cellHeight) / 2
  let sum = 0
  for (let k = 0; k < 4; k++) {
    const u = ((k & 1) - 0.5) * 0.5 * cellWidth
    const v = ((k >> 1) - 0.5) * 0.5 * cellHeight
    sum += occluders.visibleShare(
      sx + u * across[0] + v * up[0], sy + u * across[1] + v * up[1], sz + u * across[2] + v * up[2], halfCell)
  }
  return sum / 4
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
  directSum.flat += exposure * flatWeight(cosOut)
  directSum.domeOut += exposure * domeWeight(cosOut)
  directSum.domeToLight += exposure * domeWeight(cosToLight)
}
