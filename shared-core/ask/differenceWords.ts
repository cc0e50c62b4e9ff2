import { labDifference2000, type Lab } from '../colour/difference.ts'

/** Up to where each word of amount goes, in CIEDE2000; the first is about what an eye can just tell (from memory). */
const AMOUNTS: readonly (readonly [upTo: number, words: string])[] = [
  [2.3, 'a touch'],
  [5, 'a shade'],
  [10, 'clearly'],
  [Infinity, 'far'],
]
const SAME_BELOW = 1
/** A part of the difference this large beside the largest is worth a word. */
const WORTH_A_WORD = 0.5

/**
 * How one colour differs from another, as people say it side by side: "a shade warmer and lighter".
 * @param reached the colour there is
 * @param wanted the colour it is compared with
 */
export function differenceWords(reached: Lab, wanted: Lab): string {
  const difference = labDifference2000(reached, wanted)
  if (difference < SAME_BELOW) return 'the same to the eye'
  const parts = partsOf(reached, wanted)
  const largest = parts.reduce((most, { size }) => Math.max(most, size), 0)
  const said = parts.filter(({ size }) => size >= WORTH_A_WORD * largest).sort((a, b) => b.size - a.size).slice(0, 2)
  const [, amount] = AMOUNTS.find(([upTo]) => difference < upTo)!
  return `${amount} ${said.map(({ word }) => word).join(' and ')}`
}

interface Part {
  readonly size: number
  readonly word: string
}

/** Lightness, chroma and hue apart: each as large as it makes the two differ by itself. */
function partsOf(reached: Lab, wanted: Lab): readonly Part[] {
  const [chroma, wantedChroma] = [chromaOf(reached), chromaOf(wanted)]
  const sameChroma = chroma > 0 ? { l: wanted.l, a: (reached.a * wantedChroma) / chroma, b: (reached.b * wantedChroma) / chroma } : wanted
  const turned = wantedChroma > 0 ? { l: wanted.l, a: (wanted.a * chroma) / wantedChroma, b: (wanted.b * chroma) / wantedChroma } : { ...reached, l: wanted.l }
  return [
    { size: labDifference2000({ ...wanted, l: reached.l }, wanted), word: reached.l > wanted.l ? 'lighter' : 'darker' },
    { size: labDifference2000(turned, wanted), word: chroma > wantedChroma ? 'richer' : 'paler' },
    { size: labDifference2000(sameChroma, wanted), word: hueWord(sameChroma.a - wanted.a, sameChroma.b - wanted.b) },
  ]
}

function hueWord(a: number, b: number): string {
  if (Math.abs(b) >= Math.abs(a)) return b > 0 ? 'warmer' : 'cooler'
  return a > 0 ? 'pinker' : 'greener'
}

const chromaOf = ({ a, b }: Lab): number => Math.sqrt(a * a + b * b)
