import { timesFromStops, stopsFromTimes } from '../../arithmetic/portable.ts'
import { boundedMemo } from '../boundedMemo.ts'
import { illuminants } from '../illuminants.ts'
import { colourMatching } from '../observer.ts'
import { luminousShare } from '../photopic.ts'
import { responseRow } from '../responseRow.ts'
import { smoothestCurve } from '../smoothestCurve.ts'
import { linearFromHex, SRGB_WHITE_XYZ, xyzFromLinear } from '../srgb.ts'
import type { TransmittanceSpectrum } from '../spectrum.ts'

export interface DeclaredGel {
  readonly transmittance: TransmittanceSpectrum
  /** What the sheet really loses; more than declared where no sheet of that colour can pass so much light. */
  readonly lossStops: number
  /** Whether colour and loss could both be had. */
  readonly reached: boolean
}

interface Declaration {
  /** The sheet on a white page in daylight, `#rrggbb`: hue and saturation alone, the loss says how dark it is. */
  readonly colour: string
  /** What an incident meter loses under flash (D55). */
  readonly lossStops: number
}

const [rowX, rowY, rowZ] = [colourMatching.x, colourMatching.y, colourMatching.z].map((matching) =>
  responseRow(illuminants.D65, matching),
) as [Float64Array, Float64Array, Float64Array]
const meterRow = responseRow(illuminants.D55, colourMatching.y)

/** A miss in chromaticity (relative to the luminance passed) or in light that nobody would see. */
const UNSEEN_MISS = 0.003

/**
 * The smoothest sheet with a declared colour and loss, within 0 and 1. A colour as pure as declared may not exist at so
 * small a loss; then the colour is kept and the least loss it can have is found and told.
 * @throws RangeError when the colour is not written `#rrggbb`.
 */
export const declaredGel: (declaration: Declaration) => DeclaredGel = boundedMemo(
  64,
  ({ colour, lossStops }) => `${colour} ${lossStops}`,
  ({ colour, lossStops }) => {
    const asked = attempt(colour, lossStops)
    if (asked.met) return { transmittance: asked.curve, lossStops, reached: true }
    let tooLittle = lossStops
    let enough = Math.max(lossStops, 0) + 8
    let best = attempt(colour, enough)
    for (let halving = 0; halving < 10; halving++) {
      const middle = (tooLittle + enough) / 2
      const tried = attempt(colour, middle)
      if (tried.met) {
        enough = middle
        best = tried
      } else {
        tooLittle = middle
      }
    }
    const realLoss = -stopsFromTimes(luminousShare(illuminants.D55, best.curve))
    return { transmittance: best.curve, lossStops: realLoss, reached: false }
  },
)

function attempt(colour: string, lossStops: number): { curve: TransmittanceSpectrum; met: boolean } {
  const [x, y, z] = xyzFromLinear(linearFromHex(colour))
  const luminance = Math.max(y, 1e-6)
  const xShare = y > 0 ? x / SRGB_WHITE_XYZ[0] / luminance : 1
  const zShare = y > 0 ? z / SRGB_WHITE_XYZ[2] / luminance : 1
  const passed = timesFromStops(-lossStops)
  // Each demand is divided by the light passed, so that a dark sheet's colour counts as much as a pale one's.
  const scaled = (row: Float64Array, share: number): Float64Array =>
    row.map((value, i) => (value - share * (rowY[i] as number)) / (passed * Math.max(share, 1)))
  const { curve, misses } = smoothestCurve(
    [
      { row: meterRow.map((value) => value / passed), target: 1 },
      { row: scaled(rowX, xShare), target: 0 },
      { row: scaled(rowZ, zShare), target: 0 },
    ],
    0,
    1,
  )
  return { curve: curve as TransmittanceSpectrum, met: misses.every((miss) => Math.abs(miss) < UNSEEN_MISS) }
}
