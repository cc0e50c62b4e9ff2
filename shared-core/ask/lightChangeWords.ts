import { degreesFromRadians, stopsFromTimes } from '../arithmetic/portable.ts'
import { direction, distance, dot, subtract, type Vector } from '../arithmetic/vector.ts'
import { formatStops } from '../plan/entry/stops.ts'
import type { Light, Piece } from '../plan/schema/look.ts'
import type { Plan } from '../plan/schema/plan.ts'
import { vectorOf } from '../set/emitter.ts'

const LEAST_METRES = 0.005
const LEAST_DEGREES = 0.5

/** What was done to one light, as people say it; empty when nothing that lights was. */
export function lightChangeWords(before: Light, after: Light, plan: Plan, subject: Vector): readonly string[] {
  const words: string[] = []
  if (before.on !== after.on) words.push(after.on ? 'on' : 'off')
  const moved = moveWords(vectorOf(before.place), vectorOf(after.place), subject)
  if (moved) words.push(moved)
  else if (turnDegrees(before, after) >= LEAST_DEGREES) words.push(`turned ${Math.round(turnDegrees(before, after))}°`)
  if (before.modifierId !== after.modifierId) words.push(`in ${plan.modifiers[after.modifierId]?.name ?? 'another modifier'}`)
  if (before.rollDegrees !== after.rollDegrees) words.push('rolled')
  if (before.grid.kind !== after.grid.kind || (after.grid.kind !== 'none' && before.grid.openingDegrees !== after.grid.openingDegrees)) {
    words.push(gridWords(after.grid))
  }
  if (before.gelIds.join() !== after.gelIds.join()) {
    words.push(after.gelIds.length === 0 ? 'clear' : `in ${after.gelIds.map((id) => plan.gels[id]?.name ?? id).join(' + ')}`)
  }
  if (before.headId !== after.headId) words.push(`on ${plan.heads[after.headId]?.name ?? 'another head'}`)
  const stops = stopsFromTimes(after.energyJoules / before.energyJoules)
  if (Math.abs(stops) >= 0.05) words.push(`power ${formatStops(stops)}`)
  return words.length === 0 ? [] : [`${after.letter} ${words.join(', ')}`]
}

/** What was done to one piece; empty when it stands as it stood. */
export function pieceChangeWords(before: Piece, after: Piece, subject: Vector): readonly string[] {
  const words: string[] = []
  const moved = moveWords(vectorOf(before.place), vectorOf(after.place), subject)
  if (moved) words.push(moved)
  if (before.facingDegrees !== after.facingDegrees || before.tiltDegrees !== after.tiltDegrees) words.push('turned')
  if (before.widthMetres !== after.widthMetres || before.heightMetres !== after.heightMetres) words.push('another size')
  if (before.openDegrees !== after.openDegrees) words.push(`opened to ${Math.round(after.openDegrees)}°`)
  if (before.front !== after.front || before.back !== after.back || before.transmittance !== after.transmittance) words.push('another cloth')
  return words.length === 0 ? [] : [`${after.label} ${words.join(', ')}`]
}

/** "40 cm nearer", or which way it went where it neither came nor left; null when it stood still. */
export function moveWords(before: Vector, after: Vector, subject: Vector): string | null {
  const moved = distance(before, after)
  if (moved < LEAST_METRES) return null
  const farther = distance(after, subject) - distance(before, subject)
  if (Math.abs(farther) > moved / 2) return `${centimetres(farther)} ${farther < 0 ? 'nearer' : 'farther'}`
  return sideWords(subtract(after, before))
}

/** "30 cm to camera left": the axis that most of a move goes along. */
export function sideWords([x, y, z]: Vector): string {
  const most = Math.max(Math.abs(x), Math.abs(y), Math.abs(z))
  if (most === Math.abs(z)) return `${centimetres(z)} ${z > 0 ? 'higher' : 'lower'}`
  if (most === Math.abs(x)) return `${centimetres(x)} to camera ${x > 0 ? 'right' : 'left'}`
  return `${centimetres(y)} ${y > 0 ? 'back' : 'towards the camera'}`
}

function turnDegrees(before: Light, after: Light): number {
  const beam = ({ place, aim }: Light) => direction(subtract(vectorOf(aim), vectorOf(place)))
  return degreesFromRadians(Math.acos(Math.min(1, dot(beam(before), beam(after)))))
}

/** "with a 40° honeycomb" */
export function gridWords(grid: Light['grid']): string {
  if (grid.kind === 'none') return 'without its grid'
  return `with a ${grid.openingDegrees}° ${grid.kind === 'fabric' ? 'fabric grid' : 'honeycomb'}`
}

const centimetres = (metres: number): string => `${Math.round(Math.abs(metres) * 100)} cm`
