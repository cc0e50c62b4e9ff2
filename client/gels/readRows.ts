import { refuse, type Result } from '../../shared-core/plan/result.ts'

export type GelRow = readonly [wavelengthNm: number, transmittance: number]

const LEAST_NM = 200
const MOST_NM = 2_000
const MOST_ROWS = 1_000
/** A measured sheet must say something about most of what the eye sees. */
const MUST_REACH_NM = [430, 660] as const

/**
 * A measured sheet from pasted or dropped rows: a wavelength in nanometres and a transmittance on each line, parted by
 * comma, semicolon, tab or spaces. Transmittance as a share (0-1) or, when any value is above 1.5, in percent. Lines
 * without two numbers (headings, empty ones) are passed over; further columns are left alone.
 */
export function readRows(text: string): Result<{ readonly rows: readonly GelRow[] }> {
  const pairs = text
    .slice(0, 200_000)
    .split(/\r?\n/)
    .map(pairOf)
    .filter((pair) => pair !== null)
  if (pairs.length < 2) return refuse('That needs at least two lines, each a wavelength and a transmittance, such as 450, 0.32.')
  if (pairs.length > MOST_ROWS) return refuse(`That is ${pairs.length} rows; ${MOST_ROWS} are enough for any sheet.`)
  const outside = pairs.find(([nm]) => nm < LEAST_NM || nm > MOST_NM)
  if (outside) return refuse(`${outside[0]} is no wavelength in nanometres between ${LEAST_NM} and ${MOST_NM}.`)
  const percent = pairs.some(([, share]) => share > 1.5)
  const rows = pairs.map(([nm, share]): GelRow => [nm, percent ? share / 100 : share])
  const impossible = rows.find(([, share]) => share < -0.01 || share > 1.01)
  if (impossible) return refuse(`At ${impossible[0]} nm more comes out than goes in, or less than nothing.`)
  const wavelengths = rows.map(([nm]) => nm)
  if (Math.min(...wavelengths) > MUST_REACH_NM[0] || Math.max(...wavelengths) < MUST_REACH_NM[1]) {
    return refuse(`The rows must reach from ${MUST_REACH_NM[0]} to ${MUST_REACH_NM[1]} nm.`)
  }
  return { ok: true, rows: rows.map(([nm, share]) => [nm, Math.min(1, Math.max(0, share))]) }
}

/** Decimal commas are read where the columns are parted by something else. */
function pairOf(line: string): GelRow | null {
  const trimmed = line.trim()
  const parted = /[;\t]/.test(trimmed) ? trimmed.split(/\s*[;\t]\s*/) : /,\s/.test(trimmed) || /^[^,]*,[^,]*$/.test(trimmed) ? trimmed.split(/\s*,\s*/) : trimmed.split(/[,\s]+/)
  const [nm, share] = parted.map((cell) => numberOf(cell, !trimmed.includes(',') || /[;\t]/.test(trimmed)))
  return nm === undefined || share === undefined || Number.isNaN(nm) || Number.isNaN(share) ? null : [nm, share]
}

function numberOf(cell: string, commaIsPoint: boolean): number {
  const plain = (commaIsPoint ? cell.replace(',', '.') : cell).replace(/\s*(%|nm)$/i, '')
  return plain === '' ? NaN : Number(plain)
}
