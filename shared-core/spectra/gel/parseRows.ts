import type { GelRow } from './rows.ts'

/** What is wrong with a sheet's file, in words for whoever chose it. `line` counts from 1; 0 is the whole file. */
export interface RowProblem {
  readonly line: number
  readonly text: string
}

export type ParsedGelRows =
  | { readonly ok: true; readonly rows: readonly GelRow[]; readonly remarks: readonly string[] }
  | { readonly ok: false; readonly problems: readonly RowProblem[] }

const LEAST_ROWS = 2
const MOST_ROWS = 1_000
const LEAST_NM = 200
const MOST_NM = 2_000
const MOST_PROBLEMS = 20
/** Instruments overshoot a little; more than this is no transmittance. */
const OVERSHOOT = 1.02
/** A measured sheet must say something about most of what the eye sees. */
const MUST_REACH_NM = [430, 660] as const
/** No table of shares holds a figure above this; every table of percents does. */
const PERCENT_ABOVE = 2

interface NumberedRow {
  readonly line: number
  readonly nm: number
  readonly value: number
}

/**
 * Reads a sheet's transmittance from the text of a table: one wavelength in nm and one transmittance a line.
 *
 * Columns may be parted by comma, semicolon, tab or blanks; decimals may be written with a comma where that is not the
 * separator; transmittance may run 0-1 or 0-100, told by a % behind the figures or by a value above 2. Lines of words
 * before the first pair of numbers are headings; empty lines and lines that start with # are passed over. Further columns
 * are ignored. Refused with every problem named, at most twenty, when a line cannot be read or is impossible, when the
 * rows do not reach from 430 to 660 nm, or when there are fewer than two or more than a thousand.
 */
export function parseGelRows(text: string): ParsedGelRows {
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\r|\n/)
  const problems: RowProblem[] = []
  const found: NumberedRow[] = []
  let saysPercent = false
  let commasUnclear = false
  lines.forEach((raw, index) => {
    const content = raw.trim()
    if (content === '' || content.startsWith('#')) return
    const pair = numbersOf(content.replaceAll('%', ''))
    if (pair) {
      found.push({ line: index + 1, nm: pair[0], value: pair[1] })
      if (content.includes('%')) saysPercent = true
      if (/^\d+(,\d+){2,3}$/.test(content)) commasUnclear = true
    } else if (found.length > 0) {
      problems.push({ line: index + 1, text: `not a wavelength and a transmittance: “${shorten(content)}”` })
    }
  })
  if (commasUnclear) {
    const text = 'commas part the columns and may also stand for decimal points: part the columns by semicolons'
    problems.push({ line: 0, text })
  }
  if (found.length < LEAST_ROWS) {
    problems.push({ line: 0, text: `at least ${LEAST_ROWS} rows of wavelength and transmittance, found ${found.length}` })
  }
  if (found.length > MOST_ROWS) problems.push({ line: 0, text: `at most ${MOST_ROWS} rows, found ${found.length}` })
  const percent = saysPercent || found.some(({ value }) => value > PERCENT_ABOVE)
  const rows = found.map((row) => sharesOf(row, percent, problems))
  if (problems.length === 0 && !reachesFarEnough(rows)) {
    problems.push({ line: 0, text: `the rows must reach from ${MUST_REACH_NM[0]} to ${MUST_REACH_NM[1]} nm` })
  }
  if (problems.length > 0) return { ok: false, problems: problems.slice(0, MOST_PROBLEMS) }
  return { ok: true, rows, remarks: remarksOn(rows, percent) }
}

/** The first two numbers of a line, or null. */
function numbersOf(content: string): [number, number] | null {
  const separator = [';', '\t'].find((mark) => content.includes(mark)) ?? (/,\s|\s/.test(content) ? /,?\s+/ : ',')
  const cells = content.split(separator).map((cell) => cell.trim()).filter((cell) => cell !== '')
  const numbers = cells.slice(0, 2).map((cell) => {
    const bare = cell.replace(/^"(.*)"$/, '$1').replace(/\s*nm$/i, '')
    return /^[+-]?(\d+([.,]\d*)?|[.,]\d+)(e[+-]?\d+)?$/i.test(bare) ? Number(bare.replace(',', '.')) : Number.NaN
  })
  const [nm, value] = numbers
  return nm !== undefined && value !== undefined && Number.isFinite(nm) && Number.isFinite(value) ? [nm, value] : null
}

function sharesOf({ line, nm, value }: NumberedRow, percent: boolean, problems: RowProblem[]): GelRow {
  const share = percent ? value / 100 : value
  if (nm > 0 && nm < 5) {
    problems.push({ line, text: `${nm} looks like micrometres; wavelengths are wanted in nanometres` })
  } else if (nm < LEAST_NM || nm > MOST_NM) {
    problems.push({ line, text: `wavelength ${nm} nm is outside ${LEAST_NM}-${MOST_NM} nm` })
  }
  if (share < -0.01) problems.push({ line, text: `transmittance ${value} is below nothing` })
  if (share > OVERSHOOT) problems.push({ line, text: `transmittance ${value} is more than all the light` })
  return [nm, Math.min(Math.max(share, 0), 1)]
}

function reachesFarEnough(rows: readonly GelRow[]): boolean {
  return rows.some(([nm]) => nm <= MUST_REACH_NM[0]) && rows.some(([nm]) => nm >= MUST_REACH_NM[1])
}

function remarksOn(rows: readonly GelRow[], percent: boolean): string[] {
  const wavelengths = rows.map(([nm]) => nm).sort((a, b) => a - b)
  const first = wavelengths[0] as number
  const last = wavelengths[wavelengths.length - 1] as number
  const widest = wavelengths.slice(1).reduce((most, nm, k) => Math.max(most, nm - (wavelengths[k] as number)), 0)
  const remarks: string[] = []
  if (percent) remarks.push('read as percent')
  if (first > 400 || last < 700) remarks.push(`measured ${first}-${last} nm only; the end values are held beyond`)
  if (widest > 25) remarks.push(`gaps of up to ${widest} nm are bridged by straight lines`)
  return remarks
}

const shorten = (content: string): string => (content.length > 40 ? `${content.slice(0, 39)}…` : content)
