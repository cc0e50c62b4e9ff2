import { whiteBalanceGains } from '../../shared-core/colour/camera.ts'
import { gelPrediction } from '../../shared-core/predict/gelPrediction.ts'
import type { GelPrediction } from '../../shared-core/predict/prediction.ts'
import { flashSpectrum } from '../../shared-core/spectra/flash.ts'
import { gelTransmittance, stack, type GelRecipe } from '../../shared-core/spectra/gel/gel.ts'
import { lightThrough } from '../../shared-core/colour/xyz.ts'
import type { EmissionSpectrum } from '../../shared-core/spectra/spectrum.ts'
import { skinReflectance, type SkinTone } from '../../shared-core/spectra/surface/skin.ts'

/** Under what a sheet is looked at: the head's own colour, the camera's white balance, the skin in the picture. */
export interface GelViewing {
  readonly flashKelvin: number
  readonly whiteBalanceKelvin: number
  readonly skin: SkinTone
}

/** What sheets one behind another do to white, to this skin, to the meter and to the camera, before any is put on a light. */
export function gelEffect(sheets: readonly { readonly name: string; readonly source: GelRecipe }[], viewing: GelViewing): GelPrediction {
  const flash = flashSpectrum(viewing.flashKelvin)
  const gel = sheets.length === 0 ? null : stack(...sheets.map(({ source }) => gelTransmittance(source)))
  const emission = (gel ? lightThrough(flash, gel) : flash) as EmissionSpectrum
  return gelPrediction(
    { colourTemperatureKelvin: viewing.flashKelvin, flash, gel, emission },
    sheets.map(({ name }) => name),
    whiteBalanceGains(viewing.whiteBalanceKelvin),
    viewing.whiteBalanceKelvin,
    skinReflectance(viewing.skin),
  )
}
