import { clippedEdges, type ClippedEdges } from '../picture/clippedEdges.ts'
import { composeLinear, composeRoom, type ComposeRoom, type LightTable, type LitLayer } from '../picture/compose.ts'
import { develop, type Development, type DisplaySpace } from '../picture/develop.ts'
import { edgePixels, type EdgePixels } from '../picture/edgePixels.ts'
import type { GroundLayer } from '../picture/groundLight.ts'
import { groundLayers, returnedOf, surfaceLayer, type Layer, type Returned, type SurfaceLayer } from '../picture/layer.ts'
import { eyesCrop } from '../picture/eyesCrop.ts'
import { platesBetween } from '../picture/platesBetween.ts'
import { poseSubject, type PosedSubject } from '../picture/posedSubject.ts'
import { strayLight } from '../picture/strayLight.ts'
import { surfaceSamples, type SurfaceSamples } from '../picture/surfaceSamples.ts'
import { mayBeSeen, viewOf, type View } from '../picture/view.ts'
import type { Look } from '../plan/schema/look.ts'
import type { Plan } from '../plan/schema/plan.ts'
import { builtSet } from '../set/builtSet.ts'
import { cameraView } from '../set/camera.ts'
import type { FrameCrop, Scene } from '../set/scene.ts'
import type { SubjectAsset } from '../subject/asset/format.ts'
import { FiringStage, type FiredLight } from './firing.ts'
import { ambientTable, lightTable, pictureReflectances, pictureTransmittances } from './pictureTables.ts'
import type { Taking } from './prediction.ts'
import { SceneStage } from './sceneOfLook.ts'
import { LayerMemory } from './layerMemory.ts'
import { Stage, StagesByKey } from './stage.ts'
import { takingOf } from './taking.ts'

/** A picture as the display shows it, and the linear camera channels it came from. */
export interface Picture {
  readonly width: number
  readonly height: number
  /** Four bytes a pixel, in the space asked for. The caller's own: every `draw` makes new ones. */
  readonly rgba: Uint8ClampedArray<ArrayBuffer>
  /** Three camera channels a pixel, 1 is clip, before the lens's stray light. Written over by the next `draw`. */
  readonly linear: Float32Array
  /** Where the display shows something else than the clipped `linear`. */
  readonly edges: ClippedEdges
}

export interface PictureRequest {
  readonly width: number
  readonly height: number
  /** Only this light; null for all that are on, and the room's own light. */
  readonly soloLightId: string | null
  /** Fewer points a light, for a picture under a hand. */
  readonly coarse: boolean
  /** sRGB unless said. */
  readonly space?: DisplaySpace
  /** This part of the Frame fills the picture; the whole Frame unless said. */
  readonly crop?: FrameCrop
}

/** Everything a picture is summed from: layers by light, and their colours. */
export interface PictureParts {
  readonly look: Look
  readonly scene: Scene
  readonly view: View
  readonly taking: Taking
  /** In set-up order; those that are on, or the one asked for. */
  readonly lights: readonly (LitLayer & { readonly fired: FiredLight })[]
  readonly ambient: Float64Array
  readonly development: Development
}

/**
 * Draws looks of a plan with one subject's surface. Remembers its stages: a changed power only sums layers anew, a moved
 * light makes one layer, a moved camera makes them all.
 */
export class LookPicture {
  private readonly scene = new SceneStage()
  private readonly cropped = new Stage<Scene>()
  private readonly firing = new FiringStage()
  private readonly posed = new Stage<PosedSubject>()
  private readonly samples = new Stage<SurfaceSamples>()
  private readonly view = new Stage<View>()
  private readonly returned = new StagesByKey<Returned>()
  private readonly surfaces = new LayerMemory<SurfaceLayer>()
  private readonly grounds = new LayerMemory<readonly (GroundLayer | null)[]>()
  private readonly tables = new StagesByKey<LightTable>()
  private readonly room = new Stage<ComposeRoom>()
  private readonly edges = new Stage<EdgePixels>()
  private readonly linear = new Stage<Float32Array>()
  private readonly development = new Stage<Development>()

  constructor(private readonly asset: SubjectAsset) {}

  /** @throws RangeError when the plan has no such look. */
  draw(plan: Plan, lookId: string, request: PictureRequest): Picture {
    const { width, height } = request
    const { view, lights, ambient, development } = this.parts(plan, lookId, request)
    const room = this.room.of([view], () => composeRoom(view))
    const linear = this.linear.of([width, height], () => new Float32Array(3 * width * height))
    composeLinear(view, lights, ambient, room, linear, request.coarse)
    const stray = strayLight(linear, width, height, development.veilingGlare)
    const edges = clippedEdges(view, this.edges.of([view], () => edgePixels(view)), lights, room, linear, stray)
    const rgba = new Uint8ClampedArray(4 * width * height)
    develop(linear, width, height, development, rgba, stray, edges, request.coarse)
    return { width, height, rgba, linear, edges }
  }

  /** Layers and colours without a picture: what a reading of one place needs. @throws RangeError as `draw` */
  parts(plan: Plan, lookId: string, { width, height, soloLightId, coarse, space, crop }: PictureRequest): PictureParts {
    const look = lookOf(plan, lookId)
    const whole = this.scene.of(plan, look)
    const scene = crop === undefined ? whole : this.cropped.of([whole, crop.left, crop.top, crop.width, crop.height], () =>
      ({ ...whole, camera: { ...whole.camera, crop } }))
    const view = this.viewOf(scene, width, height)
    const fired = this.firing.lights(plan, look)
    const curves = pictureReflectances(look, view)
    const taking = takingOf(look.camera)
    const lights = fired.flatMap((one) => {
      const isSeen = soloLightId === null ? one.light.on : one.id === soloLightId
      if (!isSeen) return []
      const layer = this.layerOf(scene, view, one.id, look.subject.skinSheen, coarse)
      const { palette, luminousEnergyLumenSeconds } = one.firing
      const table = this.tables.of(one.id, [palette, luminousEnergyLumenSeconds, layer.returnedColour.curve, taking.clipLuxSeconds, ...curves], () =>
        lightTable(one.firing, layer, curves, taking.clipLuxSeconds))
      return [{ fired: one, layer, table }]
    })
    const ids = new Set(fired.map(({ id }) => id))
    for (const stages of [this.returned, this.surfaces, this.grounds, this.tables]) stages.keepOnly(ids)
    const { whiteBalanceKelvin, veilingGlare } = look.camera
    return {
      look, scene, view, taking, lights,
      ambient: soloLightId === null
        ? ambientTable(this.firing.ambient(plan, look), curves, pictureTransmittances(view), taking.clipLuxSeconds)
        : new Float64Array(3 * curves.length),
      development: this.development.of([whiteBalanceKelvin, veilingGlare, look.finish, space], () =>
        ({ whiteBalanceKelvin, veilingGlare, finish: look.finish, space: space ?? 'srgb' })),
    }
  }

  /**
   * The part of the Frame around the eyes, or null where the camera sees none. The sizes are shares of the Frame, and
   * grow where the eyes would not fit. @throws RangeError as `draw`
   */
  eyesCrop(plan: Plan, lookId: string, width: number, height: number): FrameCrop | null {
    const scene = this.scene.of(plan, lookOf(plan, lookId))
    return eyesCrop(this.posedOf(scene), cameraView(scene.camera), width, height)
  }

  private posedOf({ subject }: Scene): PosedSubject {
    return this.posed.of([subject], () => poseSubject(this.asset, subject))
  }

  private viewOf(scene: Scene, width: number, height: number): View {
    const set = builtSet(scene)
    const posed = this.posedOf(scene)
    const samples = this.samples.of([posed, scene.camera, width, height], () => surfaceSamples(posed, set.view, width, height))
    const frontsInSight = [...set.lights.values()].filter(({ emitters }) => emitters.some((emitter) => mayBeSeen(set.view, emitter)))
    return this.view.of([samples, scene.backdrop, scene.pieces, scene.room, ...frontsInSight.map(({ light }) => light)], () =>
      viewOf(scene, samples, width, height))
  }

  private layerOf(scene: Scene, view: View, lightId: string, skinSheen: number, coarse: boolean): Layer {
    const set = builtSet(scene)
    const light = set.lights.get(lightId)!
    const fineness = coarse ? 'coarse' : 'full'
    const itself = [light.light, set.surroundings]
    const returned = this.returned.of(lightId, itself, () => returnedOf(scene, lightId))
    const { middle, radiusMetres } = view.samples.surface
    const plates = platesBetween(set, light.index, light.emitters[0]!, middle, radiusMetres)
    const surfaceKeys = [...itself, view.samples, skinSheen, ...plates.lights]
    const onGround = platesBetween(set, light.index, light.emitters[0]!, view.groundMiddle, view.groundRadiusMetres)
    const groundKeys = [...itself, view, ...onGround.lights]
    return {
      surface: this.surfaces.of(lightId, surfaceKeys, fineness, (how) =>
        surfaceLayer(scene, view.samples, lightId, returned, plates, skinSheen, how)),
      grounds: this.grounds.of(lightId, groundKeys, fineness, (how) => groundLayers(scene, view, lightId, returned, how)),
      returnedColour: returned.colour,
    }
  }
}

function lookOf(plan: Plan, lookId: string): Look {
  const look = Object.hasOwn(plan.looks, lookId) ? plan.looks[lookId] : undefined
  if (!look) throw new RangeError(`The plan has no look called ${lookId}`)
  return look
}
