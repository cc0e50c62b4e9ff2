import { spectrumOf, type TransmittanceSpectrum } from '../spectrum.ts'

/** A measured pair: wavelength in nm, share let through 0-1. */
export type GelRow = readonly [nm: number, share: number]

/**
 * A sheet from its measured rows: straight lines between them, the end values held beyond them.
 * @param rows in any order, at least one; equal wavelengths are averaged.
 */
export function transmittanceOfRows(rows: readonly GelRow[]): TransmittanceSpectrum {
  if (rows.length === 0) throw new RangeError('a measured sheet needs at least one row')
  const points = averagedByWavelength(rows)
  return spectrumOf<TransmittanceSpectrum>((nm) => valueAt(points, nm))
}

function averagedByWavelength(rows: readonly GelRow[]): GelRow[] {
  const sorted = [...rows].sort((a, b) => a[0] - b[0])
  const points: GelRow[] = []
  let from = 0
  while (from < sorted.length) {
    const nm = (sorted[from] as GelRow)[0]
    let sum = 0
    let to = from
    for (; to < sorted.length && (sorted[to] as GelRow)[0] === nm; to++) sum += (sorted[to] as GelRow)[1]
    points.push([nm, Math.min(Math.max(sum / (to - from), 0), 1)])
    from = to
  }
  return points
}

function valueAt(points: readonly GelRow[], nm: number): number {
  const first = points[0] as GelRow
  const last = points[points.length - 1] as GelRow
  if (nm <= first[0]) return first[1]
  if (nm >= last[0]) return last[1]
  let above = 1
  while ((points[above] as GelRow)[0] < nm) above++
  const [lowNm, lowShare] = points[above - 1] as GelRow
  const [highNm, highShare] = points[above] as GelRow
  return lowShare + ((highShare - lowShare) * (nm - lowNm)) / (highNm - lowNm)
}
