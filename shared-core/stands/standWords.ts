import { formatLength, type Units } from '../plan/entry/length.ts'
import { formatSize } from '../plan/entry/size.ts'
import type { Aimed } from './aimed.ts'
import type { GelOnStand, LightStand } from './stand.ts'

/** Common practice, no source: the gap that keeps a gel off the glass. */
const AIR_GAP_CENTIMETRES = [2, 5] as const

/** "Leave 2–5 cm of air to tube and glass; …", `Leave 1"–2" of air …`. */
export function airGapWords(units: Units): string {
  const [least, most] = AIR_GAP_CENTIMETRES
  const gap = units === 'metric' ? `${least}–${most} cm` : `${formatLength(least / 100, units)}–${formatLength(most / 100, units)}`
  return `Leave ${gap} of air to tube and glass; no gap at the edge for clear light.`
}

/** "Aimed at the subject, 1.45 m high: 12° down." */
export function aimWords({ at, rightOfTMetres, behindTMetres, heightMetres, tiltDegrees }: Aimed, units: Units): string {
  const tilt = Math.abs(tiltDegrees) < 1 ? 'level' : `${Math.round(Math.abs(tiltDegrees))}° ${tiltDegrees > 0 ? 'up' : 'down'}`
  const height = `${formatLength(heightMetres, units)} high`
  if (at !== null) return `Aimed at ${at}, ${height}: ${tilt}.`
  const away = (metres: number, there: string, here: string): string => `${formatLength(Math.abs(metres), units)} ${metres > 0 ? there : here}`
  return `Aimed at a point ${away(rightOfTMetres, 'camera right', 'camera left')} of the T, ${away(behindTMetres, 'behind it', 'before it')}, ${height}: ${tilt}.`
}

/** "cut 95 × 125 cm"; empty where no cut was found. */
export function cutWords({ longMillimetres, shortMillimetres }: GelOnStand, units: Units): string {
  return longMillimetres === null || shortMillimetres === null ? '' : `cut ${formatSize(longMillimetres / 1000, shortMillimetres / 1000, units)}`
}

/** What the front that all is measured to is called: "octa", "umbrella", "head". */
export function frontName({ modifier }: Pick<LightStand, 'modifier'>): string {
  return modifier === null ? 'head' : modifier.kind.startsWith('umbrella') ? 'umbrella' : modifier.kind.replace('-', ' ')
}

const EIGHTHS = ['to the camera', 'to the camera and camera right', 'camera right', 'to the background and camera right', 'to the background',
  'to the background and camera left', 'camera left', 'to the camera and camera left'] as const

/** "Faces camera right (90°), tipped 10° up." 0 faces the camera, 90 camera right. */
export function facingWords(facingDegrees: number, tiltDegrees: number): string {
  const turn = ((facingDegrees % 360) + 360) % 360
  const tilt = Math.abs(tiltDegrees) < 1 ? '' : `, tipped ${Math.round(Math.abs(tiltDegrees))}° ${tiltDegrees > 0 ? 'up' : 'down'}`
  return `Faces ${EIGHTHS[Math.round(turn / 45) % 8]!} (${Math.round(turn)}°)${tilt}.`
}
