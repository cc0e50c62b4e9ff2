import { stopsFromTimes } from '../arithmetic/portable.ts'
import { clipChannels } from '../colour/camera.ts'
import type { CameraRgb } from '../colour/triples.ts'
import { xyzFromChannels } from '../colour/cameraMatrix.ts'
import { colourDifference2000 } from '../colour/difference.ts'
import { displayHex } from '../colour/display.ts'
import { linearFromHex, xyzFromLinear } from '../spectra/srgb.ts'
import type { Finish } from '../colour/finish.ts'
import type { AreaPrediction, LightPrediction, Taking } from './prediction.ts'

/** How an area's colour stands to what clear light alone would make of it. */
export interface TrueColour {
  /**
   * By how many stops coloured light lifts red, green and blue over clear light, the mean of the three taken out: a level
   * that rises in all alike changes no colour. Null where no clear light reaches the area.
   */
  readonly shiftStops: readonly [red: number, green: number, blue: number] | null
  /** Between the channel lifted most and the one lifted least; null as above. */
  readonly spreadStops: number | null
  /** CIEDE2000 between what the display shows and clear light at the same luminance; null as above. */
  readonly difference: number | null
  /** What the display shows, and what it would show by clear light at the same luminance, "#rrggbb". */
  readonly shown: string
  readonly byClearLight: string | null
}

/** All lights against the clear ones. Its reflectance is the area's own swatch, in both. */
export function trueColour(area: AreaPrediction, lights: readonly LightPrediction[], { whiteBalanceKelvin }: Taking, finish: Finish): TrueColour {
  const isClear = new Set(lights.filter(({ gel }) => gel.clear).map(({ id }) => id))
  const clear = [0, 1, 2].map((k) => area.byLight.reduce((sum, { lightId, channels }) => (isClear.has(lightId) ? sum + channels[k]! : sum), 0))
  const shown = area.colour.display
  if (clear.some((value) => value <= 0)) return { shiftStops: null, spreadStops: null, difference: null, shown, byClearLight: null }
  const lifted = clear.map((value, k) => stopsFromTimes(area.colour.channels[k]! / value))
  const mean = (lifted[0]! + lifted[1]! + lifted[2]!) / 3
  const luminance = (channels: readonly number[]) => xyzFromChannels(channels as unknown as CameraRgb, whiteBalanceKelvin)[1]
  const times = luminance(clipChannels(area.colour.channels)) / luminance(clear)
  const byClearLight = displayHex(xyzFromChannels(clipChannels(clear.map((value) => value * times) as unknown as CameraRgb), whiteBalanceKelvin), finish).hex
  return {
    shiftStops: [lifted[0]! - mean, lifted[1]! - mean, lifted[2]! - mean],
    spreadStops: Math.max(...lifted) - Math.min(...lifted),
    difference: colourDifference2000(xyzFromLinear(linearFromHex(shown)), xyzFromLinear(linearFromHex(byClearLight))),
    shown, byClearLight,
  }
}
