import { boundedMemo } from '../spectra/boundedMemo.ts'
import { flashSpectrum } from '../spectra/flash.ts'
import { SRGB_WHITE_XYZ } from '../spectra/srgb.ts'
import { adaptationMatrix } from './adaptation.ts'
import { channelsOf, channelsThrough, whiteBalanceGains } from './camera.ts'
import { applyMatrix, multiplyMatrices, type Matrix3 } from './matrix.ts'
import { fitWhitePreserving, type MatrixSample } from './matrixFit.ts'
import { trainingSurfaces } from './trainingSurfaces.ts'
import type { CameraRgb, Xyz } from './triples.ts'
import { lightThrough, xyzOfLight } from './xyz.ts'

const [whiteX, whiteY, whiteZ] = SRGB_WHITE_XYZ
const fromOverWhite: Matrix3 = [
  [whiteX, 0, 0],
  [0, whiteY, 0],
  [0, 0, whiteZ],
]

/**
 * The matrix from balanced, clipped channels to XYZ (D65 white, Y = 1) for one white balance: the least-squares fit over
 * trainingSurfaces lit by a clear flash of that temperature and adapted from its white to D65 (CAT16). 1, 1, 1 becomes
 * D65 exactly, so white stays white. Derived here, at run time, since it depends on the white balance.
 */
export const cameraMatrix: (whiteBalanceKelvin: number) => Matrix3 = boundedMemo(32, String, (kelvin: number) => {
  const flash = flashSpectrum(kelvin)
  const gains = whiteBalanceGains(kelvin)
  const clear = channelsOf(flash, gains)
  const toD65 = adaptationMatrix(SRGB_WHITE_XYZ, xyzOfLight(flash), 'cat16')
  const samples = trainingSurfaces.map((surface): MatrixSample => {
    const [red, green, blue] = channelsThrough(flash, surface, gains)
    const [x, y, z] = applyMatrix(toD65, xyzOfLight(lightThrough(flash, surface)))
    return {
      channels: [red / clear[0], green / clear[1], blue / clear[2]],
      xyzOverWhite: [x / whiteX, y / whiteY, z / whiteZ],
    }
  })
  return multiplyMatrices(fromOverWhite, fitWhitePreserving(samples))
})

/**
 * XYZ (D65, Y = 1) of balanced channels. Equal channels are neutral at every white balance.
 * @param rgb clipped channels; see clipChannels.
 */
export function xyzFromChannels(rgb: CameraRgb, whiteBalanceKelvin: number): Xyz {
  return applyMatrix(cameraMatrix(whiteBalanceKelvin), rgb)
}
