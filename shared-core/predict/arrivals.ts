import type { Look } from '../plan/schema/look.ts'
import { reflectanceOfSwatch } from '../spectra/surface/swatch.ts'
import { WAVELENGTH_COUNT, type ReflectanceSpectrum } from '../spectra/spectrum.ts'
import { builtSet } from '../set/builtSet.ts'
import type { Scene } from '../set/scene.ts'
import { frontLuminance } from '../transport/frontLuminance.ts'
import { lightAtPoint } from '../transport/lightAtPoint.ts'
import { NOTHING_RECEIVED, type Receipt } from '../transport/receipt.ts'
import { firstLandings, strayShare, surfaceAreaShares } from '../transport/roomReturn.ts'
import { sitesOf, type Site } from './sites.ts'

/** One way that light takes to a site: its geometry, and the curve it picks up on the way. */
export interface Leg {
  /** Reflectance met on the way; null when none colours it. */
  readonly by: ReflectanceSpectrum | null
  readonly receipt: Receipt
}

/** One light at one site by every way, for one lumen-second of the bare tube. No power, gel or exposure in it. */
export interface Arrival {
  readonly legs: readonly Leg[]
  /** What the camera sees shine there by itself: the exposure of white that would look the same. */
  readonly shines: number
}

/** The geometry of a look: every light at every site. */
export interface Arrivals {
  readonly sites: readonly Site[]
  /** By light id, in the order of the sites. */
  readonly byLight: ReadonlyMap<string, readonly Arrival[]>
}

export function arrivalsOf(scene: Scene, points: Look['points']): Arrivals {
  const sites = sitesOf(scene, points)
  const byLight = new Map(scene.lights.map(({ id }) => [id, arrivalsOfLight(scene, id, sites)]))
  return { sites, byLight }
}

function arrivalsOfLight(scene: Scene, lightId: string, sites: readonly Site[]): readonly Arrival[] {
  const surfaces = new Map(builtSet(scene).surfaces.map((surface) => [surface.id, surface]))
  const astray = strayCurve(scene, lightId)
  return sites.map((site) => {
    const found = lightAtPoint(scene, lightId, site.receiver)
    const legs: Leg[] = []
    if (found.direct !== NOTHING_RECEIVED) legs.push({ by: null, receipt: found.direct })
    for (const leg of found.viaSurfaces) {
      const surface = surfaces.get(leg.surfaceId)
      if (!surface) continue
      legs.push({ by: leg.by === 'passed' ? null : reflectanceOfSwatch(surface.swatch), receipt: leg.receipt })
    }
    if (astray && found.cavity !== NOTHING_RECEIVED) legs.push({ by: astray, receipt: found.cavity })
    const shines = site.shines ? frontLuminance(scene, site.shines, lightId).exposureOfWhite : 0
    return { legs, shines }
  })
}

/**
 * Share of the light's flux that wanders in the room after its first return, at each wavelength: an integrating cavity
 * whose walls are the set's own, so that it takes their colour.
 */
function strayCurve(scene: Scene, lightId: string): ReflectanceSpectrum | null {
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
