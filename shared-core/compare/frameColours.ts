import { clipChannels } from '../colour/camera.ts'
import { xyzFromChannels } from '../colour/cameraMatrix.ts'
import { labOfXyz, type Lab } from '../colour/difference.ts'
import { intoGamut } from '../colour/display.ts'
import { applyFinish, type Finish } from '../colour/finish.ts'
import type { CameraRgb, Xyz } from '../colour/triples.ts'
import type { Development } from '../picture/develop.ts'
import { strayAlongRow, strayLight } from '../picture/strayLight.ts'
import type { Picture } from '../predict/lookPicture.ts'
import { linearFromXyz, xyzFromLinear } from '../spectra/srgb.ts'

/** What a display shows of a Frame: CIELAB, three a pixel. */
export type FrameColours = Float64Array

/**
 * A Frame developed as `picture/develop` does, but to no whole codes: in dark, strong colours one code is a whole step
 * of CIEDE2000, and a change that only tips the rounding would be called visible.
 * @param picture its linear channels, three a pixel, and its edges against what is past clip
 */
export function frameColours({ linear, edges, width, height }: Pick<Picture, 'linear' | 'edges' | 'width' | 'height'>, how: Development): FrameColours {
  const stray = strayLight(linear, width, height, how.veilingGlare)
  const row = new Float64Array(3 * stray.columns)
  const colours = new Float64Array(3 * width * height)
  for (let y = 0, at = 0; y < height; y++) {
    strayAlongRow(stray, y, height, row)
    for (let x = 0; x < width; x++, at += 3) {
      const cell = ((x + 0.5) * stray.columns) / width - 0.5
      const left = Math.min(stray.columns - 2, Math.max(0, Math.floor(cell)))
      const share = Math.min(1, Math.max(0, cell - left))
      const channel = (k: number): number =>
        linear[at + k]! + row[3 * left + k]! + share * (row[3 * left + 3 + k]! - row[3 * left + k]!)
      put(colours, at, shownColour([channel(0), channel(1), channel(2)], how.whiteBalanceKelvin, how.finish))
    }
  }
  for (let i = 0, k = 0; i < edges.count; i++, k += 3) {
    const channels = [edges.channels[k]!, edges.channels[k + 1]!, edges.channels[k + 2]!] as const
    put(colours, 3 * edges.pixels[i]!, shownColour(channels, how.whiteBalanceKelvin, how.finish))
  }
  return colours
}

function put(colours: FrameColours, at: number, { l, a, b }: Lab): void {
  colours[at] = l
  colours[at + 1] = a
  colours[at + 2] = b
}

/** What a display shows for camera channels that are not yet clipped, before it rounds to codes. */
export function shownColour(channels: CameraRgb, whiteBalanceKelvin: number, finish: Finish): Lab {
  const linear = linearFromXyz(xyzFromChannels(clipChannels(channels), whiteBalanceKelvin))
  return labOfXyz(xyzFromLinear(intoGamut(applyFinish(linear, finish))) as Xyz)
}
