import { refuse, type Result } from '../result.ts'
import { amountOf } from './amount.ts'
import { plainTyped } from './typed.ts'

/** What a person measures in. */
export type Units = 'metric' | 'imperial'

/** Exactly, by the international yard and pound agreement of 1959. */
export const METRES_PER_INCH = 0.0254
export const METRES_PER_FOOT = 0.3048

/** Beyond any room. */
const MOST_METRES = 50

/** A number without a unit from here on is centimetres (or must say whether it is feet or inches): no set is 20 m away. */
const BARE_CENTIMETRES_FROM = 20

const howTo: Readonly<Record<Units, string>> = {
  metric: 'Write a length such as 1.14, 1m40, 140 cm, 4\'7" or 5 ft.',
  imperial: 'Write a length such as 4\'7", 5 ft, 5ft 3in, 63 in, 1.14 m or 140 cm.',
}

/**
 * A length in metres from whatever was typed. Units named in it win; a bare number is metres (from 20 on centimetres)
 * for who measures metric, and feet for who does not. May be negative, for places left of or before the mark.
 */
export function parseLength(typed: string, units: Units): Result<{ readonly value: number }> {
  const text = plainTyped(typed)
  const negative = /^(?:-|minus) ?/.exec(text)
  const metres = metresOf(text.slice(negative?.[0].length ?? 0).replace(/^\+ ?/, ''), units)
  if (metres === null) return refuse(howTo[units])
  if (metres === 'feet or inches') return refuse(`Is that feet or inches? Write ${text}' or ${text}".`)
  if (metres > MOST_METRES) return refuse(`That is longer than ${units === 'metric' ? '50 m' : '164 ft'}.`)
  const tidy = Math.round(metres * 100_000) / 100_000
  return { ok: true, value: negative && tidy > 0 ? -tidy : tidy }
}

/** "1.14 m", or `3'9"` to the half inch: as tapes are read. */
export function formatLength(metres: number, units: Units): string {
  if (units === 'metric') {
    const centimetres = Math.round(metres * 100)
    return `${signOf(centimetres)}${(Math.abs(centimetres) / 100).toFixed(2)} m`
  }
  const halfInches = Math.round((metres / METRES_PER_INCH) * 2)
  const feet = Math.floor(Math.abs(halfInches) / 24)
  const inches = inchesText(Math.abs(halfInches) - feet * 24)
  return `${signOf(halfInches)}${feet > 0 ? `${feet}'` : ''}${feet > 0 && inches === '0"' ? '' : inches}`
}

/** `7½"`, from half inches. */
export function inchesText(halfInches: number): string {
  const whole = Math.floor(halfInches / 2)
  if (halfInches % 2 === 0) return `${whole}"`
  return `${whole > 0 ? whole : ''}½"`
}

const signOf = (value: number): string => (value < 0 ? '−' : '')

type Reading = number | 'feet or inches' | null

function metresOf(text: string, units: Units): Reading {
  return metricOf(text) ?? imperialOf(text) ?? bareOf(text, units)
}

const METRES = '(?:m|metres?|meters?)'
const CENTIMETRES = '(?:cm|centimetres?|centimeters?)'
const MILLIMETRES = '(?:mm|millimetres?|millimeters?)'

function metricOf(text: string): number | null {
  // "1m40" is spoken "one metre forty"; "1m4" could be four or forty and is refused.
  const compound = new RegExp(`^(\\d+) ?${METRES} ?(?:(\\d\\d)|(\\d{1,2}(?:[.,]\\d+)?) ?${CENTIMETRES})$`).exec(text)
  if (compound) return Number(compound[1]) + (amountOf(compound[2] ?? compound[3] ?? '') ?? NaN) / 100
  return unitOf(text, METRES, 1) ?? unitOf(text, CENTIMETRES, 0.01) ?? unitOf(text, MILLIMETRES, 0.001)
}

const FEET = "(?:ft\\.?|feet|foot|')"
const INCHES = '(?:in\\.?|inch(?:es)?|")'

function imperialOf(text: string): number | null {
  const both = new RegExp(`^(\\d+) ?${FEET} ?(.+?) ?(${INCHES})?$`).exec(text)
  if (both) {
    const inches = unsigned(both[2] ?? '')
    return inches === null || inches >= 12 ? null : Number(both[1]) * METRES_PER_FOOT + inches * METRES_PER_INCH
  }
  return unitOf(text, FEET, METRES_PER_FOOT) ?? unitOf(text, INCHES, METRES_PER_INCH)
}

function unitOf(text: string, unit: string, metresPerUnit: number): number | null {
  const match = new RegExp(`^(.+?) ?${unit}$`).exec(text)
  const amount = match ? unsigned(match[1] ?? '') : null
  return amount === null ? null : amount * metresPerUnit
}

function bareOf(text: string, units: Units): Reading {
  const amount = unsigned(text)
  if (amount === null) return null
  if (units === 'imperial') return amount < BARE_CENTIMETRES_FROM ? amount * METRES_PER_FOOT : 'feet or inches'
  return amount < BARE_CENTIMETRES_FROM ? amount : amount / 100
}

/** A length has one sign, in front of it all. */
function unsigned(text: string): number | null {
  return /[+-]|plus|minus/.test(text) ? null : amountOf(text)
}
