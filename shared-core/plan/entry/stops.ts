import { refuse, type Result } from '../result.ts'
import { amountOf } from './amount.ts'
import { formatNumber } from './number.ts'
import { plainTyped } from './typed.ts'

const MOST_STOPS = 20

/** Stops as people say them: "-2", "+1/3", "1⅓", "minus two", "half a stop under", "one over". */
export function parseStops(typed: string): Result<{ readonly value: number }> {
  let text = plainTyped(typed).replace(/\b(?:a )?(?:stops?|ev)\b/g, ' ')
  let direction = 1
  text = text.replace(/\b(under|below|down|over|above|up)\b/g, (word) => {
    if (word === 'under' || word === 'below' || word === 'down') direction = -1
    return ' '
  })
  const amount = amountOf(text)
  if (amount === null || (direction < 0 && amount < 0)) return refuse('Write stops as -2, +1/3, 0.5 or “minus two”.')
  if (Math.abs(amount) > MOST_STOPS) return refuse(`More than ${MOST_STOPS} stops is beyond anything a set can do.`)
  return { ok: true, value: direction * amount || 0 }
}

/** "+0.3", "−1.7", "0.0": signed both ways, so that over and under are told apart at a glance. */
export function formatStops(stops: number, digits = 1): string {
  const shown = formatNumber(stops, digits)
  return Number(stops.toFixed(digits)) > 0 ? `+${shown}` : shown
}

/** "2.1 stops", "0.3 stop": a count of stops in words, without its sign. */
export function stopsInWords(stops: number): string {
  const shown = Math.abs(stops).toFixed(1)
  return `${shown} ${Number(shown) <= 1 ? 'stop' : 'stops'}`
}
