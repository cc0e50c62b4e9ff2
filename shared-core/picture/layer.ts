import { builtSet, type BuiltSet } from '../set/builtSet.ts'
import type { Scene } from '../set/scene.ts'
import { meshMaterials } from '../subject/mesh/subjectMesh.ts'
import { eyeLight } from './eyes.ts'
import { groundLight, type GroundLayer } from './groundLight.ts'
import { sheenOf, type Sheen } from './material.ts'
import { platesBetween, type Plate, type PlatesBetween } from './platesBetween.ts'
import { PlateShadows } from './plateShadows.ts'
import { addReturned, returnedLight, type ReturnedLight } from './returned.ts'
import { returnedColour, type ReturnedColour } from './returnedColour.ts'
import { addSheen, STRAND_MIRRORED } from './sheenLight.ts'
import { meanMirrored, mirroredAt, mirroredByCosine } from './sheenLobe.ts'
import { MESH_HAIR, type SeenSurface } from './seenSurface.ts'
import { shinesOf, type Fineness, type Shine } from './shine.ts'
import { lightSurface, type ShineOnSurface } from './surfaceLight.ts'
import type { SurfaceSamples } from './surfaceSamples.ts'
import { spreadOverAll, thinnedSurface } from './thinnedSurface.ts'
import type { View } from './view.ts'

/**
 * What one light does to the subject as the camera sees it, from geometry alone, for one lumen-second of its bare tube.
 * By slot of the seen surface; no power, gel, exposure or colour in it.
 */
export interface SurfaceLayer {
  /** Exposure that came straight or through a scrim, in 1/m2. */
  readonly direct: Float32Array
  /** Exposure that came back from room, boards and flats, its loss counted; drawn in the returned colour. */
  readonly returned: Float32Array
  /** What of the two the surface does not mirror: this much is left for its colour. The rest of the returned is mirrored evenly. */
  readonly directInside: Float32Array
  readonly returnedInside: Float32Array
  /** Mirrored towards the camera: the exposure of a perfect white that would look the same. */
  readonly sheen: Float32Array
  /** Mirrored by the eyes, by eye sample. */
  readonly eyes: Float32Array
}

/** One light on all that the camera sees. */
export interface Layer {
  readonly surface: SurfaceLayer
  /** By ground; null where it is not seen. */
  readonly grounds: readonly (GroundLayer | null)[]
  readonly returnedColour: ReturnedColour
}

/** Sheen of each mesh material; the eyes mirror for themselves. */
export function meshSheens(skinSheen: number): readonly Sheen[] {
  return meshMaterials.map((material) => sheenOf(material === 'eye' ? 'eye-white' : material, skinSheen))
}

/** What a light's returned light looks like, and how much of it comes from where: the same for subject and background. */
export interface Returned {
  readonly around: ReturnedLight
  readonly colour: ReturnedColour
}

export function returnedOf(scene: Scene, lightId: string): Returned {
  const around = returnedLight(scene, lightId)
  return { around, colour: returnedColour(scene, lightId, around) }
}

/**
 * A coarse layer is worked out on some of the slots and read off them for the others.
 * @param plates what may stand between this light and the subject: see platesBetween
 */
export function surfaceLayer(
  scene: Scene, samples: Pick<SurfaceSamples, 'surface' | 'mirrors'>, lightId: string, returned: Returned, plates: PlatesBetween,
  skinSheen: number, fineness: Fineness,
): SurfaceLayer {
  if (fineness === 'full') return layerOn(scene, samples, lightId, returned, plates, skinSheen, fineness)
  const thinned = thinnedSurface(samples.surface)
  const few = layerOn(scene, { ...samples, surface: thinned.few }, lightId, returned, plates, skinSheen, fineness)
  const [directInside, sheen, astray, returnedInside] = spreadOverAll(thinned, few.directInside, few.sheen, few.returned, few.returnedInside)
  return {
    // Pictures under a hand draw without it.
    get direct() { return spreadOverAll(thinned, few.direct, few.direct, few.direct, few.direct)[0] },
    directInside, sheen, returned: astray, returnedInside, eyes: few.eyes,
  }
}

function layerOn(
  scene: Scene, samples: Pick<SurfaceSamples, 'surface' | 'mirrors'>, lightId: string, { around, colour }: Returned, plates: PlatesBetween,
  skinSheen: number, fineness: Fineness,
): SurfaceLayer {
  const set = builtSet(scene)
  const light = set.lights.get(lightId)!
  const seen = samples.surface
  const sheens = meshSheens(skinSheen)
  const direct = new Float32Array(seen.count)
  const returned = new Float32Array(seen.count)
  const sheen = new Float32Array(seen.count)
  const one: ShineOnSurface = { exposure: new Float32Array(seen.count), visible: new Float32Array(seen.count) }
  for (const shine of shinesOf(set, light, seen.middle, fineness, (id) => colour.means.get(id) ?? 0)) {
    const between = shine.isPiece ? panelsBetween(set, shine, seen) : plates
    lightSurface(one, shine, seen, between.plates.length === 0 ? null : new PlateShadows(between, shine))
    const sum = shine.isReturned ? returned : direct
    for (let slot = 0; slot < seen.count; slot++) sum[slot] = sum[slot]! + one.exposure[slot]!
    if (shine.mirrored) addSheen(sheen, one, shine, shine.mirrored, seen, sheens)
  }
  addReturned(returned, around, colour, seen)
  return {
    direct, returned, sheen,
    ...inside(direct, returned, seen, sheens, light.emitters[0]!.centre),
    eyes: eyeLight(samples.mirrors, light.emitters, solidOnes(set, plates)),
  }
}

/** Plates that let nothing through. A scrim's glow is not mirrored by the eyes: the front behind it stands for it. */
function solidOnes({ surfaces }: BuiltSet, { plates }: PlatesBetween): readonly Plate[] {
  const cloths = new Set(surfaces.filter(({ transmittance }) => transmittance > 0).flatMap(({ panels }) => panels.map(({ centre }) => centre)))
  return plates.filter(({ centre }) => !cloths.has(centre))
}

/** Between a piece and the subject other pieces may stand; fronts of lights are too few there to be worth asking. */
function panelsBetween(set: BuiltSet, shine: Shine, { middle, radiusMetres }: SeenSurface): PlatesBetween {
  return platesBetween({ ...set, lights: new Map() }, -1, shine, middle, radiusMetres)
}

/** One light on every ground that is seen. */
export function groundLayers(
  scene: Scene, view: View, lightId: string, { colour }: Returned, fineness: Fineness,
): readonly (GroundLayer | null)[] {
  const set = builtSet(scene)
  const light = set.lights.get(lightId)!
  return view.nets.map((net) => (net === null ? null : groundLight(set, light, view.ground, net, colour, fineness)))
}

/**
 * What light and eye leave for the colour below a surface that mirrors: (1 - a(l)) (1 - a(v)) / (1 - mean a), which
 * gives and takes alike in both directions and never makes light (Shirley et al. 1997; Kelemen and Szirmay-Kalos 2001).
 */
function inside(
  direct: Float32Array, returned: Float32Array, seen: SeenSurface, sheens: readonly Sheen[], lightCentre: readonly [number, number, number],
): Pick<SurfaceLayer, 'directInside' | 'returnedInside'> {
  const tables = sheens.map(mirroredByCosine)
  const means = tables.map(meanMirrored)
  const directInside = new Float32Array(seen.count)
  const returnedInside = new Float32Array(seen.count)
  const { subject: { normals }, vertices, positions, facing, materials } = seen
  for (let slot = 0; slot < seen.count; slot++) {
    const material = materials[slot]!
    if (material === MESH_HAIR) {
      directInside[slot] = direct[slot]! * (1 - STRAND_MIRRORED)
      returnedInside[slot] = returned[slot]! * (1 - STRAND_MIRRORED)
      continue
    }
    const table = tables[material]!
    const towardsEye = 1 - mirroredAt(table, facing[slot]!)
    returnedInside[slot] = returned[slot]! * towardsEye
    if (direct[slot] === 0) continue
    const at = 3 * slot
    const v = 3 * vertices[slot]!
    const x = lightCentre[0] - positions[at]!
    const y = lightCentre[1] - positions[at + 1]!
    const z = lightCentre[2] - positions[at + 2]!
    const cos = (x * normals[v]! + y * normals[v + 1]! + z * normals[v + 2]!) / Math.sqrt(x * x + y * y + z * z)
    directInside[slot] = (direct[slot]! * towardsEye * (1 - mirroredAt(table, cos))) / (1 - means[material]!)
  }
  return { directInside, returnedInside }
}
