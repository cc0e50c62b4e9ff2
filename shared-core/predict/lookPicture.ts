import type { Look } from '../plan/schema/look.ts'
import type { Plan } from '../plan/schema/plan.ts'
import type { CellCount } from '../photometry/frontCells.ts'
import { composeLinear, type LightTable, type LitLayer } from '../picture/compose.ts'
import { develop } from '../picture/develop.ts'
import { groundNet } from '../picture/grounds.ts'
import { layerOf, viewOf, type Layer, type View } from '../picture/layer.ts'
import { MATERIALS, type PictureMaterial } from '../picture/material.ts'
import { poseSubject, type PosedSubject } from '../picture/posedSubject.ts'
import { samplesOf, type Samples } from '../picture/samples.ts'
import type { ReflectanceSpectrum } from '../spectra/spectrum.ts'
import { reflectanceOfSwatch } from '../spectra/surface/swatch.ts'
import type { SubjectAsset } from '../subject/asset/format.ts'
import type { AmbientLight } from './areas.ts'
import { FiringStage, type FiredLight } from './firing.ts'
import { subjectReflectance } from './materials.ts'
import { SceneStage } from './sceneOfLook.ts'
import { Stage, StagesByKey } from './stage.ts'
import { takingOf } from './taking.ts'

/** A picture as the display shows it, and the linear camera channels it came from. */
export interface Picture {
  readonly width: number
  readonly height: number
  /** sRGB, four bytes a pixel. */
  readonly rgba: Uint8ClampedArray
  /** Three camera channels a pixel, 1 is clip, before the lens's stray light. */
  readonly linear: Float32Array
}

export interface PictureRequest {
  readonly width: number
  readonly height: number
  /** Only this light; null for all that are on. */
  readonly soloLightId: string | null
  /** Fewer points a light, for a picture under a hand. */
  readonly coarse: boolean
}

const FULL_CELLS: CellCount = 81
const COARSE_CELLS: CellCount = 16

/** Whites, irises and pupils of nobody in particular. */
const EYE_SWATCHES = { 'eye-white': '#cfc7c0', iris: '#4d382a', pupil: '#0b0a0a' } as const

/**
 * Draws looks of a plan with one subject's surface. Remembers its stages: a changed power only sums layers anew, a moved
 * light makes one layer, a moved camera makes them all.
 */
export class LookPicture {
  private readonly scene = new SceneStage()
  private readonly firing = new FiringStage()
  private readonly posed = new Stage<PosedSubject>()
  private readonly samples = new Stage<Samples>()
  private readonly view = new Stage<View>()
  private readonly layers = new StagesByKey<Layer>()
  private readonly tables = new StagesByKey<LightTable>()

  constructor(private readonly asset: SubjectAsset) {}

  /** @throws RangeError when the plan has no such look. */
  draw(plan: Plan, lookId: string, request: PictureRequest): Picture {
    const look = Object.hasOwn(plan.looks, lookId) ? plan.looks[lookId] : undefined
    if (!look) throw new RangeError(`The plan has no look called ${lookId}`)
    const { width, height, soloLightId, coarse } = request
    const scene = this.scene.of(plan, look)
    const posed = this.posed.of([scene.subject], () => poseSubject(this.asset, scene.subject))
    const samples = this.samples.of([posed, scene.camera, scene.backdrop, scene.pieces, scene.room, width, height], () =>
      samplesOf(scene, posed, width, height))
    const view = this.view.of([scene, posed, samples, look.subject.skinSheen], () =>
      viewOf(scene, posed, samples, groundNet(scene, samples), look.subject.skinSheen))

    const fired = this.firing.lights(plan, look)
    const curves = materialCurves(look, samples)
    const clip = takingOf(look.camera).clipLuxSeconds
    const cells = coarse ? COARSE_CELLS : FULL_CELLS
    const lit = fired.flatMap((light): LitLayer[] => {
      const layer = this.layers.of(light.id, [view, cells], () => layerOf(view, light.id, cells))
      const isSeen = soloLightId === null ? light.light.on : light.id === soloLightId
      if (!isSeen) return []
      const table = this.tables.of(light.id, [light.firing.palette, layer, clip, light.firing.luminousEnergyLumenSeconds, ...curves], () =>
        tableOf(light, layer, curves, clip))
      return [{ layer, table }]
    })
    this.layers.keepOnly(new Set(fired.map(({ id }) => id)))
    this.tables.keepOnly(new Set(fired.map(({ id }) => id)))

    const linear = new Float32Array(3 * width * height)
    const ambient = soloLightId === null ? ambientTable(this.firing.ambient(plan, look), curves, clip) : new Float32Array(3 * curves.length)
    composeLinear(samples, lit, ambient, linear)
    const rgba = new Uint8ClampedArray(4 * width * height)
    develop(linear, width, height, {
      whiteBalanceKelvin: look.camera.whiteBalanceKelvin, veilingGlare: look.camera.veilingGlare, finish: look.finish,
    }, rgba)
    return { width, height, rgba, linear }
  }
}

/** Reflectance of each row of the tables: the subject's materials, then the grounds; null for a bare lit front. */
function materialCurves(look: Look, samples: Samples): readonly (ReflectanceSpectrum | null)[] {
  return [...MATERIALS.map((material) => curveOf(look, material)), ...samples.grounds.map(({ swatch }) => (swatch === null ? null : reflectanceOfSwatch(swatch)))]
}

function curveOf(look: Look, material: PictureMaterial): ReflectanceSpectrum {
  switch (material) {
    case 'eye-white':
    case 'iris':
    case 'pupil':
      return reflectanceOfSwatch(EYE_SWATCHES[material])
    case 'brow':
      return subjectReflectance(look.subject, 'hair')
    default:
      return subjectReflectance(look.subject, material)
  }
}

function tableOf(light: FiredLight, layer: Layer, curves: readonly (ReflectanceSpectrum | null)[], clipLuxSeconds: number): LightTable {
  const { palette, luminousEnergyLumenSeconds } = light.firing
  const scale = luminousEnergyLumenSeconds / clipLuxSeconds
  const direct = new Float32Array(3 * curves.length)
  const returned = new Float32Array(3 * curves.length)
  curves.forEach((curve, row) => {
    // A bare lit front shows what it shines; what falls on it is lost beside that.
    if (curve === null) return
    const straight = palette.leg(null, curve).channels
    const back = palette.leg(layer.returnedColour.curve, curve).channels
    for (let k = 0; k < 3; k++) {
      direct[3 * row + k] = straight[k]! * scale
      returned[3 * row + k] = back[k]! * scale
    }
  })
  const [red, green, blue] = palette.leg(null, null).channels
  return { direct, returned, sheen: [red * scale, green * scale, blue * scale] }
}

function ambientTable(ambient: AmbientLight, curves: readonly (ReflectanceSpectrum | null)[], clipLuxSeconds: number): Float32Array {
  const table = new Float32Array(3 * curves.length)
  const scale = ambient.luxSeconds / clipLuxSeconds
  curves.forEach((curve, row) => {
    if (curve === null || scale === 0) return
    ambient.palette.leg(null, curve).channels.forEach((channel, k) => { table[3 * row + k] = channel * scale })
  })
  return table
}
