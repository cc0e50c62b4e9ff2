import { builtSet } from '../set/builtSet.ts'
import type { Scene } from '../set/scene.ts'
import { landingOf } from './landing.ts'

/** Where one light's flux lands first. */
export interface FirstLanding {
  readonly surfaceId: string
  /** Share of the bare tube's flux that lands there. */
  readonly fluxShare: number
  /** Share of what lands that a scrim lets through; 0 for all that is solid. */
  readonly transmittance: number
}

/**
 * Where the flux of a light lands first, for each surface that gets any. What the subject or the back of the paper
 * swallows is not in it, so the shares add up to no more than the light's own share of flux.
 */
export function firstLandings(scene: Scene, lightId: string): readonly FirstLanding[] {
  const set = builtSet(scene)
  const light = set.lights.get(lightId)
  if (!light) return []
  const { surfaceShare } = landingOf(set.surroundings, light)
  return set.surfaces.flatMap(({ id, transmittance }, i) =>
    surfaceShare[i]! > 0 ? [{ surfaceId: id, fluxShare: surfaceShare[i]!, transmittance }] : [])
}

export interface AreaShare {
  readonly surfaceId: string
  readonly areaShare: number
  readonly transmittance: number
}

/** Each surface's share of all the area that light in the room can land on; the shares add up to 1. */
export function surfaceAreaShares(scene: Scene): readonly AreaShare[] {
  const { surfaces, surfaceAreaSquareMetres: whole } = builtSet(scene)
  return surfaces.map(({ id, areaSquareMetres, transmittance }) => ({ surfaceId: id, areaShare: areaSquareMetres / whole, transmittance }))
}

/**
 * Share of a light's flux that goes astray in the room after its first return: multiply a receiver's `cavity` by it.
 * The room is an integrating cavity: flux returned once lands evenly, and each landing returns the mean reflectance.
 *
 * @param returnedShare share of the bare tube's flux returned at the first landings: the sum of fluxShare times
 *   (reflectance x (1 - transmittance) + transmittance)
 * @param meanReflectance of all surfaces by area, 0-1; what a scrim lets through counts as returned, for it stays in the room
 */
export function strayShare(returnedShare: number, meanReflectance: number): number {
  return (returnedShare * meanReflectance) / (1 - Math.min(meanReflectance, 0.98))
}
