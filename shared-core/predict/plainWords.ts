import { colourWords } from '../colour/hueWords.ts'
import { linearFromHex, xyzFromLinear } from '../spectra/srgb.ts'
import type { AreaPrediction, Prediction } from './prediction.ts'

/** Least stops over mid-grey for each word, brightest first. 90 % white lies log2(0.90 / 0.18) = 2.3 over it. */
const BRIGHTNESS: readonly (readonly [leastStops: number, words: string])[] = [
  [2.3, 'close to white'],
  [1.5, 'very bright'],
  [0.75, 'bright'],
  [0.25, 'a little brighter than mid'],
  [-0.25, 'mid-bright'],
  [-0.85, 'a little darker than mid'],
  [-2.5, 'dark'],
  [-3.5, 'very dark'],
]

/** From this share of clear light on, a surface is seen in its own colour and not in a gel's; ours. */
const OWN_COLOUR_SHARE = 0.6

/** Luminance from which a grey is called white, and a soft green pistachio; both ours, between the names' centroids. */
const WHITE_FROM = 0.8
const PISTACHIO_FROM = 0.4

/** One thing to say of a picture, without a number in it. */
export interface PlainLine {
  readonly areaId: string
  readonly words: string
}

/** How bright something is in the picture. @param stopsOverGrey of the reflected light; null where nothing arrives. */
export function brightnessWords(stopsOverGrey: number | null): string {
  if (stopsOverGrey === null) return 'black'
  return BRIGHTNESS.find(([least]) => stopsOverGrey >= least)?.[1] ?? 'close to black'
}

/**
 * The colour of a place of the finished picture as people name it: a magenta or pink that leans to blue is called purple, a
 * soft green that is not light green, a grey near white white (as in the ISCC-NBS names of K. L. Kelly and D. B. Judd, NBS
 * Circular 553).
 * @param display `#rrggbb` in sRGB
 */
export function seenHueWords(display: string): string {
  const linear = linearFromHex(display)
  const xyz = xyzFromLinear(linear)
  const words = colourWords(xyz)
  if (words === 'light grey' && xyz[1] >= WHITE_FROM) return 'white'
  if (words === 'pistachio' && xyz[1] < PISTACHIO_FROM) return 'green'
  return linear[2] > linear[0] ? words.replace(/magenta|pink$/, 'purple') : words
}

/** What lies behind, then the subject from the front to the edge; what shows nothing of its own is left out. */
export function plainLines({ areas, background, lights }: Pick<Prediction, 'areas' | 'background' | 'lights'>): readonly PlainLine[] {
  const clearIds = new Set(lights.filter(({ gel }) => gel.clear).map(({ id }) => id))
  const seen = (id: string): AreaPrediction | undefined => areas.find((area) => area.id === id && area.inFrame)
  const lines: PlainLine[] = []
  const centre = seen('background-centre')
  if (centre !== undefined) lines.push({ areaId: centre.id, words: behindWords(centre, background) })
  for (const id of ['nose', 'cheek-left', 'cheek-right', 'jaw-left', 'jaw-right', 'hair', 'lips']) {
    const area = seen(id)
    if (area !== undefined) lines.push({ areaId: id, words: onSubjectWords(area, clearIds) })
  }
  return lines
}

function behindWords(centre: AreaPrediction, { verdictAfterFinish }: Prediction['background']): string {
  if (verdictAfterFinish === 'white') return 'clean white behind'
  return `${seenHueWords(centre.colour.display)} on the background, ${brightnessWords(centre.colour.spotStopsOverGrey)}`
}

function onSubjectWords({ label, colour, byLight }: AreaPrediction, clearIds: ReadonlySet<string>): string {
  const clearShare = byLight.reduce((sum, { lightId, share }) => sum + (clearIds.has(lightId) ? share : 0), 0)
  const hue = clearShare >= OWN_COLOUR_SHARE ? 'its own colour' : seenHueWords(colour.display)
  return `${hue} on the ${label}, ${brightnessWords(colour.spotStopsOverGrey)}`
}
