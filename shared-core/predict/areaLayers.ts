import type { Vector } from '../arithmetic/vector.ts'
import type { EyeMirrors } from '../picture/eyes.ts'
import { returnedOf, surfaceLayer, type Returned, type SurfaceLayer } from '../picture/layer.ts'
import { platesBetween } from '../picture/platesBetween.ts'
import { poseSubject, type PosedSubject } from '../picture/posedSubject.ts'
import type { ReturnedColour } from '../picture/returnedColour.ts'
import { seenSurface, type Region, type SeenSurface } from '../picture/seenSurface.ts'
import { builtSet } from '../set/builtSet.ts'
import type { Scene } from '../set/scene.ts'
import { areaAsset, cornerWeights, PATCH_CORNERS } from '../subject/areas/areaAsset.ts'
import { TURNED_AWAY_COSINE } from './sites.ts'
import { Stage, StagesByKey } from './stage.ts'

/** One light at one named area of the subject: a slot of the picture's surface layer, read between the corners of a facet. */
export type AreaLight = { readonly [part in Exclude<keyof SurfaceLayer, 'eyes'>]: number }

/** One light on all the named areas, in the order of `subjectAreas`. */
export interface AreaLayer {
  readonly areas: readonly AreaLight[]
  readonly returnedColour: ReturnedColour
}

const ALL_CORNERS = new Uint8Array(cornerWeights.length).fill(1)
const NO_EYES: EyeMirrors = { count: 0, rays: new Float64Array(0) }

/**
 * The picture's own layers on the named areas alone, by light. A moved light makes one layer, a moved camera makes them
 * all: the sheen looks at it.
 */
export class AreaLayers {
  private readonly all = new Stage<ReadonlyMap<string, AreaLayer>>()
  private readonly posed = new Stage<PosedSubject>()
  private readonly seen = new Stage<SeenSurface>()
  private readonly layers = new StagesByKey<AreaLayer>()

  of(scene: Scene, skinSheen: number): ReadonlyMap<string, AreaLayer> {
    return this.all.of([scene, skinSheen], () => {
      const set = builtSet(scene)
      const posed = this.posed.of([scene.subject], () => poseSubject(areaAsset, scene.subject))
      const seen = this.seen.of([posed, scene.camera], () => areasSeen(posed, set.view.place))
      const found = new Map([...set.lights.values()].map(({ id, index, light, emitters }) => {
        const plates = platesBetween(set, index, emitters[0]!, seen.middle, seen.radiusMetres)
        return [id, this.layers.of(id, [light, set.surroundings, seen, skinSheen, ...plates.lights], () => {
          const returned = returnedOf(scene, id)
          return areaLayer(surfaceLayer(scene, { surface: seen, mirrors: NO_EYES }, id, returned, plates, skinSheen, 'full'), returned)
        })] as const
      }))
      this.layers.keepOnly(new Set(found.keys()))
      return found
    })
  }
}

/**
 * The areas' facets as the camera sees them. One that is turned away from it, such as the jaw from behind, is read squarely,
 * as with a spot meter carried round to it: from the camera it has no colour.
 */
function areasSeen(posed: PosedSubject, eye: Vector): SeenSurface {
  const seen = seenSurface(posed, ALL_CORNERS, eye)
  const { restNormals, restSights, facing } = seen
  for (let first = 0; first < seen.count; first += PATCH_CORNERS) {
    let cosine = 0
    for (let c = first; c < first + PATCH_CORNERS; c++) {
      for (let k = 3 * c; k < 3 * c + 3; k++) cosine += cornerWeights[c]! * restNormals[k]! * restSights[k]!
    }
    if (cosine > TURNED_AWAY_COSINE) continue
    restSights.set(restNormals.subarray(3 * first, 3 * (first + PATCH_CORNERS)), 3 * first)
    facing.fill(1, first, first + PATCH_CORNERS)
  }
  return { ...seen, ...regionsOfFacets(seen) }
}

/** Each facet is a region of its own, or two where its corners follow the head by different steps. */
function regionsOfFacets({ count, steps, restPositions }: SeenSurface): Pick<SeenSurface, 'regions' | 'regionOf'> {
  const regions: Region[] = []
  const regionOf = Uint16Array.from({ length: count }, (_, slot) => {
    const isNew = slot % PATCH_CORNERS === 0 || steps[slot] !== steps[slot - 1]
    if (isNew) regions.push({ step: steps[slot]!, middle: [restPositions[3 * slot]!, restPositions[3 * slot + 1]!, restPositions[3 * slot + 2]!], halfMetres: 0 })
    return regions.length - 1
  })
  return { regions, regionOf }
}

function areaLayer(layer: SurfaceLayer, { colour }: Returned): AreaLayer {
  const areas = Array.from({ length: cornerWeights.length / PATCH_CORNERS }, (_, area): AreaLight => {
    const between = (values: Float32Array): number => {
      let sum = 0
      for (let c = PATCH_CORNERS * area; c < PATCH_CORNERS * (area + 1); c++) sum += cornerWeights[c]! * values[c]!
      return sum
    }
    return {
      direct: between(layer.direct), returned: between(layer.returned), directInside: between(layer.directInside),
      returnedInside: between(layer.returnedInside), sheen: between(layer.sheen),
    }
  })
  return { areas, returnedColour: colour }
}
