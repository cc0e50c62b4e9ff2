import { inchesText, METRES_PER_INCH, type Units } from './length.ts'

/** "90 × 120 cm", `35½" × 47"`. */
export function formatSize(widthMetres: number, heightMetres: number, units: Units): string {
  if (units === 'metric') return `${centimetres(widthMetres)} × ${centimetres(heightMetres)} cm`
  return `${inches(widthMetres)} × ${inches(heightMetres)}`
}

const centimetres = (metres: number): string => String(Math.round(metres * 1_000) / 10)
const inches = (metres: number): string => inchesText(Math.round((metres / METRES_PER_INCH) * 2))
