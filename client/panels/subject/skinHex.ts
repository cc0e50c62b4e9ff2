import { displayHex } from '../../../shared-core/colour/display.ts'
import { NO_FINISH } from '../../../shared-core/colour/finish.ts'
import { lightThrough, xyzOfLight } from '../../../shared-core/colour/xyz.ts'
import { illuminants } from '../../../shared-core/spectra/illuminants.ts'
import { skinReflectance } from '../../../shared-core/spectra/surface/skin.ts'

const [, daylightLuminance] = xyzOfLight(illuminants.D65)

/** A skin in plain daylight (D65) on the display, `#rrggbb`. */
export function skinHex(itaDegrees: number, undertone: number): string {
  const [x, y, z] = xyzOfLight(lightThrough(illuminants.D65, skinReflectance({ itaDegrees, undertone })))
  return displayHex([x / daylightLuminance, y / daylightLuminance, z / daylightLuminance], NO_FINISH).hex
}
