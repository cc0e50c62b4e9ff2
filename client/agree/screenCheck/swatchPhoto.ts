import { colourDifference2000 } from '../../../shared-core/colour/difference.ts'
import { colourWords } from '../../../shared-core/colour/hueWords.ts'
import { linearFromHex, xyzFromLinear } from '../../../shared-core/spectra/srgb.ts'

/** Reflectance of a photographer's grey card. */
const GREY_CARD = 0.18

export interface PhotographedSwatch {
  /** CIEDE2000 between the swatch as posted and as photographed, once the grey card is grey. */
  readonly difference: number
  readonly words: string
}

/**
 * What a photograph of a posted swatch beside a grey card says of the light and the camera it was looked at with: each
 * channel is scaled so that the card is its 18 % grey, and the swatch is compared with what was posted.
 * @param greyCard,swatch,posted `#rrggbb`
 * @returns null where the card in the photograph is too dark or burnt out to measure by
 */
export function photographedSwatch(greyCard: string, swatch: string, posted: string): PhotographedSwatch | null {
  const card = linearFromHex(greyCard)
  if (card.some((channel) => channel < 0.01 || channel > 0.95)) return null
  const scaled = linearFromHex(swatch).map((channel, i) => (channel * GREY_CARD) / card[i]!) as [number, number, number]
  const [seen, wanted] = [xyzFromLinear(scaled), xyzFromLinear(linearFromHex(posted))]
  const difference = colourDifference2000(seen, wanted)
  return { difference, words: `${steps(difference)}: ${verdict(difference)}. Photographed ${colourWords(seen)}, posted ${colourWords(wanted)}.` }
}

function steps(difference: number): string {
  return `${difference.toFixed(1)} colour steps (CIEDE2000)`
}

/** Borders for two photographs of one thing by different people. Common practice, no source. */
function verdict(difference: number): string {
  if (difference < 3) return 'the same colour'
  return difference < 6 ? 'nearly the same colour' : 'another colour, so do not judge by this light and camera'
}
