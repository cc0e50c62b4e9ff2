import { formatAngle, parseAngle } from '../../shared-core/plan/entry/camera.ts'
import { amountOf } from '../../shared-core/plan/entry/amount.ts'
import { formatLength, METRES_PER_INCH, parseLength } from '../../shared-core/plan/entry/length.ts'
import { formatNumber } from '../../shared-core/plan/entry/number.ts'
import { formatPower, parsePower } from '../../shared-core/plan/entry/power.ts'
import { formatStops, parseStops } from '../../shared-core/plan/entry/stops.ts'
import { refuse } from '../../shared-core/plan/result.ts'
import type { Head } from '../../shared-core/plan/schema/kit.ts'
import { nudgedPower } from '../ladder/powerMove.ts'
import type { Units } from '../session/board.ts'
import type { NumberFieldProps } from '../controls/NumberField.tsx'

/** How one kind of number is written, read and stepped. */
export type Quantity = Required<Pick<NumberFieldProps, 'format' | 'parse' | 'step'>>

type StepSize = 'plain' | 'shift' | 'alt'

/** One arrow key in stops: a tenth; a third with shift; a whole one with alt. */
const STOPS_A_STEP: Readonly<Record<StepSize, number>> = { plain: 0.1, shift: 1 / 3, alt: 1 }

/** Lengths as this person's tape measure reads: a step is a centimetre or half an inch, ten and a hundred of them. */
export function lengthIn(units: Units): Quantity {
  const step = units === 'metric' ? 0.01 : METRES_PER_INCH / 2
  return {
    format: (metres) => formatLength(metres, units),
    parse: (typed) => parseLength(typed, units),
    step: (metres, direction, size) => rounded(metres + direction * step * { plain: 1, shift: 10, alt: 100 }[size], 1e5),
  }
}

/** A head's power in joules, written as its own panel writes it. */
export function powerOf(head: Head): Quantity {
  return {
    format: (joules) => formatPower(joules, head),
    parse: (typed) => parsePower(typed, head),
    step: (joules, direction, size) => nudgedPower(head, joules, direction * STOPS_A_STEP[size]).energyJoules,
  }
}

export const stopsQuantity: Quantity = {
  format: formatStops,
  parse: parseStops,
  step: (stops, direction, size) => rounded(stops + direction * STOPS_A_STEP[size], 1e4),
}

export const angleQuantity: Quantity = {
  format: formatAngle,
  parse: parseAngle,
  step: (degrees, direction, size) => rounded(degrees + direction * { plain: 1, shift: 5, alt: 15 }[size], 10),
}

/** A plain number with its unit after it: "85 mm", "1.5 %". */
export function plainQuantity(unit: string, plainStep: number, digits = 0): Quantity {
  const after = unit === '' ? '' : ` ${unit}`
  return {
    format: (value) => `${formatNumber(value, digits)}${after}`,
    parse: (typed) => {
      const amount = amountOf(unit === '' ? typed : typed.replace(new RegExp(`\\s*${unit}\\.?\\s*$`, 'i'), ''))
      return amount === null ? refuse(`Write a number${unit === '' ? '' : ` of ${unit}`}.`) : { ok: true, value: amount }
    },
    step: (value, direction, size) => rounded(value + direction * plainStep * { plain: 1, shift: 5, alt: 10 }[size], 1e6),
  }
}

/** A share of 0-1 written in percent. */
export const percentQuantity: Quantity = scaled(plainQuantity('%', 1, 1), 100)

/** Seconds written in milliseconds, or as what they are from a tenth of a second on. */
export const millisecondsQuantity: Quantity = scaled(plainQuantity('ms', 0.1, 1), 1000)

function scaled(quantity: Quantity, factor: number): Quantity {
  return {
    format: (value) => quantity.format(value * factor),
    parse: (typed) => {
      const read = quantity.parse(typed)
      return read.ok ? { ok: true, value: read.value / factor } : read
    },
    step: (value, direction, size) => quantity.step(value * factor, direction, size) / factor,
  }
}

/** Steps leave no dust of binary fractions behind in the plan. */
function rounded(value: number, perUnit: number): number {
  return Math.round(value * perUnit) / perUnit
}
