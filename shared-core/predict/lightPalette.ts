import { channelsOf } from '../colour/camera.ts'
import type { CameraRgb } from '../colour/triples.ts'
import { colourMatching } from '../spectra/observer.ts'
import { WAVELENGTH_COUNT, WAVELENGTH_STEP_NM, type ReflectanceSpectrum } from '../spectra/spectrum.ts'

/** One light seen by the camera after one way through the set, for each lux-second a clear lamp would have put there. */
export interface LegColour {
  /** What of those lux-seconds an ideal meter still sees, after gel and any wall on the way. */
  readonly luminance: number
  /** The same after the lit surface's own reflectance: its weight in the picture's luminance. */
  readonly reflectedLuminance: number
  /** Balanced camera channels of the lit surface, before exposure: 1 for a perfect white under clear balanced light. */
  readonly channels: CameraRgb
}

/**
 * Colours of one light on every material by every way: the spectral half of "geometry times colour". Filled as asked
 * for, then only looked up, so that a picture costs no spectral work a pixel.
 */
export class LightPalette {
  private readonly legs = new Map<ReflectanceSpectrum | null, Map<ReflectanceSpectrum | null, LegColour>>()

  /**
   * @param light emission after the gels, in photopic units of the clear lamp
   * @param gains white balance
   */
  constructor(private readonly light: Float64Array, private readonly gains: CameraRgb) {}

  /**
   * @param by reflectance of the surface the light bounced from; null when it came straight
   * @param on reflectance of the surface it lights; null for a self-luminous front or a perfect white
   */
  leg(by: ReflectanceSpectrum | null, on: ReflectanceSpectrum | null): LegColour {
    let row = this.legs.get(by)
    if (!row) this.legs.set(by, (row = new Map<ReflectanceSpectrum | null, LegColour>()))
    let colour = row.get(on)
    if (!colour) row.set(on, (colour = this.compute(by, on)))
    return colour
  }

  private compute(by: ReflectanceSpectrum | null, on: ReflectanceSpectrum | null): LegColour {
    const reflected = new Float64Array(WAVELENGTH_COUNT)
    let luminance = 0
    let reflectedLuminance = 0
    for (let i = 0; i < WAVELENGTH_COUNT; i++) {
      const arriving = this.light[i]! * (by ? by[i]! : 1)
      const leaving = arriving * (on ? on[i]! : 1)
      const luminous = colourMatching.y[i]! * WAVELENGTH_STEP_NM
      luminance += arriving * luminous
      reflectedLuminance += leaving * luminous
      reflected[i] = leaving
    }
    return { luminance, reflectedLuminance, channels: channelsOf(reflected, this.gains) }
  }
}
