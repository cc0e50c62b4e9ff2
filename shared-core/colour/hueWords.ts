import { convertLrgbToOklab } from 'culori/fn'
import { degreesFromRadians } from '../arithmetic/portable.ts'
import { linearFromXyz } from '../spectra/srgb.ts'
import type { Xyz } from './triples.ts'

/** Hue words by OKLab hue angle: for full colours, and for light or soft ones. Each pair reaches up to its angle. */
const HUES: readonly (readonly [upToDegrees: number, full: string, light: string])[] = [
  [16, 'rose', 'pink'],
  [40, 'red', 'rose'],
  [58, 'orange', 'apricot'],
  [78, 'amber', 'apricot'],
  [95, 'gold', 'straw'],
  [116, 'yellow', 'straw'],
  [140, 'moss', 'pistachio'],
  [165, 'green', 'pistachio'],
  [187, 'turquoise', 'turquoise'],
  [222, 'teal', 'turquoise'],
  [246, 'sky', 'sky'],
  [280, 'blue', 'sky'],
  [318, 'violet', 'lavender'],
  [342, 'magenta', 'pink'],
  [360, 'rose', 'pink'],
]

const BLACK_BELOW = 0.14
const DEEP_BELOW = 0.48
const PALE_ABOVE = 0.82
const NEAR_WHITE_ABOVE = 0.93
const NEUTRAL_CHROMA = 0.012
const GREYISH_CHROMA = 0.045
const SOFT_CHROMA = 0.075
/** Below this chroma a colour that is not deep takes the light word: soft red is rose, soft amber apricot. */
const LIGHT_WORD_CHROMA = 0.135

/**
 * A colour in plain words: "deep violet", "pale apricot", "near white, cool", "mid grey".
 * Lightness, chroma and hue of OKLab (B. Ottosson 2020); the borders between words are ours.
 * @param xyz D65, Y = 1 for white.
 */
export function colourWords(xyz: Xyz): string {
  const [r, g, b] = linearFromXyz(xyz)
  const lab = convertLrgbToOklab({ r, g, b })
  const chroma = Math.sqrt(lab.a * lab.a + lab.b * lab.b)
  if (lab.l < BLACK_BELOW) return 'black'
  if (chroma < NEUTRAL_CHROMA) return greyWord(lab.l)
  const degrees = (degreesFromRadians(Math.atan2(lab.b, lab.a)) + 360) % 360
  if (chroma < GREYISH_CHROMA) {
    return lab.l > NEAR_WHITE_ABOVE ? `near white, ${castWord(degrees)}` : `${castWord(degrees)} ${greyWord(lab.l)}`
  }
  const [, full, light] = HUES.find(([upTo]) => degrees <= upTo) ?? HUES[0]!
  if (lab.l > PALE_ABOVE) return chroma < LIGHT_WORD_CHROMA ? `pale ${light}` : `bright ${full}`
  if (lab.l < DEEP_BELOW) return `deep ${full}`
  const word = chroma < LIGHT_WORD_CHROMA ? light : full
  return chroma < SOFT_CHROMA ? `soft ${word}` : word
}

function greyWord(lightness: number): string {
  if (lightness > 0.985) return 'white'
  if (lightness > 0.8) return 'light grey'
  return lightness < 0.45 ? 'dark grey' : 'mid grey'
}

function castWord(degrees: number): string {
  if (degrees < 20 || degrees >= 320) return 'pinkish'
  if (degrees < 115) return 'warm'
  if (degrees < 185) return 'greenish'
  return 'cool'
}
