/** A cell: numbers stay numbers. */
export type Cell = string | number

/** A spreadsheet takes text that begins like this for a formula and may run it (OWASP, "CSV Injection"). */
const BEGINS_FORMULA = /^[\s]*[=+\-@\t\r＝＋－＠]/

/** Rows as RFC 4180 has them: lines end in CR LF, cells that need it are quoted. Text that a spreadsheet would run is defused by an apostrophe. */
export function csvText(rows: readonly (readonly Cell[])[]): string {
  return rows.map((row) => `${row.map(cellText).join(',')}\r\n`).join('')
}

function cellText(cell: Cell): string {
  if (typeof cell === 'number') return Number.isFinite(cell) ? String(cell) : ''
  const safe = BEGINS_FORMULA.test(cell) ? `'${cell}` : cell
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe
}
