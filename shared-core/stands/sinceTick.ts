import { gridWords } from '../ask/lightChangeWords.ts'
import { stopsFromTimes } from '../arithmetic/portable.ts'
import { formatLength, type Units } from '../plan/entry/length.ts'
import { formatPower } from '../plan/entry/power.ts'
import { formatStops } from '../plan/entry/stops.ts'
import type { Light, Look, Piece } from '../plan/schema/look.ts'
import type { Plan } from '../plan/schema/plan.ts'
import type { Place } from '../plan/schema/quantities.ts'
import type { Tick } from '../rig/ticks.ts'

/** Less than a tape can tell. */
export const LEAST_METRES = 0.005
export const LEAST_STOPS = 0.05
export const LEAST_DEGREES = 1

/**
 * What the plan wants otherwise than it did when a stand was ticked, as what is to be done now: "0.40 m to camera left",
 * "15 cm higher". Empty when the stand still stands as planned. A stand that is no longer in the look says so.
 */
export function sinceTick({ stand, subjectXMetres, subjectYMetres }: Tick, plan: Plan, look: Look, units: Units): readonly string[] {
  const mark = { xMetres: look.subject.xMetres - subjectXMetres, yMetres: look.subject.yMetres - subjectYMetres }
  const markWords = wayWords({ ...mark, zMetres: 0 }, units).map((words) => `the T moved ${words}: tape again`)
  if (stand.kind === 'marks') {
    const { camera, backdropYMetres } = stand.as
    return [
      ...markWords,
      ...wayWords(offset(camera, look.camera.place), units).map((words) => `the camera ${words}`),
      ...wayWords({ xMetres: 0, yMetres: look.backdrop.yMetres - backdropYMetres, zMetres: 0 }, units).map((words) => `the backdrop ${words}`),
    ]
  }
  if (stand.kind === 'light') {
    const now = look.lights[stand.id]
    if (now === undefined || !now.on) return ['not in this look any more: take it away or switch it off']
    return [...lightWords(stand.as, now, plan, units), ...markWords]
  }
  const now = look.pieces[stand.id]
  if (now === undefined) return ['not in this look any more: take it away']
  return [...pieceWords(stand.as, now, units), ...markWords]
}

function lightWords(then: Light, now: Light, plan: Plan, units: Units): string[] {
  const words = wayWords(offset(then.place, now.place), units)
  if (words.length === 0 && wayWords(offset(then.aim, now.aim), units).length > 0) words.push('aimed elsewhere')
  if (Math.abs(then.rollDegrees - now.rollDegrees) >= LEAST_DEGREES) words.push(`rolled to ${Math.round(now.rollDegrees)}°`)
  if (then.headId !== now.headId) words.push(`on ${plan.heads[now.headId]?.name ?? 'another head'}`)
  if (then.modifierId !== now.modifierId) words.push(`in ${plan.modifiers[now.modifierId]?.name ?? 'another modifier'}`)
  if (then.grid.kind !== now.grid.kind || (now.grid.kind !== 'none' && then.grid.openingDegrees !== now.grid.openingDegrees)) {
    words.push(gridWords(now.grid))
  }
  if (then.gelIds.join() !== now.gelIds.join()) {
    words.push(now.gelIds.length === 0 ? 'no gel' : `gel ${now.gelIds.map((id) => plan.gels[id]?.name ?? id).join(' + ')}`)
  }
  if (now.gelIds.length > 0 && then.gelPlace !== now.gelPlace) words.push(now.gelPlace === 'at-the-head' ? 'gel at the head' : 'gel over the front')
  const stops = stopsFromTimes(now.energyJoules / then.energyJoules)
  const head = plan.heads[now.headId]
  if (Math.abs(stops) >= LEAST_STOPS) words.push(`power ${formatStops(stops)}${head === undefined ? '' : `, to ${formatPower(now.energyJoules, head)}`}`)
  if (then.support !== now.support) words.push(`on a ${now.support.replace('-', ' ')}`)
  if (then.sandbag !== now.sandbag) words.push(now.sandbag ? 'sandbag on' : 'no sandbag')
  if (then.safetyCable !== now.safetyCable) words.push(now.safetyCable ? 'safety cable on' : 'no safety cable')
  if (then.circuitId !== now.circuitId) words.push(`plugged into ${plan.room.circuits[now.circuitId]?.label ?? 'another circuit'}`)
  return words
}

function pieceWords(then: Piece, now: Piece, units: Units): string[] {
  const words = wayWords(offset(then.place, now.place), units)
  const turned = then.facingDegrees !== now.facingDegrees || then.tiltDegrees !== now.tiltDegrees
  if (turned) words.push('turned')
  if (then.openDegrees !== now.openDegrees) words.push(`opened to ${Math.round(now.openDegrees)}°`)
  if (then.kind !== now.kind || then.widthMetres !== now.widthMetres || then.heightMetres !== now.heightMetres) words.push('another piece')
  if (then.front !== now.front || then.back !== now.back || then.transmittance !== now.transmittance) words.push('another cloth')
  return words
}

/** From one place to another, axis by axis. */
export function offset(from: Place, to: Place): Place {
  return { xMetres: to.xMetres - from.xMetres, yMetres: to.yMetres - from.yMetres, zMetres: to.zMetres - from.zMetres }
}

/** One length for each way it went: left or right, back or forth, up or down. */
export function wayWords({ xMetres, yMetres, zMetres }: Place, units: Units): string[] {
  const words: string[] = []
  const say = (metres: number, towards: string): void => {
    if (Math.abs(metres) >= LEAST_METRES) words.push(`${formatLength(Math.abs(metres), units)} ${towards}`)
  }
  say(xMetres, `to camera ${xMetres > 0 ? 'right' : 'left'}`)
  say(yMetres, yMetres > 0 ? 'back' : 'towards the camera')
  say(zMetres, zMetres > 0 ? 'higher' : 'lower')
  return words
}
