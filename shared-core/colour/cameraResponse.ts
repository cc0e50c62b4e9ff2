import { risingEdge } from '../spectra/edge.ts'
import { spectrumOf } from '../spectra/spectrum.ts'

/**
 * A generic studio camera: three broad responses that overlap, as behind a mosaic of dyes, not display primaries.
 * | parameter | unit | meaning |
 * | peakNm | nm | where the channel is most sensitive |
 * | shortWidthNm, longWidthNm | nm | standard deviations of the main lobe below and above the peak |
 * | skirt, skirtWidthNm | share of peak, nm | the dye's broad skirt: why deep gels reach every channel in the end |
 * | floor | share of peak | what leaks through everywhere in the visible |
 */
export interface ChannelShape {
  readonly peakNm: number
  readonly shortWidthNm: number
  readonly longWidthNm: number
  readonly skirt: number
  readonly skirtWidthNm: number
  readonly floor: number
}

/**
 * Fitted by tests/derivations/camera.ts to lie midway, in stops, between two measured cameras behind seven gels (one
 * measured at NPL by Darrodi et al. 2015, one of the AMPAS rawtoaces set) and to keep the colours of formula-made
 * surfaces through the best matrix. Run it to get this table again.
 */
export const CHANNEL_SHAPES: readonly [red: ChannelShape, green: ChannelShape, blue: ChannelShape] = [
  { peakNm: 599.4, shortWidthNm: 20.5, longWidthNm: 22.3, skirt: 0.112, skirtWidthNm: 81, floor: 0.0067 },
  { peakNm: 534.7, shortWidthNm: 31.7, longWidthNm: 32.7, skirt: 0.047, skirtWidthNm: 70, floor: 0.0018 },
  { peakNm: 450, shortWidthNm: 45.6, longWidthNm: 40.9, skirt: 0.035, skirtWidthNm: 94, floor: 0.0024 },
]

const bell = (nm: number, peakNm: number, widthNm: number): number => {
  const distance = (nm - peakNm) / widthNm
  return Math.exp(-0.5 * distance * distance)
}

/** What the filters in front of every sensor leave: ultraviolet and infrared are cut away. */
const windowOf = (nm: number): number => risingEdge(nm, 408, 5) * (1 - risingEdge(nm, 690, 6))

/** Response of one channel on the grid, relative. */
export function channelResponse(shape: ChannelShape): Float64Array {
  return spectrumOf<Float64Array>((nm) => {
    const main = bell(nm, shape.peakNm, nm < shape.peakNm ? shape.shortWidthNm : shape.longWidthNm)
    return windowOf(nm) * (main + shape.skirt * bell(nm, shape.peakNm, shape.skirtWidthNm) + shape.floor)
  })
}

/** Red, green and blue responses of the generic camera. */
export const cameraResponses: readonly [red: Float64Array, green: Float64Array, blue: Float64Array] = [
  channelResponse(CHANNEL_SHAPES[0]),
  channelResponse(CHANNEL_SHAPES[1]),
  channelResponse(CHANNEL_SHAPES[2]),
]
