import type { Look } from '../plan/schema/look.ts'
import { reflectanceOfSwatch } from '../spectra/surface/swatch.ts'
import type { ReflectanceSpectrum } from '../spectra/spectrum.ts'
import { builtSet } from '../set/builtSet.ts'
import type { Scene } from '../set/scene.ts'
import { frontLuminance } from '../transport/frontLuminance.ts'
import { lightAtPoint } from '../transport/lightAtPoint.ts'
import { NOTHING_RECEIVED, type Receipt } from '../transport/receipt.ts'
import { strayCurve } from '../transport/strayCurve.ts'
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

/** Geometry of a look: each of its lights at each site, by every way, for one lumen-second of its bare tube. */
export function arrivalsOf(scene: Scene, points: Look['points']): Arrivals {
  const sites = sitesOf(scene, points)
  const byLight = new Map(scene.lights.map(({ id }) => [id, arrivalsOfLight(scene, id, sites)]))
  return { sites, byLight }
}

/** One light at each of these sites, by every way; all for one lumen-second of its bare tube. */
export function arrivalsOfLight(scene: Scene, lightId: string, sites: readonly Site[]): readonly Arrival[] {
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
