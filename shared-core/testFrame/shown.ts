import { cameraMatrix } from '../colour/cameraMatrix.ts'
import { intoGamut } from '../colour/display.ts'
import { finishChannel, NO_FINISH, type Finish } from '../colour/finish.ts'
import { applyMatrix, type Matrix3 } from '../colour/matrix.ts'
import type { CameraRgb, LinearSrgb } from '../colour/triples.ts'
import { linearFromXyz } from '../spectra/srgb.ts'

/** What a look does to channels on their way to the display. */
export interface Showing {
  readonly matrix: Matrix3
  readonly finish: Finish
}

export function showingOf(whiteBalanceKelvin: number, finish: Finish): Showing {
  return { matrix: cameraMatrix(whiteBalanceKelvin), finish }
}

/** The camera's own picture style as one contrast about mid-grey; 0 is none. */
export type StyleContrast = number

/**
 * Channels as the photograph shows them: clip, matrix, the look's finish, gamut, then the camera's own contrast.
 * @param channels with the lens's stray light, before the clip
 */
export function shown({ matrix, finish }: Showing, [red, green, blue]: CameraRgb, contrast: StyleContrast): LinearSrgb {
  const linear = linearFromXyz(applyMatrix(matrix, [Math.min(red, 1), Math.min(green, 1), Math.min(blue, 1)]))
  const finished = isNone(finish) ? linear : linear.map((value) => finishChannel(value, finish)) as unknown as LinearSrgb
  const inside = intoGamut(finished)
  if (contrast === 0) return inside
  const style = { ...NO_FINISH, contrast }
  return [finishChannel(inside[0], style), finishChannel(inside[1], style), finishChannel(inside[2], style)]
}

function isNone({ exposureStops, contrast, whitePointStops, blackPoint }: Finish): boolean {
  return exposureStops === 0 && contrast === 0 && whitePointStops === 0 && blackPoint === 0
}

/** Luminance of linear sRGB. */
export function luminanceOf([red, green, blue]: LinearSrgb): number {
  return 0.2126390058715102 * red + 0.715168678767756 * green + 0.0721923153607337 * blue
}
