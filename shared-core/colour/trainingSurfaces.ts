import { risingEdge } from '../spectra/edge.ts'
import { spectrumOf, type ReflectanceSpectrum } from '../spectra/spectrum.ts'

/**
 * The surfaces the camera and its matrix are fitted on: soft edges up and down, soft bands and gaps across the spectrum,
 * at two strengths of colour. Made from a formula and not from measured skins or papers, which stay free to check it.
 */
export const trainingSurfaces: readonly ReflectanceSpectrum[] = [0.15, 0.45].flatMap((floor) => {
  const peak = 0.8
  const between = (shape: (nm: number) => number): ReflectanceSpectrum =>
    spectrumOf<ReflectanceSpectrum>((nm) => floor + (peak - floor) * shape(nm))
  const band = (nm: number, middle: number): number => risingEdge(nm, middle - 40, 14) * (1 - risingEdge(nm, middle + 40, 14))
  const edges = [460, 490, 520, 550, 580, 610]
  const middles = [430, 470, 510, 550, 590, 630]
  return [
    ...edges.map((edge) => between((nm) => risingEdge(nm, edge, 18))),
    ...edges.map((edge) => between((nm) => 1 - risingEdge(nm, edge, 18))),
    ...middles.map((middle) => between((nm) => band(nm, middle))),
    ...middles.map((middle) => between((nm) => 1 - band(nm, middle))),
  ]
})
