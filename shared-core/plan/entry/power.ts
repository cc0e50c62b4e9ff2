import { stopsFromTimes, timesFromStops } from '../../arithmetic/portable.ts'
import { refuse, type Result } from '../result.ts'
import type { Head } from '../schema/kit.ts'
import { amountOf, termsOf } from './amount.ts'
import { formatStops } from './stops.ts'
import { plainTyped } from './typed.ts'

type PowerPanel = Pick<Head, 'fullEnergyJoules' | 'stepStops' | 'powerNotation'>

const TOP_OF_SCALE = 10

/** No head has this many stops, so a bare number from here on can only be joules. */
const CLEARLY_JOULES = 15

/**
 * A power for a given head, in joules, in any of the ways people say it: "1/4", "1/4+0.3", "quarter plus three tenths",
 * "-2" (stops from full), "full", "250 Ws". A bare number is read as this head's panel writes it: on a scale of ten a
 * whole number is a stop and ten is full; elsewhere it is joules, unless it could as well be stops. Not bounded by the
 * head's range: the checks say so.
 */
export function parsePower(typed: string, head: PowerPanel): Result<{ readonly value: number }> {
  const text = plainTyped(typed).replace(/ ?power$/, '')
  const joules = /^(.+?) ?(?:ws|j|joules?|watt[ -]?seconds?)$/.exec(text)
  if (joules) return inJoules(amountOf(joules[1] ?? ''))
  const fromFull = stopsFromFullOf(text, head)
  if (fromFull !== null) {
    if (fromFull > 1e-9) return refuse('There is nothing above full power.')
    return inJoules(head.fullEnergyJoules * timesFromStops(fromFull))
  }
  // Joules are not summed: "1/4+0.3+0.1" is a slip, not 0.65 J.
  const bare = termsOf(text)?.every(({ sign }) => sign === null) ? amountOf(text) : null
  const isShare = head.powerNotation === 'fraction' && bare !== null && bare > 0 && bare <= 1
  if (isShare) return inJoules(head.fullEnergyJoules * bare)
  const showsNumbers = head.powerNotation === 'joules' || head.powerNotation === 'scale-of-ten'
  return inJoules(bare, showsNumbers ? 0 : CLEARLY_JOULES)
}

function inJoules(amount: number | null, clearFrom = 0): Result<{ readonly value: number }> {
  if (amount === null) return refuse('Write a power such as 1/4, 1/4+0.3, -2 (stops from full) or 250 Ws.')
  if (!(amount > 0)) return refuse('Power is more than nothing; switch the light off instead.')
  if (amount < clearFrom) return refuse(`Is that stops or joules? Write -${amount} or ${amount} Ws.`)
  if (amount < 0.01 || amount > 20_000) return refuse('Heads give between 0.01 and 20000 Ws.')
  return { ok: true, value: amount }
}

/** Stops from full power, where the text says so: a fraction with or without tenths, a minus, "full", the scale. */
function stopsFromFullOf(text: string, head: PowerPanel): number | null {
  const terms = termsOf(text.replace(/^full\b/, '1/1'))
  const [first, second] = terms ?? []
  if (!terms || !first || terms.length > 2) return null
  if (first.isPart && first.sign === null) {
    const tenths = second === undefined ? 0 : (second.sign ?? 0) * second.value
    if (second !== undefined && second.sign === null) return null
    return first.value > 0 ? stopsFromTimes(first.value) + tenths : null
  }
  const amount = amountOf(text)
  if (amount === null) return null
  if (first.sign !== null || (amount === 0 && head.powerNotation === 'stops-from-full')) return amount
  return head.powerNotation === 'scale-of-ten' && amount <= TOP_OF_SCALE ? amount - TOP_OF_SCALE : null
}

/** The power as this head's own panel writes it: "1/4+0.3", "−4.1", "5.9" or "58 Ws". `energyJoules` above 0. */
export function formatPower(energyJoules: number, head: PowerPanel): string {
  const stops = stopsFromTimes(energyJoules / head.fullEnergyJoules)
  switch (head.powerNotation) {
    case 'fraction': return fractionText(stops, head.stepStops)
    case 'stops-from-full': return stopsText(stops)
    case 'scale-of-ten': return (TOP_OF_SCALE + stops).toFixed(1)
    case 'joules': return `${energyJoules >= 100 ? Math.round(energyJoules) : Number(energyJoules.toPrecision(3))} Ws`
  }
}

function stopsText(stops: number): string {
  return Math.abs(stops) < 0.05 ? 'full' : formatStops(stops)
}

/** The halving below, and what is past it: in thirds where the head goes by thirds, else in tenths. */
function fractionText(stops: number, stepStops: number): string {
  const inThirds = Math.abs(stepStops - 1 / 3) < 0.01
  const perStop = inThirds ? 3 : 10
  const steps = Math.round(stops * perStop)
  const halvings = Math.max(0, Math.ceil(-steps / perStop))
  const past = steps + halvings * perStop
  const fraction = halvings === 0 ? '1/1' : `1/${Math.round(timesFromStops(halvings))}`
  if (past === 0) return fraction
  return `${fraction}+${inThirds ? `${past}/3` : (past / 10).toFixed(1)}`
}
