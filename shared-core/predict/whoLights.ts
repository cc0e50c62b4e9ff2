import { composeLinear, composeRoom, type ComposeRoom } from '../picture/compose.ts'
import { brightness } from '../picture/views.ts'
import type { View } from '../picture/view.ts'
import type { PictureParts } from './lookPicture.ts'
import { Stage } from './stage.ts'

/** One source's part in what the picture shows at a place. */
export interface PixelShare {
  /** null for the room's steady light. */
  readonly lightId: string | null
  /** Of the brightness there, 0-1; all together are 1. */
  readonly share: number
  /** This source alone in camera channels, 1 is clip; all together are the picture's own, before the lens. */
  readonly channels: readonly [red: number, green: number, blue: number]
}

/**
 * Who lights a pixel, from the very sums the picture is made of: each source's picture is composed alone and read there.
 * Costs about one recolour a light, and the memory of one linear picture.
 */
export class WhoLights {
  private readonly room = new Stage<ComposeRoom>()
  private readonly alone = new Stage<Float32Array>()

  /**
   * In the order of the lights, the room's steady light last where there is any; empty where it is dark.
   * @param x,y a pixel inside the picture of these parts
   */
  at({ view, lights, ambient }: Pick<PictureParts, 'view' | 'lights' | 'ambient'>, x: number, y: number): readonly PixelShare[] {
    const none = new Float64Array(ambient.length)
    const sources = [
      ...lights.map((lit) => ({ lightId: lit.fired.id, channels: this.pixel(view, [lit], none, x, y) })),
      ...(ambient.some((channel) => channel > 0) ? [{ lightId: null, channels: this.pixel(view, [], ambient, x, y) }] : []),
    ]
    const total = sources.reduce((sum, { channels }) => sum + brightness(...channels), 0)
    return total === 0 ? [] : sources.map((source) => ({ ...source, share: brightness(...source.channels) / total }))
  }

  private pixel(
    view: View, lights: PictureParts['lights'], ambient: Float64Array, x: number, y: number,
  ): readonly [number, number, number] {
    const { width, height } = view
    const alone = this.alone.of([width, height], () => new Float32Array(3 * width * height))
    composeLinear(view, lights, ambient, this.room.of([view], () => composeRoom(view)), alone)
    const at = 3 * (y * width + x)
    return [alone[at]!, alone[at + 1]!, alone[at + 2]!]
  }
}
