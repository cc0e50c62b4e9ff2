import { refuse, type Result } from '../result.ts'
import { inchesText, METRES_PER_INCH, parseLength, type Units } from './length.ts'
import { plainTyped } from './typed.ts'

/** Bare sizes below this are metres or feet, others centimetres or inches: boxes are sold so. */
const SMALLEST_BARE = 10

/**
 * Width and height: "90x120", "1.8 x 1.8", "35 × 140 cm", "4x4 ft", "3'x4'". One number alone is both, as for an octa.
 * A unit after the last number holds for both.
 */
export function parseSize(
  typed: string, units: Units,
): Result<{ readonly widthMetres: number; readonly heightMetres: number }> {
  const text = plainTyped(typed)
  const sides = text.split(/ ?(?:x|×|\*|by) ?/)
  const [first, last] = [sides[0] ?? '', sides[sides.length - 1] ?? '']
  if (sides.length > 2) return refuse('Write width and height, such as 90x120.')
  const unit = /[a-z"']+\.?$/.exec(last)?.[0] ?? ''
  const given = (side: string) => (/[a-z"']/.test(side) || unit === '' ? side : `${side} ${unit}`)
  const bareUnit = unit !== '' ? '' : bareUnitOf([first, last], units)
  const width = parseLength(`${given(first)}${bareUnit}`, units)
  if (!width.ok) return width
  const height = parseLength(`${given(last)}${bareUnit}`, units)
  if (!height.ok) return height
  if (width.value < 0.01 || height.value < 0.01) return refuse('A size is at least 1 cm.')
  return { ok: true, widthMetres: width.value, heightMetres: height.value }
}

/** "90 × 120 cm", `35½" × 47"`. */
export function formatSize(widthMetres: number, heightMetres: number, units: Units): string {
  if (units === 'metric') return `${centimetres(widthMetres)} × ${centimetres(heightMetres)} cm`
  return `${inches(widthMetres)} × ${inches(heightMetres)}`
}

function bareUnitOf(sides: readonly string[], units: Units): string {
  const large = sides.some((side) => Number(side.replace(',', '.')) >= SMALLEST_BARE)
  if (units === 'metric') return large ? ' cm' : ' m'
  return large ? ' in' : ' ft'
}

const centimetres = (metres: number): string => String(Math.round(metres * 1_000) / 10)
const inches = (metres: number): string => inchesText(Math.round((metres / METRES_PER_INCH) * 2))
