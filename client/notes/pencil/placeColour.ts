import { clipChannels } from '../../../shared-core/colour/camera.ts'
import { xyzFromChannels } from '../../../shared-core/colour/cameraMatrix.ts'
import { displayHex } from '../../../shared-core/colour/display.ts'
import type { LinearPicture } from '../../frame/picture/reading.ts'
import type { Camera, Finish } from '../../../shared-core/plan/schema/look.ts'
import type { FramePlace } from './framePlace.ts'

/** Half the side of the square that is a place's colour, of the Frame's height: a pore more or less changes no colour. */
const HALF_SIDE_SHARE = 0.004

/** How far a place is looked about, of the Frame's height: some three pixels of a laptop's. */
const ABOUT_SHARE = 0.006

/** The colours that a picture shows at a place and just about it, the place's own first. */
export function coloursAbout(picture: LinearPicture, { frameX, frameY }: FramePlace, camera: Camera, finish: Finish): readonly string[] {
  const across = (ABOUT_SHARE * picture.height) / picture.width
  const about = [[0, 0], [1, 0], [-1, 0], [0, 1], [0, -1], [1, 1], [-1, 1], [1, -1], [-1, -1]] as const
  return about.flatMap(([x, y]) => placeColour(picture, { frameX: frameX + x * across, frameY: frameY + y * ABOUT_SHARE }, camera, finish) ?? [])
}

/** The colour that a picture shows about a place, `#rrggbb`; null outside it. */
export function placeColour({ width, height, linear }: LinearPicture, { frameX, frameY }: FramePlace, camera: Camera, finish: Finish): string | null {
  if (frameX < 0 || frameX >= 1 || frameY < 0 || frameY >= 1) return null
  const half = Math.max(1, HALF_SIDE_SHARE * height)
  const [left, right] = [Math.max(0, Math.round(frameX * width - half)), Math.min(width - 1, Math.round(frameX * width + half))]
  const [top, bottom] = [Math.max(0, Math.round(frameY * height - half)), Math.min(height - 1, Math.round(frameY * height + half))]
  const sum = [0, 0, 0]
  let count = 0
  for (let y = top; y <= bottom; y++) {
    for (let x = left; x <= right; x++, count++) {
      for (let c = 0; c < 3; c++) sum[c]! += linear[3 * (y * width + x) + c]!
    }
  }
  if (count === 0) return null
  const channels = [sum[0]! / count, sum[1]! / count, sum[2]! / count] as const
  return displayHex(xyzFromChannels(clipChannels(channels), camera.whiteBalanceKelvin), finish).hex
}
