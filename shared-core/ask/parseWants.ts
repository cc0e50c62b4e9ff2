import { parseFNumber } from '../plan/entry/aperture.ts'
import { parseIso } from '../plan/entry/camera.ts'
import { parseStops } from '../plan/entry/stops.ts'
import { refuse, type Result } from '../plan/result.ts'
import type { Look } from '../plan/schema/look.ts'
import type { Plan } from '../plan/schema/plan.ts'
import type { AreaId } from '../predict/prediction.ts'
import { namesOfAreas, plainName } from './areaNames.ts'
import type { Want } from './want.ts'

type WantResult = Result<{ readonly want: Want }>

const LONGEST = 600
const MOST_WANTS = 30
const example = 'Say it like “paper -1.5, camera-right jaw +0.5 in apricot, white behind, lips true, f/8”.'

/**
 * What is wanted, as people type it: parts with commas, semicolons, "and" or new lines between them, each an area or a
 * light's letter with its stops, an area "in" a sheet of the drawer, "white behind", an area "true", an aperture, "iso 400".
 * The first part that is not understood is named in the refusal, with what would be.
 */
export function parseWants(text: string, plan: Plan, look: Look): Result<{ readonly wants: readonly Want[] }> {
  if (text.length > LONGEST) return refuse('That is too long to be one wish. Say the most important things.')
  const parts = partsOf(text)
  if (parts.length === 0) return refuse(example)
  if (parts.length > MOST_WANTS) return refuse(`That is more than ${MOST_WANTS} things at once.`)
  const wants: Want[] = []
  for (const part of parts) {
    const read = parsePart(part, plan, look)
    if (!read.ok) return read
    const twice = wants.find((other) => wantSubject(other) === wantSubject(read.want))
    if (twice) return refuse(`“${part}” says something of what was already spoken of. Say one thing of each.`)
    wants.push(read.want)
  }
  return { ok: true, wants }
}

/** Commas part wishes, unless they stand inside a number ("-1,5") or a sheet's name ("Neutral, 1 stop"). */
function partsOf(text: string): string[] {
  const whole = text.replace(/(\d),(?=\d)/g, '$1.')
  const raw = whole.split(/[;\n]|,|(?<!one |two |three |a |minus |plus )\band\b(?! (?:a|one|two|three|\d))/i)
  const parts: string[] = []
  for (const each of raw.map((part) => part.trim())) {
    const before = parts[parts.length - 1]
    // "in neutral" + "1 stop": a sheet's name that a comma cut through.
    if (before !== undefined && /\bneutral$/i.test(before) && /^\d+ ?stops?$/i.test(each)) parts[parts.length - 1] = `${before}, ${each}`
    else if (each !== '') parts.push(each)
  }
  return parts
}

function parsePart(part: string, plan: Plan, look: Look): WantResult {
  const text = part.replace(/[−–]/g, '-').replace(/\s+/g, ' ').trim()
  if (/^(?:clean |pure )?white(?: (?:behind|background|paper|backdrop))?$/i.test(text) || /^(?:background|paper|behind|backdrop) (?:clean |pure )?white$/i.test(text)) {
    return { ok: true, want: { kind: 'white-behind' } }
  }
  if (/^iso ?\d/i.test(text)) {
    const iso = parseIso(text)
    return iso.ok ? { ok: true, want: { kind: 'iso', isoSpeed: iso.value } } : named(part, iso.message)
  }
  if (/^f ?[/:]? ?\d/i.test(text)) {
    const aperture = parseFNumber(text)
    return aperture.ok ? { ok: true, want: { kind: 'aperture', fNumber: aperture.value } } : named(part, aperture.message)
  }
  return parsePlace(part, text, plan, look)
}

/** An area or a light, and what is wanted of it. */
function parsePlace(part: string, text: string, plan: Plan, look: Look): WantResult {
  const areas = namesOfAreas(look)
  const truth = /^(.+?) (?:(?:reads?|must (?:be|read)|is|stays?) )?true$/i.exec(text) ?? /^true (.+)$/i.exec(text)
  if (truth) {
    const areaId = areas.get(plainName(truth[1]!.replace(/^the /i, '')))
    return areaId === undefined ? unknownPlace(part, truth[1]!, look) : { ok: true, want: { kind: 'reads-true', areaId } }
  }
  const subject = longestSubject(text, areas, look)
  if (!subject) return unknownPlace(part, text, look)
  const { rest } = subject
  if ('lightId' in subject) {
    const level = parseStops(rest)
    if (!level.ok) return named(part, level.message)
    return { ok: true, want: { kind: 'light-level', lightId: subject.lightId, stops: level.value } }
  }
  const { areaId } = subject
  const sheets = /^(.*?) ?\b(?:in|with) (?:clear$|(.+)$)/i.exec(rest)
  if (!sheets) {
    const level = parseStops(rest)
    return level.ok ? { ok: true, want: { kind: 'area-level', areaId, stops: level.value } } : named(part, `${level.message} Or say “in” and a sheet of the drawer, or “true”.`)
  }
  // "apricot +0.5" says the level after the sheet.
  const behind = /^(.+?) ((?:at |[+-] ?[\d.,½⅓⅔¼¾]|minus |plus ).*)$/i.exec(sheets[2] ?? '')
  const levelText = [sheets[1]!, (behind?.[2] ?? '').replace(/^at /i, '')].filter(Boolean).join(' ')
  const level = levelText === '' ? null : parseStops(levelText)
  if (level && !level.ok) return named(part, level.message)
  const gels = parseGels(part, behind?.[1] ?? sheets[2] ?? '', plan)
  return gels.ok ? { ok: true, want: { kind: 'area-gel', areaId, gelIds: gels.gelIds, stops: level?.value ?? null } } : gels
}

type Subject = { readonly rest: string } & ({ readonly areaId: AreaId } | { readonly lightId: string })

/** The longest beginning of the text that names an area or a light; so "background top left -1" is not the background. */
function longestSubject(text: string, areas: ReadonlyMap<string, AreaId>, look: Look): Subject | null {
  const words = text.replace(/^the /i, '').replace(/([a-z])([+-]?\d)/gi, (whole, letter: string, number: string) =>
    (/^[A-Z]\d$/i.test(whole) ? whole : `${letter} ${number}`)).split(' ')
  for (let count = Math.min(words.length, 6); count > 0; count--) {
    const name = words.slice(0, count).join(' ').replace(/:$/, '')
    const rest = words.slice(count).join(' ')
    const areaId = areas.get(plainName(name))
    if (areaId !== undefined) return { areaId, rest }
    const letter = name.replace(/^light /i, '').toUpperCase()
    const light = Object.entries(look.lights).find(([, each]) => each.letter === letter)
    if (light) return { lightId: light[0], rest }
  }
  return null
}

/** "apricot", "this + that": sheets of the drawer by name; "clear" or nothing is none. */
function parseGels(part: string, text: string, plan: Plan): Result<{ readonly gelIds: readonly string[] }> {
  if (text === '' || /^clear$/i.test(text.trim())) return { ok: true, gelIds: [] }
  const gelIds: string[] = []
  for (const name of text.split(/ ?\+ ?(?!\d)/)) {
    const plain = plainName(name)
    const found = Object.entries(plan.gels).find(([, gel]) => plainName(gel.name) === plain)
      ?? only(Object.entries(plan.gels).filter(([, gel]) => plainName(gel.name).startsWith(plain)))
    if (!found) return named(part, `The drawer has no sheet called “${name.trim()}”. It has ${listOf(Object.values(plan.gels).map((gel) => gel.name))}.`)
    gelIds.push(found[0])
  }
  return gelIds.length > 4 ? named(part, 'A light holds four sheets at most.') : { ok: true, gelIds }
}

const only = <Value>(values: readonly Value[]): Value | undefined => (values.length === 1 ? values[0] : undefined)

function unknownPlace(part: string, place: string, look: Look): { readonly ok: false; readonly message: string } {
  const side = /\b(cheek|jaw|shoulder|rear jaw)\b/i.exec(place)
  if (side && !/\b(left|right)\b/i.test(place)) return named(part, `Which one: camera-left or camera-right ${side[1]!.toLowerCase()}?`)
  const letters = Object.values(look.lights).map(({ letter }) => letter).sort()
  const lights = letters.length === 0 ? '' : ` or a light (${listOf(letters)})`
  return named(part, `Begin with an area such as paper, lips or camera-right jaw${lights}, or say white behind, f/8 or iso 400.`)
}

function named(part: string, message: string): { readonly ok: false; readonly message: string } {
  return refuse(`“${part.length > 60 ? `${part.slice(0, 57)}…` : part}” was not understood. ${message}`)
}

function listOf(names: readonly string[]): string {
  const shown = names.slice(0, 8)
  return names.length > shown.length ? `${shown.join(', ')} and ${names.length - shown.length} more` : shown.join(', ')
}

/** What a want is about, as a key: two with the same one cannot both be meant. */
export function wantSubject(want: Want): string {
  switch (want.kind) {
    case 'area-level':
    case 'area-gel': return `level of ${want.areaId}`
    case 'reads-true':
    case 'area-colour': return `${want.kind} ${want.areaId}`
    case 'light-level': return `light ${want.lightId}`
    default: return want.kind
  }
}
