import { drawLeaders, type Tint } from '../../../shared-core/picture/leaderView.ts'
import { regionsOf } from '../../../shared-core/picture/regions.ts'
import type { ChannelWeights } from '../../../shared-core/picture/spotReading.ts'
import { drawClipping, drawStops, type PictureView } from '../../../shared-core/picture/views.ts'
import { clippedInLetters } from '../clipping.ts'
import type { PictureLetter } from './pictureOrders.ts'

/** What the room's steady light is called where lights have letters. */
export const ROOM_LETTERS = 'room'

export interface LetteredPlane {
  readonly letter: string
  readonly tint: Tint
  /** Brightness by pixel, 1 is clip. */
  readonly brightness: Float32Array
}

/** Room around a letter, as a share of the picture's width: less, and the letter would hide what it names. */
const ROOM_FOR_LETTER = 0.015

/**
 * Draws a view over the developed picture, and says what is to be written on its parts. The picture itself stays as it is.
 * @param spot see spotWeights
 */
export function drawView(
  view: PictureView, linear: Float32Array, width: number, height: number, spot: ChannelWeights, into: Uint8ClampedArray, sources: () => readonly LetteredPlane[],
): readonly PictureLetter[] {
  const leastRoom = Math.max(2, Math.round(ROOM_FOR_LETTER * width))
  switch (view) {
    case 'picture':
      return []
    case 'stops':
      drawStops(linear, width, height, spot, into)
      return []
    case 'clipping':
      return regionsOf(drawClipping(linear, width, height, into), width, height, leastRoom).map(({ kind, frameX, frameY }) =>
        ({ text: clippedInLetters([(kind & 1) > 0, (kind & 2) > 0, (kind & 4) > 0]), frameX, frameY }))
    case 'leaders': {
      const planes = sources()
      const leaders = drawLeaders(planes.map(({ brightness }) => brightness), planes.map(({ tint }) => tint), width, height, into)
      return regionsOf(leaders, width, height, leastRoom).map(({ kind, frameX, frameY }) => ({ text: planes[kind - 1]!.letter, frameX, frameY }))
    }
  }
}
