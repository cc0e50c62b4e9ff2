import { power } from '../../arithmetic/portable.ts'
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
const bothEnds = (leak: number, blue: readonly [number, number, number], red: readonly [number, number, number]): DyeCurve => ({
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
  straw: longPass(0.5, 0.48, 500, 18),
  yellow: longPass(0.05, 0.93, 500, 14),
  apricot: longPass(0.15, 0.83, 560, 28),
  amber: longPass(0.06, 0.92, 565, 24),
  orange: longPass(0.02, 0.95, 580, 16),
  red: longPass(0.008, 0.92, 615, 10),
  pink: bothEnds(0.4, [0.3, 470, 20], [0.57, 580, 18]),
  rose: bothEnds(0.1, [0.3, 460, 18], [0.85, 590, 16]),
  magenta: bothEnds(0.03, [0.55, 455, 16], [0.8, 600, 14]),
  lavender: bothEnds(0.32, [0.5, 480, 18], [0.4, 610, 18]),
  violet: bothEnds(0.02, [0.65, 470, 14], [0.4, 630, 16]),
  blue: shortPass(0.03, 0.7, 495, 14),
  sky: shortPass(0.3, 0.55, 535, 24),
  turquoise: shortPass(0.08, 0.72, 565, 18),
  teal: bandPass(0.03, 0.75, 430, 14, 555, 14),
  green: bandPass(0.02, 0.68, 490, 9, 570, 10),
  moss: bandPass(0.05, 0.7, 490, 14, 590, 20),
  pistachio: bandPass(0.3, 0.7, 470, 18, 620, 30),
} as const satisfies Record<string, DyeCurve>
export type GelFamily = keyof typeof gelFamilyDyes

const rising = (nm: number, edgeNm: number, widthNm: number): number => 1 / (1 + Math.exp((edgeNm - nm) / widthNm))

/** Share a dye of density 1 lets through, surfaces left out. */
export function dyeTransmittance(dye: DyeCurve, nm: number): number {
  let sum = dye.leak
  for (const band of dye.bands) {
    const from = band.fromNm === undefined ? 1 : rising(nm, band.fromNm, band.fromWidthNm ?? 10)
    const to = band.toNm === undefined ? 1 : 1 - rising(nm, band.toNm, band.toWidthNm ?? 10)
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
