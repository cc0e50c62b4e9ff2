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
 * Fitted by tests/derivations/camera.ts to lie midway, in stops, between two measured cameras behind seven gels
 * (one camera measured at NPL by Darrodi et al. 2015, one of the AMPAS rawtoaces set). Run it to get this table again.
 */
export const CHANNEL_SHAPES: readonly [red: ChannelShape, green: ChannelShape, blue: ChannelShape] = [
  { peakNm: 599.5, shortWidthNm: 19.8, longWidthNm: 19.9, skirt: 0.109, skirtWidthNm: 73, floor: 0.0126 },
  { peakNm: 540.3, shortWidthNm: 38.2, longWidthNm: 33.5, skirt: 0.000, skirtWidthNm: 103, floor: 0.0002 },
  { peakNm: 439.9, shortWidthNm: 25.4, longWidthNm: 47.3, skirt: 0.017, skirtWidthNm: 123, floor: 0.0015 },
]

const rising = (nm: number, edgeNm: number, widthNm: number): number => 1 / (1 + Math.exp((edgeNm - nm) / widthNm))

const bell = (nm: number, peakNm: number, widthNm: number): number => {
  const distance = (nm - peakNm) / widthNm
  return Math.exp(-0.5 * distance * distance)
}

/** What the filters in front of every sensor leave: ultraviolet and infrared are cut away. */
const windowOf = (nm: number): number => rising(nm, 408, 5) * rising(-nm, -690, 6)

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
