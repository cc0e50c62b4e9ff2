import { composeLinear, composeRoom, type ComposeRoom } from '../picture/compose.ts'
import { pixelView } from '../picture/pixelView.ts'
import { luminanceWeights, weighed } from '../picture/spotReading.ts'
import type { View } from '../picture/view.ts'
import type { PictureParts } from './lookPicture.ts'
import { Stage } from './stage.ts'

/** One source's part in what the picture shows at a place. */
export interface PixelShare {
  /** null for the room's steady light. */
  readonly lightId: string | null
  /** Of the luminance there, as a spot meter reads it, 0-1; all together are 1. */
  readonly share: number
  /** This source alone in camera channels, 1 is clip; all together are the picture's own, before the lens. */
  readonly channels: readonly [red: number, green: number, blue: number]
}

/** One source's brightness all over the picture. */
export interface SourcePlane {
  /** null for the room's steady light. */
  readonly lightId: string | null
  /** One number a pixel, 1 is clip. Written over by the next `everywhere`. */
  readonly brightness: Float32Array
}

type Lit = Pick<PictureParts, 'taking' | 'view' | 'lights' | 'ambient'>

/**
 * Who lights a place, from the very sums the picture is made of: each source is composed alone and read there. A place
 * costs that pixel's own sums; the whole picture about one recolour a light.
 */
export class WhoLights {
  private readonly rooms = { pixel: new Stage<ComposeRoom>(), whole: new Stage<ComposeRoom>() }
  private readonly pixel = new Stage<View>()
  private readonly alone = new Stage<Float32Array>()
  private planes: Float32Array[] = []

  /**
   * In the order of the lights, the room's steady light last where there is any; empty where it is dark.
   * @param x,y a pixel inside the picture of these parts
   */
  at(parts: Lit, x: number, y: number): readonly PixelShare[] {
    const pixel = this.pixel.of([parts.view, x, y], () => pixelView(parts.view, x, y))
    const room = this.rooms.pixel.of([pixel], () => composeRoom(pixel))
    const at = 3 * (y * pixel.width + x)
    const sources = sourcesOf(parts).map(({ lightId, lights, ambient }) => {
      const alone = this.compose(pixel, lights, ambient, room)
      return { lightId, channels: [alone[at]!, alone[at + 1]!, alone[at + 2]!] as const }
    })
    const weights = luminanceWeights(parts.taking.whiteBalanceKelvin)
    const total = sources.reduce((sum, { channels }) => sum + weighed(weights, ...channels), 0)
    return total === 0 ? [] : sources.map((source) => ({ ...source, share: weighed(weights, ...source.channels) / total }))
  }

  /** Every source's brightness over the whole picture, in the order of `at`. */
  everywhere(parts: Lit): readonly SourcePlane[] {
    const { view, taking } = parts
    const weights = luminanceWeights(taking.whiteBalanceKelvin)
    const sources = sourcesOf(parts)
    const size = view.width * view.height
    this.planes = sources.map((_, i) => (this.planes[i]?.length === size ? this.planes[i] : new Float32Array(size)))
    return sources.map(({ lightId, lights, ambient }, i) => {
      const alone = this.compose(view, lights, ambient, this.rooms.whole.of([view], () => composeRoom(view)))
      const plane = this.planes[i]!
      for (let p = 0; p < size; p++) plane[p] = weighed(weights, alone[3 * p]!, alone[3 * p + 1]!, alone[3 * p + 2]!)
      return { lightId, brightness: plane }
    })
  }

  private compose(view: View, lights: PictureParts['lights'], ambient: Float64Array, room: ComposeRoom): Float32Array {
    const { width, height } = view
    const alone = this.alone.of([width, height], () => new Float32Array(3 * width * height))
    composeLinear(view, lights, ambient, room, alone)
    return alone
  }
}

/** Each light alone, and the room's steady light where there is any. */
function sourcesOf({ lights, ambient }: Lit): readonly { lightId: string | null, lights: PictureParts['lights'], ambient: Float64Array }[] {
  const none = new Float64Array(ambient.length)
  return [
    ...lights.map((lit) => ({ lightId: lit.fired.id, lights: [lit], ambient: none })),
    ...(ambient.some((channel) => channel > 0) ? [{ lightId: null, lights: [], ambient }] : []),
  ]
}
