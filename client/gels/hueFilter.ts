/** Words that stand for several hues at once; every other word is looked for as it is. */
const broad: Readonly<Record<string, readonly string[]>> = {
  warm: ['straw', 'yellow', 'gold', 'amber', 'apricot', 'orange', 'red', 'warm'],
  cool: ['sky', 'blue', 'teal', 'turquoise', 'lavender', 'violet', 'cool'],
  cold: ['sky', 'blue', 'teal', 'turquoise', 'cool'],
  purple: ['violet', 'lavender', 'magenta'],
  pink: ['pink', 'rose', 'magenta'],
  green: ['green', 'moss', 'pistachio', 'teal'],
  blue: ['blue', 'sky', 'teal'],
  grey: ['neutral', 'grey'],
}

/** Whether a sheet answers to all the words typed. Nothing typed: every sheet does. */
export function matchesHueWords(typed: string, about: readonly string[]): boolean {
  const text = about.join(' ').toLowerCase()
  return typed
    .toLowerCase()
    .split(/[\s,]+/)
    .filter((word) => word !== '')
    .every((word) => text.includes(word) || (broad[word] ?? []).some((hue) => text.includes(hue)))
}
