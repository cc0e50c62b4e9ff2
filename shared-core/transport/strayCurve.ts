import { builtSet } from '../set/builtSet.ts'
import type { Scene } from '../set/scene.ts'
import { reflectanceOfSwatch } from '../spectra/surface/swatch.ts'
import { WAVELENGTH_COUNT, type ReflectanceSpectrum } from '../spectra/spectrum.ts'
import { firstLandings, strayShare, surfaceAreaShares } from './roomReturn.ts'

/**
 * Share of the light's flux that wanders in the room after its first return, at each wavelength: an integrating cavity
 * whose walls are the set's own, so that it takes their colour.
 */
export function strayCurve(scene: Scene, lightId: string): ReflectanceSpectrum | null {
  const landings = firstLandings(scene, lightId)
  if (landings.length === 0) return null
  const { surfaces } = builtSet(scene)
  const reflectances = new Map(surfaces.map(({ id, swatch }) => [id, reflectanceOfSwatch(swatch)]))
  const areaShares = surfaceAreaShares(scene)
  // What a scrim lets through stays in the room as what it returns does.
  const stays = (surfaceId: string, transmittance: number, i: number): number =>
    reflectances.get(surfaceId)![i]! * (1 - transmittance) + transmittance
  const curve = new Float64Array(WAVELENGTH_COUNT) as ReflectanceSpectrum
  for (let i = 0; i < WAVELENGTH_COUNT; i++) {
    let returned = 0
    for (const { surfaceId, fluxShare, transmittance } of landings) {
      returned += fluxShare * stays(surfaceId, transmittance, i)
    }
    let mean = 0
    for (const { surfaceId, areaShare, transmittance } of areaShares) mean += areaShare * stays(surfaceId, transmittance, i)
    curve[i] = strayShare(returned, mean)
  }
  return curve
}
