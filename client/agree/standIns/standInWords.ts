import { labDifference2000, labOfXyz, type Lab } from '../../../shared-core/colour/difference.ts'
import type { AreaPrediction, Prediction } from '../../../shared-core/predict/prediction.ts'
import { linearFromHex, xyzFromLinear } from '../../../shared-core/spectra/srgb.ts'

/** CIEDE2000 below which only who looks for it sees a difference (from memory; after Mokrzycki and Tatol 2011). */
const SEEN = 2
/** L* below which a colour reads as dark, and by how much it must have fallen to be said. Common practice, no source. */
const DARK_LIGHTNESS = 22
const FALLEN_LIGHTNESS = 6
/** L* by which sheen must lift a place for its colour to show as an edge. Common practice, no source. */
const SHEEN_LIGHTNESS = 2
const MOST_LINES = 2
const BODY: ReadonlySet<string> = new Set(['skin', 'lips', 'hair'])

interface Said {
  readonly words: string
  /** Lower goes first; of one rank what differs most. */
  readonly rank: number
  readonly difference: number
}

/**
 * What a stand-in shows that the picture beside it does not, from the numbers of both: at most two lines, never none.
 * @param isSheen only the skin's sheen differs between the two
 */
export function standInWords(of: Prediction, against: Prediction, isSheen: boolean): readonly string[] {
  const others = new Map(against.areas.map((area) => [area.id, area]))
  const said = of.areas.flatMap((area) => {
    const other = others.get(area.id)
    return other && area.inFrame && BODY.has(area.material) ? areaWords(area, other, isSheen) : []
  })
  said.push(...faceWords(of, others))
  said.sort((a, b) => a.rank - b.rank || b.difference - a.difference)
  // A plain change of hue is told once: of the place where it shows most.
  const told = said.filter(({ rank }, i) => rank === DARK || rank !== said[i - 1]?.rank)
  const lines = told.filter(({ rank }) => rank !== SLIGHT || told.length === 1).map(({ words }) => words)
  return lines.length === 0 ? ['no visible change'] : lines.slice(0, MOST_LINES)
}

/** What tells most goes first. */
const [DARK, SHEEN, CLIPS, FACE, HUE, SLIGHT] = [0, 1, 2, 3, 4, 5]
/** Places that make the level of a face, and what of a change is told. Common practice, no source. */
const FACE_AREAS: ReadonlySet<string> = new Set(['nose', 'cheek-left', 'cheek-right'])
const TOLD_STOPS = 0.3

function areaWords(area: AreaPrediction, other: AreaPrediction, isSheen: boolean): Said[] {
  const [now, then] = [shownLab(area), shownLab(other)]
  const difference = labDifference2000(now, then)
  if (difference < SEEN) return []
  const [hue, hueBefore] = [hueWord(area.colour.words), hueWord(other.colour.words)]
  const say = (rank: number, words: string): Said[] => [{ rank, words, difference }]
  if (hueBefore !== null && now.l < DARK_LIGHTNESS && then.l - now.l >= FALLEN_LIGHTNESS) {
    return say(DARK, `${hueBefore} goes dark on the ${area.label}`)
  }
  if (isSheen && hue !== null && now.l - then.l >= SHEEN_LIGHTNESS) return say(SHEEN, `${hue} edge in the sheen, ${area.label}`)
  if (area.colour.clipped.some(Boolean) && !other.colour.clipped.some(Boolean)) return say(CLIPS, `${area.label} clips`)
  if (area.colour.words === other.colour.words || (hue === null && hueBefore === null)) return say(SLIGHT, 'little changes')
  return say(HUE, `${area.label}: ${area.colour.words}, not ${other.colour.words}`)
}

/** How much lighter or darker the face is in the picture, in stops of what the camera is given. */
function faceWords(of: Prediction, others: ReadonlyMap<string, AreaPrediction>): Said[] {
  const stops = of.areas.flatMap((area) => {
    const other = others.get(area.id)
    const ratio = other && area.inFrame && FACE_AREAS.has(area.id) ? area.colour.xyz[1] / other.colour.xyz[1] : 0
    return ratio > 0 && Number.isFinite(ratio) ? [Math.log2(ratio)] : []
  })
  const mean = stops.reduce((sum, each) => sum + each, 0) / Math.max(1, stops.length)
  if (Math.abs(mean) < TOLD_STOPS) return []
  return [{ rank: FACE, words: `face ${Math.abs(mean).toFixed(1)} stops ${mean < 0 ? 'darker' : 'lighter'}`, difference: 0 }]
}

/** As a display shows it, finish and all. */
function shownLab({ colour }: AreaPrediction): Lab {
  return labOfXyz(xyzFromLinear(linearFromHex(colour.display)))
}

/** "violet" of "deep violet"; null of greys, black and white. */
function hueWord(words: string): string | null {
  return /grey|black|white/.test(words) ? null : (words.split(' ').at(-1) ?? null)
}
