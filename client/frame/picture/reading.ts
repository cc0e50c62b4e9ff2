import { clipChannels } from '../../../shared-core/colour/camera.ts'
import { xyzFromChannels } from '../../../shared-core/colour/cameraMatrix.ts'
import { displayHex } from '../../../shared-core/colour/display.ts'
import { colourWords } from '../../../shared-core/colour/hueWords.ts'
import { spotWeights, stopsOverGrey } from '../../../shared-core/picture/spotReading.ts'
import type { Camera, Finish } from '../../../shared-core/plan/schema/look.ts'
import type { Plan } from '../../../shared-core/plan/schema/plan.ts'
import type { PictureLetter } from './pictureOrders.ts'

/** The linear picture that is on the canvas. */
export interface LinearPicture {
  readonly width: number
  readonly height: number
  readonly linear: Float32Array
}

/** What is on the canvas, and the plan it was drawn from. */
export interface ShownPicture extends LinearPicture {
  readonly letters: readonly PictureLetter[]
  readonly plan: Plan
  readonly lookId: string
  /** Not one under a hand, and no first sketch: those have fewer points of light. */
  readonly isFull: boolean
}

/** What the picture says at one place. */
export interface Reading {
  /** Over (positive) or under what a spot meter calls mid-grey; null in the dark. */
  readonly stopsOverGrey: number | null
  readonly hex: string
  readonly words: string
  readonly clipped: readonly [red: boolean, green: boolean, blue: boolean]
}

/** Darker than this there is no number worth reading. */
const DARKEST_STOPS = -12

/** @param frameX,frameY 0-1 from the left and the top; null outside the picture */
export function readingAt(
  { width, height, linear }: LinearPicture, frameX: number, frameY: number, camera: Camera, finish: Finish,
): Reading | null {
  const x = Math.floor(frameX * width)
  const y = Math.floor(frameY * height)
  if (x < 0 || y < 0 || x >= width || y >= height) return null
  const at = 3 * (y * width + x)
  const channels = [linear[at]!, linear[at + 1]!, linear[at + 2]!] as const
  const stops = stopsOverGrey(spotWeights(camera), ...channels)
  const xyz = xyzFromChannels(clipChannels(channels), camera.whiteBalanceKelvin)
  return {
    stopsOverGrey: stops > DARKEST_STOPS ? stops : null,
    hex: displayHex(xyz, finish).hex,
    words: colourWords(xyz),
    clipped: [channels[0] >= 1, channels[1] >= 1, channels[2] >= 1],
  }
}
