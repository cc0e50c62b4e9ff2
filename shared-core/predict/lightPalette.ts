import { channelsOf } from '../colour/camera.ts'
import type { CameraRgb } from '../colour/triples.ts'
import { colourMatching } from '../spectra/observer.ts'
import { WAVELENGTH_COUNT, WAVELENGTH_STEP_NM, type ReflectanceSpectrum } from '../spectra/spectrum.ts'

/** One light seen by the camera after one way through the set, for each lux-second a clear lamp would have put there. */
export interface LegColour {
  /** What of those lux-seconds an ideal meter still sees, after gel and any wall on the way. */
  readonly luminance: number
  /** Balanced camera channels of the lit surface, before exposure: 1 for a perfect white under clear balanced light. */
  readonly channels: CameraRgb
}

/** Colours by what is lit. */
type Row = Map<ReflectanceSpectrum | null, LegColour>

/**
 * Colours of one light on every material by every way: the spectral half of "geometry times colour". Filled as asked
 * for, then only looked up, so that a picture costs no spectral work a pixel.
 */
export class LightPalette {
  private readonly straight: Row = new Map()
  /** Forgotten with their curves: a light that is dragged leaves one behind at every step. */
  private readonly bounced = new WeakMap<ReflectanceSpectrum, Row>()

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
    const row = by === null ? this.straight : this.rowOf(by)
    let colour = row.get(on)
    if (!colour) row.set(on, (colour = this.compute(by, on)))
    return colour
  }

  private rowOf(by: ReflectanceSpectrum): Row {
    let row = this.bounced.get(by)
    if (!row) this.bounced.set(by, (row = new Map()))
    return row
  }

  private compute(by: ReflectanceSpectrum | null, on: ReflectanceSpectrum | null): LegColour {
    const reflected = new Float64Array(WAVELENGTH_COUNT)
    let luminance = 0
    for (let i = 0; i < WAVELENGTH_COUNT; i++) {
      const arriving = this.light[i]! * (by ? by[i]! : 1)
      luminance += arriving * colourMatching.y[i]! * WAVELENGTH_STEP_NM
      reflected[i] = arriving * (on ? on[i]! : 1)
    }
    return { luminance, channels: channelsOf(reflected, this.gains) }
  }
}
