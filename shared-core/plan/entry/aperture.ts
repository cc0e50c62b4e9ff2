import { stopsFromTimes, timesFromStops } from '../../arithmetic/portable.ts'
import { refuse, type Result } from '../result.ts'
import { amountOf } from './amount.ts'
import { plainTyped } from './typed.ts'

/** Names of the full stops; each stands for the square root of two to its power (ISO 517), f/5.6 for 5.657. */
const fullStops = ['0.7', '1', '1.4', '2', '2.8', '4', '5.6', '8', '11', '16', '22', '32', '45', '64', '90', '128'] as const
const FIRST_STOP = -1
const LAST_STOP = 14

const spoken: Readonly<Record<string, string>> = {
  'one-four': '1.4', 'one four': '1.4', 'two-eight': '2.8', 'two eight': '2.8', 'five-six': '5.6', 'five six': '5.6',
  'one': '1', 'two': '2', 'four': '4', 'eight': '8', 'eleven': '11', 'sixteen': '16', 'twenty-two': '22',
  'thirty-two': '32', 'forty-five': '45', 'sixty-four': '64', 'ninety': '90',
}

const howTo = 'Write a full stop and tenths as a meter shows them, such as 8, 8.3 (f/8 and three tenths) or 5.6 1/2.'

/**
 * An aperture, as an exact f-number. "f/8.3" is f/8 and three tenths of a stop, never the number 8.3: that is what
 * meters show and people say. A number that no full stop begins ("6.3", "7.1", "13") is the engraving of a camera.
 */
export function parseFNumber(typed: string): Result<{ readonly value: number }> {
  const text = spelt(plainTyped(typed).replace(/^f(?![a-z]) ?[/:]? ?/, ''))
  const stops = stopsOf(text)
  if (stops === null) return refuse(howTo)
  if (stops < FIRST_STOP - 0.05 || stops > LAST_STOP + 0.05) return refuse('Lenses and meters go from f/0.7 to f/128.')
  return { ok: true, value: fNumberOf(Math.min(Math.max(stops, FIRST_STOP), LAST_STOP)) }
}

/** "f/8", "f/8 + 0.3": the full stop below and tenths past it. */
export function formatFNumber(fNumber: number): string {
  const tenths = Math.round(20 * stopsFromTimes(fNumber))
  const index = Math.min(Math.max(Math.floor(tenths / 10) - FIRST_STOP, 0), fullStops.length - 1)
  const past = tenths - (index + FIRST_STOP) * 10
  const full = `f/${fullStops[index] ?? ''}`
  return past === 0 ? full : `${full} ${past > 0 ? '+' : '−'} ${(Math.abs(past) / 10).toFixed(1)}`
}

function spelt(text: string): string {
  for (const [words, digits] of Object.entries(spoken).sort(([a], [b]) => b.length - a.length)) {
    if (text === words || text.startsWith(`${words} `)) return digits + text.slice(words.length)
  }
  return text
}

/** Whole stops come out exactly, f/8 as 8: people compare them. */
function fNumberOf(stops: number): number {
  const whole = Math.floor(stops)
  let squared = 1
  for (let stop = 0; stop < Math.abs(whole); stop += 1) squared *= 2
  return Math.sqrt(whole < 0 ? 1 / squared : squared) * timesFromStops((stops - whole) / 2)
}

/** Stops from f/1. */
function stopsOf(text: string): number | null {
  const named = fullStopAtStart(text)
  if (named) {
    if (named.rest === '') return named.stops
    const tenths = /^[.,] ?(\d)$/.exec(named.rest) ?? /^ (\d)$/.exec(named.rest)
    // f/1.2 and f/1.8 are lenses; no meter shows tenths past f/1.
    if (tenths && named.stops !== 0) return named.stops + Number(tenths[1]) / 10
    const past = /^ *(?:[+-]|and |plus |minus |\d+\/)/.test(named.rest) ? amountOf(named.rest) : null
    if (past !== null && Math.abs(past) < 1) return named.stops + past
  }
  const engraved = /^(\d+(?:[.,]\d)?)$/.exec(text)
  return engraved ? stopsOfEngraving(Number(engraved[1]?.replace(',', '.'))) : null
}

/** The longest full stop's name that the text begins with: "5.6½" is 5.6 and not 5. */
function fullStopAtStart(text: string): { readonly stops: number; readonly rest: string } | null {
  let found: { stops: number; rest: string; length: number } | null = null
  fullStops.forEach((name, index) => {
    const match = new RegExp(`^0*${name.replace('.', '[.,]')}(?!\\d)`).exec(text)
    if (match && (!found || name.length > found.length)) {
      found = { stops: index + FIRST_STOP, rest: text.slice(match[0].length).replace(/ +/g, ' '), length: name.length }
    }
  })
  return found
}

/** Cameras engrave thirds and halves rounded: 6.3 stands for f/5.6 and a third. Anything else is taken as it is. */
function stopsOfEngraving(fNumber: number): number | null {
  if (!(fNumber > 0)) return null
  const stops = 2 * stopsFromTimes(fNumber)
  const third = Math.round(stops * 3) / 3
  const half = Math.round(stops * 2) / 2
  const nearest = Math.abs(third - stops) <= Math.abs(half - stops) ? third : half
  return Math.abs(nearest - stops) <= 0.1 ? nearest : stops
}
