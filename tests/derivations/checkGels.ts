import { spectrumOf, type TransmittanceSpectrum } from '../../shared-core/spectra/spectrum.ts'

/** s(u) = 1 / (1 + exp(−u)): the edge all made-up check gels are built from. */
const s = (u: number): number => 1 / (1 + Math.exp(-u))

/**
 * Seven made-up gels with logistic edges, for which raw clipping of two measured cameras, colours and losses were worked
 * out independently. They are nobody's product.
 */
export const checkGels = {
  orange: spectrumOf<TransmittanceSpectrum>((nm) => 0.02 + 0.86 * s((nm - 570) / 10)),
  red: spectrumOf<TransmittanceSpectrum>((nm) => 0.005 + 0.855 * s((nm - 610) / 8)),
  amber: spectrumOf<TransmittanceSpectrum>((nm) => 0.05 + 0.85 * s((nm - 525) / 10)),
  teal: spectrumOf<TransmittanceSpectrum>((nm) => 0.1 + 0.6 * s((nm - 440) / 12) * s((560 - nm) / 18)),
  blue: spectrumOf<TransmittanceSpectrum>((nm) => 0.02 + 0.5 * s((500 - nm) / 12)),
  green: spectrumOf<TransmittanceSpectrum>((nm) => 0.03 + 0.62 * s((nm - 490) / 9) * s((570 - nm) / 9)),
  magenta: spectrumOf<TransmittanceSpectrum>((nm) => 0.04 + 0.78 * (s((450 - nm) / 12) + s((nm - 600) / 10))),
} as const
export type CheckGel = keyof typeof checkGels

/**
 * Raw R, G, B behind each gel, balanced to ungelled D55, of two measured cameras: one measured at NPL (Darrodi et al.
 * 2015), one of the AMPAS rawtoaces set. Sums over 400-700 nm at 5 nm.
 */
export const measuredRaw: Readonly<Record<CheckGel, readonly [npl: readonly number[], ampas: readonly number[]]>> = {
  orange: [[0.713, 0.1766, 0.0302], [0.6374, 0.1748, 0.0348]],
  red: [[0.3669, 0.0321, 0.0083], [0.3116, 0.0298, 0.0126]],
  amber: [[0.8183, 0.5178, 0.1173], [0.833, 0.5124, 0.1089]],
  teal: [[0.21, 0.5123, 0.5621], [0.2457, 0.5209, 0.5421]],
  blue: [[0.0535, 0.1508, 0.41], [0.0391, 0.1446, 0.4206]],
  green: [[0.1109, 0.4205, 0.2004], [0.1858, 0.4361, 0.181]],
  magenta: [[0.4829, 0.1246, 0.268], [0.4069, 0.1094, 0.2987]],
}
