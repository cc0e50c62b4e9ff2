const fractions: Readonly<Record<string, string>> = {
  '½': '1/2', '⅓': '1/3', '⅔': '2/3', '¼': '1/4', '¾': '3/4', '⅕': '1/5', '⅖': '2/5', '⅗': '3/5', '⅘': '4/5',
  '⅙': '1/6', '⅚': '5/6', '⅛': '1/8', '⅜': '3/8', '⅝': '5/8', '⅞': '7/8', '⅒': '1/10',
}

/** Longer than any number a person types; a pasted page is no number. */
const LONGEST = 60

/**
 * What was typed, in the few signs the readers of numbers know: lower case, one kind of minus, quote and space,
 * fractions spelt out. "5.6½" becomes "5.6 1/2".
 */
export function plainTyped(typed: string): string {
  if (typed.length > LONGEST) return ''
  return typed
    .toLowerCase()
    .replace(/[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞⅒]/g, (sign) => ` ${fractions[sign] ?? ''} `)
    .replace(/⁄/g, '/')
    .replace(/[−–—‒]/g, '-')
    .replace(/[’′‘`´]/g, "'")
    .replace(/[“”″]|''/g, '"')
    .replace(/\s+/g, ' ')
    .trim()
}
