import type { z } from 'zod'

/** What is wrong with a plan from outside, and where: `looks.dusk.lights.c.energyJoules`. */
export interface Problem {
  /** Keys from the root, joined by dots; empty for the whole file. */
  readonly path: string
  readonly message: string
}

/** More would not help anybody, and a hostile file could ask for millions. */
export const MOST_PROBLEMS = 100

/** A key from outside, safe to print: no control characters, and short. */
export function printable(key: PropertyKey): string {
  const text = String(key).replace(/[\p{C}\p{Z}]+/gu, ' ')
  return text.length > 40 ? `${text.slice(0, 39)}…` : text
}

/** A path as people read it in a message: printable keys joined by dots. */
export function pathText(path: readonly PropertyKey[]): string {
  return path.map(printable).join('.')
}

/** The schema's complaint in plain words. */
export function problemFromIssue(issue: z.core.$ZodIssue): Problem {
  return { path: pathText(issue.path), message: messageOf(issue) }
}

const kinds: Readonly<Record<string, string>> = {
  number: 'a number',
  int: 'a whole number',
  string: 'a text',
  boolean: 'true or false',
  object: 'a group of values',
  record: 'a group of values',
  array: 'a list',
  tuple: 'a list',
}

function messageOf(issue: z.core.$ZodIssue): string {
  switch (issue.code) {
    case 'invalid_type':
      if (issue.message.endsWith('received undefined')) return 'is missing'
      return `wants ${kinds[issue.expected] ?? issue.expected}`
    case 'too_big':
      return tooMuch(issue.origin, String(issue.maximum), 'more', 'long')
    case 'too_small':
      return tooMuch(issue.origin, String(issue.minimum), 'less', 'short')
    case 'invalid_value':
      return `wants one of: ${issue.values.map(String).join(', ')}`
    case 'invalid_union':
      return 'is of a kind this version does not know'
    case 'unrecognized_keys':
      return `holds what this version does not know: ${issue.keys.slice(0, 5).map(printable).join(', ')}`
    case 'invalid_key':
      return `has a key that is no id: ${issue.issues[0]?.message ?? ''}`
    case 'invalid_format':
      return issue.message.startsWith('Invalid') ? 'is not written as it should be' : `wants ${issue.message}`
    default:
      return issue.message
  }
}

function tooMuch(origin: string, bound: string, than: 'more' | 'less', size: 'long' | 'short'): string {
  const end = than === 'more' ? 'most' : 'least'
  if (origin === 'string') return `is too ${size}: ${bound} characters at ${end}`
  if (origin === 'array') return `holds too ${than === 'more' ? 'many' : 'few'}: ${bound} at ${end}`
  return `is ${than} than ${bound}`
}
