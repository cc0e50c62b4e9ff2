import { cosine, sine } from '../arithmetic/portable.ts'
import { angularProfile, sineAtFluxShare } from '../photometry/angularProfile.ts'
import type { StandingLight } from '../set/builtSet.ts'
import type { Emitter } from '../set/emitter.ts'
import { emitterPoints } from '../set/emitterPoints.ts'
import { NOBODY } from '../set/occluders.ts'
import type { PatchedPanel } from '../set/patches.ts'
import type { SceneLight } from '../set/scene.ts'
import type { Surroundings } from '../set/surroundings.ts'
import { addDirectLight, directSum } from './directLight.ts'
import { SURFACE_CLEARANCE_METRES } from './patchView.ts'

/**
 * Where one light lands first.
 *
 * Room and paper: fixed rays, each carrying an equal share of the flux, so that no energy is made or lost however narrow
 * the beam. Pieces stand near and shape the light, so their patches are lit in closed form like any other place.
 */
export interface Landing {
  /** Exposure of each patch, lux-seconds for each lumen-second of the bare tube. */
  readonly patchExposure: Float64Array
  /** Share of the bare tube's flux that lands on each surface. */
  readonly surfaceShare: Float64Array
}

/** Of a light; shared out among its fronts by flux. */
const RAYS = 128
const FEWEST_RAYS = 16
/** Steps of an additive recurrence in four dimensions: powers of the root of x^5 = x + 1 (Roberts 2018). */
const STEP = [0.8566748838545029, 0.733891856627126, 0.6287067210378087, 0.5385972572236101] as const

const remembered = new WeakMap<SceneLight, { readonly surroundings: Surroundings; readonly landing: Landing }>()

/** Landing of a light, remembered while the light and its surroundings are the same objects. */
export function landingOf(surroundings: Surroundings, light: StandingLight): Landing {
  const before = remembered.get(light.light)
  if (before?.surroundings === surroundings) return before.landing
  const landing: Landing = {
    patchExposure: new Float64Array(surroundings.patches.count),
    surfaceShare: new Float64Array(surroundings.surfaces.length),
  }
  const flux = light.emitters.reduce((sum, { front }) => sum + front.fluxShare, 0)
  for (const emitter of light.emitters) {
    sendRays(surroundings, emitter, Math.max(FEWEST_RAYS, Math.round((RAYS * emitter.front.fluxShare) / flux)), landing)
    lightPieces(surroundings, emitter, landing)
  }
  remembered.set(light.light, { surroundings, landing })
  return landing
}

function lightPieces(surroundings: Surroundings, emitter: Emitter, landing: Landing): void {
  const { patches, surfaces, occluders } = surroundings
  for (const { surfaceIndex, panel, first, columns, rows } of patches.panels) {
    if (!surfaces[surfaceIndex]!.id.startsWith('piece:')) continue
    const [nx, ny, nz] = panel.normal
    const farthest = (emitter.centre[0] - panel.centre[0]) * nx + (emitter.centre[1] - panel.centre[1]) * ny +
      (emitter.centre[2] - panel.centre[2]) * nz + emitter.radiusMetres
    if (farthest <= 0) continue
    for (let i = first; i < first + columns * rows; i++) {
      directSum.flat = 0
      addDirectLight(emitter, NOBODY, occluders,
        patches.centres[3 * i]! + nx * SURFACE_CLEARANCE_METRES,
        patches.centres[3 * i + 1]! + ny * SURFACE_CLEARANCE_METRES,
        patches.centres[3 * i + 2]! + nz * SURFACE_CLEARANCE_METRES,
        nx, ny, nz, nx, ny, nz, false)
      landing.patchExposure[i]! += directSum.flat
    }
  }
}

const ray = { x: 0, y: 0, z: 0 }

function sendRays(surroundings: Surroundings, emitter: Emitter, rays: number, landing: Landing): void {
  const { front, axis, across, up, centre } = emitter
  const isTube = front.shape === 'sphere'
  const profile = angularProfile(front.lobeExponent, front.grid)
  const fluxPerRay = (front.fluxShare * (isTube ? 1 : profile.passShare)) / rays
  const points = emitterPoints(emitter, 81)
  for (let i = 0; i < rays; i++) {
    const share = fraction(0.5 + i * STEP[0])
    const turn = 2 * Math.PI * fraction(0.5 + i * STEP[1])
    const sineOff = isTube ? Math.sqrt(1 - (2 * share - 1) * (2 * share - 1)) : sineAtFluxShare(profile, share)
    const cosOff = isTube ? 2 * share - 1 : Math.sqrt(Math.max(0, 1 - sineOff * sineOff))
    const u = sineOff * cosine(turn)
    const v = sineOff * sine(turn)
    ray.x = cosOff * axis[0] + u * across[0] + v * up[0]
    ray.y = cosOff * axis[1] + u * across[1] + v * up[1]
    ray.z = cosOff * axis[2] + u * across[2] + v * up[2]
    if (isTube) {
      land(surroundings, centre[0], centre[1], centre[2], fluxPerRay, landing)
    } else {
      const k = 3 * Math.floor(fraction(0.5 + i * STEP[2]) * points.count)
      land(surroundings, points.xyz[k]!, points.xyz[k + 1]!, points.xyz[k + 2]!, fluxPerRay, landing)
    }
  }
}

function fraction(x: number): number {
  return x - Math.floor(x)
}

/** Follows `ray` to the first surface and leaves its flux there, unless the subject swallows it. */
function land(surroundings: Surroundings, px: number, py: number, pz: number, flux: number, landing: Landing): void {
  const { patches, surfaces, occluders } = surroundings
  let nearest = Infinity
  let met: PatchedPanel | null = null
  for (const patched of patches.panels) {
    const { normal, centre, across, up, halfWidthMetres, halfHeightMetres } = patched.panel
    const slope = ray.x * normal[0] + ray.y * normal[1] + ray.z * normal[2]
    if (slope >= -1e-12) continue
    const cx = centre[0] - px
    const cy = centre[1] - py
    const cz = centre[2] - pz
    const distance = (cx * normal[0] + cy * normal[1] + cz * normal[2]) / slope
    if (distance <= 1e-6 || distance >= nearest) continue
    const x = distance * ray.x - cx
    const y = distance * ray.y - cy
    const z = distance * ray.z - cz
    if (Math.abs(x * across[0] + y * across[1] + z * across[2]) > halfWidthMetres) continue
    if (Math.abs(x * up[0] + y * up[1] + z * up[2]) > halfHeightMetres) continue
    nearest = distance
    met = patched
  }
  // A light outside the walls, or aimed out of an open side: its light leaves the set.
  if (met === null) return
  const short = nearest * (1 - 1e-6)
  const x = px + short * ray.x
  const y = py + short * ray.y
  const z = pz + short * ray.z
  if (occluders.consider(px, py, pz, x, y, z, 0, NOBODY) > 0 && occluders.visibleShare(x, y, z, 0) < 0.5) return
  landing.surfaceShare[met.surfaceIndex]! += flux
  if (!surfaces[met.surfaceIndex]!.id.startsWith('piece:')) {
    spread(met, px + nearest * ray.x, py + nearest * ray.y, pz + nearest * ray.z, flux, landing.patchExposure)
  }
}

/** Shares a ray's flux among the four patches around its end, so that nothing jumps as a light is dragged. */
function spread(patched: PatchedPanel, x: number, y: number, z: number, flux: number, patchExposure: Float64Array): void {
  const { panel, columns, rows, first, patchAreaSquareMetres } = patched
  const { centre, across, up, halfWidthMetres, halfHeightMetres } = panel
  const dx = x - centre[0]
  const dy = y - centre[1]
  const dz = z - centre[2]
  const u = ((dx * across[0] + dy * across[1] + dz * across[2]) / halfWidthMetres + 1) * 0.5 * columns - 0.5
  const v = ((dx * up[0] + dy * up[1] + dz * up[2]) / halfHeightMetres + 1) * 0.5 * rows - 0.5
  const column = Math.min(Math.max(Math.floor(u), 0), Math.max(0, columns - 2))
  const row = Math.min(Math.max(Math.floor(v), 0), Math.max(0, rows - 2))
  const right = Math.min(Math.max(u - column, 0), 1)
  const above = Math.min(Math.max(v - row, 0), 1)
  const exposure = flux / patchAreaSquareMetres
  const nextColumn = Math.min(column + 1, columns - 1)
  const nextRow = Math.min(row + 1, rows - 1)
  patchExposure[first + row * columns + column]! += exposure * (1 - right) * (1 - above)
  patchExposure[first + row * columns + nextColumn]! += exposure * right * (1 - above)
  patchExposure[first + nextRow * columns + column]! += exposure * (1 - right) * above
  patchExposure[first + nextRow * columns + nextColumn]! += exposure * right * above
}
