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
  const reflectances = new Map(builtSet(scene).surfaces.map(({ id, swatch }) => [id, reflectanceOfSwatch(swatch)]))
  const areaShares = surfaceAreaShares(scene)
  const curve = new Float64Array(WAVELENGTH_COUNT) as ReflectanceSpectrum
  for (let i = 0; i < WAVELENGTH_COUNT; i++) {
    let returned = 0
    for (const { surfaceId, fluxShare, transmittance } of landings) {
      returned += fluxShare * (reflectances.get(surfaceId)![i]! * (1 - transmittance) + transmittance)
    }
    let mean = 0
    for (const { surfaceId, areaShare } of areaShares) mean += areaShare * reflectances.get(surfaceId)![i]!
    curve[i] = strayShare(returned, mean)
  }
  return curve
}
