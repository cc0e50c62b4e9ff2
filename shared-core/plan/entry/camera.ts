import { refuse, type Result } from '../result.ts'
import { amountOf } from './amount.ts'
import { plainTyped } from './typed.ts'

type Reading = Result<{ readonly value: number }>

/**
 * A shutter time in seconds: "1/160", "160" (a 160th, as cameras show it), "0.5 s", "2s", `2"`. A bare number with
 * decimals above one could be either and is refused.
 */
export function parseShutter(typed: string): Reading {
  const text = plainTyped(typed)
  const howTo = 'Write a shutter time such as 1/160, 160 (a 160th) or 2 s.'
  const seconds = /^(.+?) ?(?:s|sec|seconds?|")$/.exec(text)
  const amount = amountOf(seconds?.[1] ?? text)
  if (amount === null || !(amount > 0)) return refuse(howTo)
  if (seconds || amount <= 1) return within(amount, 1 / 32_000, 60, 'Shutters go from 1/32000 s to 60 s.')
  return Number.isInteger(amount) ? within(1 / amount, 1 / 32_000, 60, 'Shutters go from 1/32000 s to 60 s.') : refuse(howTo)
}

/** "1/160", or "0.5 s" from three tenths of a second on. */
export function formatShutter(seconds: number): string {
  return seconds < 0.3 ? `1/${Math.round(1 / seconds)}` : `${Number(seconds.toPrecision(3))} s`
}

/** A film speed: "200", "ISO 200". */
export function parseIso(typed: string): Reading {
  const text = grouped(plainTyped(typed).replace(/^iso ?/, ''))
  return within(amountOf(text), 6, 819_200, 'Write a film speed such as 200.')
}

/** "ISO 200". */
export function formatIso(isoSpeed: number): string {
  return `ISO ${Number(isoSpeed.toPrecision(6))}`
}

/** A colour temperature: "5500", "5500K", "5 500 K". */
export function parseKelvin(typed: string): Reading {
  const text = grouped(plainTyped(typed).replace(/ ?(?:k|kelvin)$/, ''))
  return within(amountOf(text), 1_500, 20_000, 'Write a colour temperature between 1500 and 20000, such as 5500.')
}

/** "5500 K", to the kelvin. */
export function formatKelvin(kelvin: number): string {
  return `${Math.round(kelvin)} K`
}

/** An angle in degrees: "30", "-15°", "20 left" (negative), "10 up". Left and right are the camera's. */
export function parseAngle(typed: string): Reading {
  const text = plainTyped(typed).replace(/ ?(?:°|deg(?:rees?)?)/, '')
  const side = /^(.+?) ?(left|right|up|down)$/.exec(text)
  const amount = amountOf(side?.[1] ?? text)
  const howTo = 'Write an angle in degrees such as 30, -15 or 20 left.'
  if (amount === null || (side && amount < 0)) return refuse(howTo)
  const negative = side?.[2] === 'left' || side?.[2] === 'down'
  return within(negative ? -amount || 0 : amount, -360, 360, 'An angle is at most one full turn.')
}

/** "−22.5°", to a tenth of a degree. */
export function formatAngle(degrees: number): string {
  const rounded = Math.round(degrees * 10) / 10
  return `${rounded < 0 ? '−' : ''}${Math.abs(rounded)}°`
}

/** "5,500" and "5 500" are five and a half thousand where no decimals are ever typed. */
function grouped(text: string): string {
  return text.replace(/(\d)[ ,.](?=\d{3}(?:\D|$))/g, '$1')
}

function within(amount: number | null, least: number, most: number, message: string): Reading {
  return amount !== null && amount >= least && amount <= most ? { ok: true, value: amount } : refuse(message)
}
