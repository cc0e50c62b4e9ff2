import { power } from '../../arithmetic/portable.ts'
import { risingEdge } from '../edge.ts'
import { spectrumOf, type TransmittanceSpectrum } from '../spectrum.ts'

/**
 * What the two surfaces of a clear plastic sheet leave, light going to and fro between them included:
 * (1 − r) / (1 + r) with r = ((n − 1) / (n + 1))², n = 1.49.
 */
export const CLEAR_SHEET = 0.9254

/** A band of the spectrum let through, with soft edges; an end without an edge is open. */
export interface PassBand {
  readonly height: number
  readonly fromNm?: number
  readonly fromWidthNm?: number
  readonly toNm?: number
  readonly toWidthNm?: number
}

/** A dye: what leaks everywhere, and the bands it lets through. */
export interface DyeCurve {
  readonly leak: number
  readonly bands: readonly PassBand[]
}

const longPass = (leak: number, height: number, fromNm: number, fromWidthNm: number): DyeCurve => ({
  leak,
  bands: [{ height, fromNm, fromWidthNm }],
})
const shortPass = (leak: number, height: number, toNm: number, toWidthNm: number): DyeCurve => ({
  leak,
  bands: [{ height, toNm, toWidthNm }],
})
const bandPass = (
  leak: number,
  height: number,
  fromNm: number,
  fromWidthNm: number,
  toNm: number,
  toWidthNm: number,
): DyeCurve => ({ leak, bands: [{ height, fromNm, fromWidthNm, toNm, toWidthNm }] })
type Edge = readonly [height: number, nm: number, widthNm: number]
const bothEnds = (leak: number, blue: Edge, red: Edge): DyeCurve => ({
  leak,
  bands: [
    { height: blue[0], toNm: blue[1], toWidthNm: blue[2] },
    { height: red[0], fromNm: red[1], fromWidthNm: red[2] },
  ],
})

/**
 * Eighteen hue families: smooth curves of our own making, nobody's sheets. Each was shaped until the generic camera and
 * an incident meter lose about what the trade expects of that hue (common practice, no source); the search is kept in
 * tests/derivations/gelFamilies.ts. A density of 1 is the usual sheet.
 */
export const gelFamilyDyes = {
  straw: longPass(0.4, 0.585, 494, 22),
  yellow: longPass(0.008, 0.961, 507, 11),
  apricot: longPass(0.162, 0.834, 542, 11),
  amber: longPass(0.078, 0.917, 548, 11),
  orange: longPass(0.024, 0.972, 568, 11),
  red: longPass(0.016, 0.979, 615, 11),
  pink: bothEnds(0.22, [0.775, 467, 16], [0.775, 551, 16]),
  rose: bothEnds(0.007, [0.988, 436, 11], [0.988, 581, 11]),
  magenta: bothEnds(0.006, [0.989, 460, 11], [0.989, 596, 11]),
  lavender: bothEnds(0.2, [0.795, 497, 18], [0.459, 570, 18]),
  violet: bothEnds(0.008, [0.987, 472, 11], [0.261, 575, 11]),
  blue: shortPass(0.074, 0.921, 476, 20),
  sky: shortPass(0.321, 0.674, 531, 31),
  turquoise: bandPass(0.008, 0.987, 442, 11, 554, 11),
  teal: bandPass(0.008, 0.988, 461, 11, 536, 11),
  green: bandPass(0.007, 0.988, 519, 11, 552, 11),
  moss: bandPass(0.008, 0.987, 519, 11, 574, 16),
  pistachio: bandPass(0.15, 0.845, 475, 14, 630, 14),
} as const satisfies Record<string, DyeCurve>
export type GelFamily = keyof typeof gelFamilyDyes

/** Share a dye of density 1 lets through, surfaces left out. */
export function dyeTransmittance(dye: DyeCurve, nm: number): number {
  let sum = dye.leak
  for (const band of dye.bands) {
    const from = band.fromNm === undefined ? 1 : risingEdge(nm, band.fromNm, band.fromWidthNm ?? 10)
    const to = band.toNm === undefined ? 1 : 1 - risingEdge(nm, band.toNm, band.toWidthNm ?? 10)
    sum += band.height * from * to
  }
  return Math.min(sum, 1)
}

/**
 * A sheet of a dye: the dye's share to the power of the density (Beer and Lambert: twice the dye passes the share of the
 * share), times what the sheet's surfaces leave, which does not grow with density.
 * @param density above 0; 1 the usual sheet, 2 the same dye twice in one sheet.
 */
export function sheetOfDye(dye: DyeCurve, density: number): TransmittanceSpectrum {
  return spectrumOf<TransmittanceSpectrum>((nm) => CLEAR_SHEET * power(dyeTransmittance(dye, nm), density))
}
