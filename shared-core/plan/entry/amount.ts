import { plainTyped } from './typed.ts'

const ones = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve',
  'thirteen', 'fourteen', 'fifteen', 'sixteen', 'seventeen', 'eighteen', 'nineteen']
const tens: Readonly<Record<string, number>> = {
  twenty: 20, thirty: 30, forty: 40, fifty: 50, sixty: 60, seventy: 70, eighty: 80, ninety: 90,
}
const parts: Readonly<Record<string, number>> = {
  half: 2, halves: 2, third: 3, thirds: 3, quarter: 4, quarters: 4, fifth: 5, fifths: 5, sixth: 6, sixths: 6, eighth: 8,
  eighths: 8, tenth: 10, tenths: 10, sixteenth: 16, sixteenths: 16, 'thirty-second': 32, 'sixty-fourth': 64,
}

/** A number, and whether it was given as a part: "1/4", "a third", "three tenths". */
interface Term {
  readonly value: number
  readonly isPart: boolean
  readonly sign: 1 | -1 | null
}

/**
 * The terms of what was typed, in order: "quarter plus three tenths" is 0.25 and +0.3. Null when any of it is not a
 * number. Decimal commas count as points.
 */
export function termsOf(typed: string): readonly Term[] | null {
  const text = plainTyped(typed)
  const tokens = text.match(/\d+(?:[.,]\d+)?|[.,]\d+|[a-z]+(?:-[a-z]+)*|[+\-/]|\S/g) ?? []
  const terms: Term[] = []
  let at = 0
  while (at < tokens.length) {
    const signed = signOf(tokens[at])
    if (signed !== null) at += 1
    const joined = signed === null && tokens[at] === 'and'
    if (joined) at += 1
    const read = termAt(tokens, at)
    if (!read) return null
    terms.push({ value: read.value, isPart: read.isPart, sign: signed })
    at += read.length
  }
  return terms.length > 0 ? terms : null
}

/**
 * One number out of what was typed: "-2", "+1/3", "1⅓", "minus two", "one and a third", "1/4+0.3". A part that
 * follows a number without a sign of its own belongs to it, so "-1 1/3" is minus four thirds. Null when unclear.
 */
export function amountOf(typed: string): number | null {
  const terms = termsOf(typed)
  if (!terms) return null
  let total = 0
  let sign: 1 | -1 = 1
  for (const [index, term] of terms.entries()) {
    if (term.sign === null && index > 0) {
      const before = terms[index - 1]
      if (!term.isPart || !before || before.isPart || !Number.isInteger(before.value)) return null
    }
    sign = term.sign ?? sign
    total += sign * term.value
  }
  return Number.isFinite(total) ? total : null
}

function signOf(token: string | undefined): 1 | -1 | null {
  if (token === '+' || token === 'plus') return 1
  return token === '-' || token === 'minus' ? -1 : null
}

function termAt(tokens: readonly string[], at: number): { value: number; isPart: boolean; length: number } | null {
  const first = tokens[at]
  if (first === undefined) return null
  const bare = parts[first]
  if (bare !== undefined) return { value: 1 / bare, isPart: true, length: 1 }
  const value = numberOf(first)
  if (value === null) return null
  if (tokens[at + 1] === '/') {
    const below = numberOf(tokens[at + 2] ?? '')
    return below === null || below === 0 ? null : { value: value / below, isPart: true, length: 3 }
  }
  const part = parts[tokens[at + 1] ?? '']
  if (part !== undefined) return { value: value / part, isPart: true, length: 2 }
  return first === 'a' || first === 'an' ? null : { value, isPart: false, length: 1 }
}

function numberOf(token: string): number | null {
  if (/^[\d.,]+$/.test(token)) return Number(token.replace(',', '.'))
  if (token === 'a' || token === 'an') return 1
  const single = ones.indexOf(token)
  if (single >= 0) return single
  const [ten = '', one] = token.split('-')
  const value = tens[ten]
  if (value === undefined) return null
  if (one === undefined) return value
  const unit = ones.indexOf(one)
  return unit >= 1 && unit <= 9 ? value + unit : null
}
