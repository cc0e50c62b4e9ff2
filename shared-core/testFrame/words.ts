import type { AreaDifference } from './areaDifferences.ts'
import type { Suspect, VerdictKind } from './judge.ts'
import type { SlipKind } from './slips.ts'

/** What stands for `#` in a slip's words. @param amount stops, or mired of white balance */
export function amountWords(kind: SlipKind, amount: number, whiteBalanceKelvin: number): string {
  if (kind === 'white-balance') return `${50 * Math.round(1e6 / (1e6 / whiteBalanceKelvin + amount) / 50)} K`
  const [more, less] = kind === 'exposure' ? ['too bright', 'too dark'] : ['high', 'low']
  return `about ${Math.abs(amount).toFixed(1)} stop ${amount > 0 ? more : less}`
}

/** The verdict in a sentence, and the one thing to look at. */
export function verdictWords(
  kind: VerdictKind, suspects: readonly Suspect[], alike: number, differences: readonly AreaDifference[],
): { readonly words: string; readonly action: string } {
  const first = suspects[0]!
  if (kind === 'all-well') return { words: 'Everything agrees.', action: '' }
  const named = suspects.slice(0, alike).filter((suspect) => suspect.kind !== 'nothing')
  const wrong = named.map(({ words }) => words).join(', or ')
  const action = (named[0] ?? suspects.find((suspect) => suspect.kind !== 'nothing'))?.action ?? ''
  if (kind === 'more-than-one') {
    const likeliest = first.kind === 'nothing' ? '' : ` The likeliest of them: ${first.words}.`
    return { words: `More than one thing differs, or the face is another one.${likeliest}`, action: action || 'Fire the lights one at a time.' }
  }
  if (kind === 'unsure') {
    const rest = suspects.find((suspect) => suspect.kind !== 'nothing')!
    return { words: `Close: it may be as planned, or ${wrong || rest.words}.`, action }
  }
  return { words: `${exceptWords(differences)}${wrong}.`, action }
}

/** "Everything agrees except camera-right jaw: " where only a few areas differ. */
function exceptWords(differences: readonly AreaDifference[]): string {
  const off = differences.filter(({ words }) => words !== 'as planned')
  return off.length > 0 && off.length <= 3 ? `Everything agrees except ${off.map(({ label }) => label).join(', ')}: ` : ''
}
