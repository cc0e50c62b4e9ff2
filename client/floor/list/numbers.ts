import { add, distance, scale, subtract, type Vector } from '../../../shared-core/arithmetic/vector.ts'
import { formatAngle, parseAngle } from '../../../shared-core/plan/entry/camera.ts'
import { formatLength, parseLength, type Units } from '../../../shared-core/plan/entry/length.ts'
import type { EditResult } from '../../../shared-core/plan/edits/changing.ts'
import { refuse, type Result } from '../../../shared-core/plan/result.ts'
import type { Plan } from '../../../shared-core/plan/schema/plan.ts'

/** One number of a thing: how to read it, how a person writes it, and the edit that sets it. */
export interface ThingNumber {
  readonly value: number
  readonly unit: 'metres' | 'degrees'
  readonly edit: (plan: Plan, lookId: string, value: number) => EditResult
}

/** A line of the list: one kind of number across all things of a kind. */
export interface NumberRow<Column> {
  readonly label: string
  /** For a screen reader, when the label alone is too short. */
  readonly spoken: string
  /** Null where a thing has no such number. */
  readonly numberOf: (column: Column) => ThingNumber | null
}

/** A number as this person writes it. */
export function formatNumber(number: Pick<ThingNumber, 'unit'>, units: Units): (value: number) => string {
  return number.unit === 'metres' ? (value) => formatLength(value, units) : formatAngle
}

/** What was typed, in whatever way, as a number of that kind. */
export function parseNumber(number: Pick<ThingNumber, 'unit'>, units: Units): (typed: string) => Result<{ readonly value: number }> {
  return number.unit === 'metres' ? (typed) => parseLength(typed, units) : parseAngle
}

/** One arrow key: a centimetre or a degree; Shift ten of them; Alt a tenth. */
export function stepNumber(number: Pick<ThingNumber, 'unit'>): (value: number, direction: 1 | -1, size: 'plain' | 'shift' | 'alt') => number {
  const step = number.unit === 'metres' ? 0.01 : 1
  const times = { plain: 1, shift: 10, alt: 0.1 } as const
  // Off the binary dust that repeated tenths leave.
  return (value, direction, size) => Math.round((value + direction * step * times[size]) * 1e6) / 1e6
}

/** The place as far from `served` as asked for, on the line it is on now. Refused when the two are one point. */
export function placeAtDistance(place: Vector, served: Vector, metres: number): Result<{ readonly place: Vector }> {
  const now = distance(place, served)
  if (now < 1e-6) return refuse('It stands at the place it lights: move it away first.')
  if (metres < 0.05) return refuse('Nearer than 5 cm there is no room for a light.')
  const moved = add(served, scale(subtract(place, served), metres / now))
  return { ok: true, place: moved }
}
