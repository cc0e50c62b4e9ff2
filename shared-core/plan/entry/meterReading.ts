import { timesFromStops } from '../../arithmetic/portable.ts'
import { refuse, type Result } from '../result.ts'
import { parseFNumber } from './aperture.ts'
import { parseStops } from './stops.ts'
import { plainTyped } from './typed.ts'

/** What machines that listen write for a number said aloud. */
const misheard: Readonly<Record<string, string>> = {
  won: 'one', to: 'two', too: 'two', tree: 'three', for: 'four', fore: 'four', sicks: 'six', ate: 'eight', nein: 'nine', tents: 'tenths', tense: 'tenths',
}
const digits = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'] as const
const wholes: Readonly<Record<string, string>> = {
  ten: '10', eleven: '11', thirteen: '13', fourteen: '14', sixteen: '16', 'twenty two': '22', 'thirty two': '32', 'forty five': '45', 'sixty four': '64', ninety: '90',
}

const FULL_STOP = String.raw`(?:f ?\/? ?)?(?:0\.7|1\.4|2\.8|5\.6|1|2|4|8|11|16|22|32|45|64|90|128)`
const asTenths = new RegExp(String.raw`^(${FULL_STOP})(?:,? (?:and |plus |point )?|, ?)([0-9])(?: ?(?:tenths?|\/ ?10))?$`)
const overOrUnder = /^[+-]|^(?:minus|plus)\b|\b(?:under|below|over|above|stops?|down|up)\b/

const howTo = 'Say or write it as the meter shows it: 8 and 3, 5.6½, f/8 and a third. Stops from the aperture as -1.7.'

/**
 * A meter's reading, as an exact f-number, the way people say it: "8 and 3" and "8 3" are f/8 and three tenths, "five six
 * and a half", "two eight nine", "f/8 and a third", "4 and 0". With a sign or "under" it is stops from the aperture
 * that the camera takes at. Words may come from a machine that listens.
 * @param takenAtFNumber exact aperture of the camera
 */
export function parseMeterReading(typed: string, takenAtFNumber: number): Result<{ readonly value: number }> {
  const text = inFigures(plainTyped(typed.replace(/[.!?\s]+$/, '')))
  if (text === '') return refuse('Nothing was written. ' + howTo)
  if (/^(?:e|eu|eo|err(?:or)?|-+|nothing|under|over)$/.test(text)) {
    return refuse('The meter saw no flash, or too little or too much for its range. Check the sync and that the head fired, then read again.')
  }
  if (overOrUnder.test(text)) {
    const stops = parseStops(text)
    return stops.ok ? { ok: true, value: takenAtFNumber * timesFromStops(stops.value / 2) } : refuse(howTo)
  }
  const tenths = asTenths.exec(text)
  const read = parseFNumber(tenths ? `${tenths[1]} and ${tenths[2]} tenths` : text)
  if (read.ok) return read
  const tooMany = /^(.+?) ?(?:and|\+) ?(\d\d)(?: tenths)?$/.exec(text)
  return refuse(tooMany ? 'Tenths go from 0 to 9: ten of them are the next stop.' : read.message.startsWith('Lenses') ? read.message : howTo)
}

/** Number words as figures, so that what is said is read like what is typed. Parts ("a third") stay words. */
function inFigures(text: string): string {
  let out = text
    .replace(/\b(?:it )?(?:reads?|says?|is|shows?)\b/g, ' ')
    .replace(/\beff?\b/g, 'f')
    .replace(/[a-z]+/g, (word) => misheard[word] ?? word)
    .replace(/(\d)-(?=\d|[a-z])/g, (all, digit: string) => (/^\d-\d/.test(all) ? all : `${digit} `))
    .replace(/\b([a-z]+)-(?=[a-z])/g, '$1 ')
  for (const [words, figures] of Object.entries(wholes)) out = out.replace(new RegExp(`\\b${words}\\b`, 'g'), figures)
  // Fractions keep their words: "three tenths", "two thirds".
  out = out.replace(new RegExp(`\\b(${digits.join('|')})\\b(?! (?:thirds?|halves|quarters?|fifths?|tenths?))`, 'g'), (word) => String(digits.indexOf(word as (typeof digits)[number])))
  return out
    .replace(/(\d) ?\bpoint\b ?(\d)/g, '$1.$2')
    .replace(/^(f ?\/? ?)?(1 4|2 8|5 6|0 7)(?= |$)/, (_all, f: string | undefined, pair: string) => `${f ?? ''}${pair.replace(' ', '.')}`)
    .replace(/\s+/g, ' ')
    .trim()
}
