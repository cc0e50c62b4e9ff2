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
  /** What tells most goes first, and of that what differs most. */
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
  said.sort((a, b) => a.rank - b.rank || b.difference - a.difference)
  const lines = [...new Map(said.map((each) => [each.words, each])).keys()]
  // Only what tells most: a face that is one stop darker is not told place by place.
  const general = said.some(({ rank }) => rank < LEVEL)
    ? lines.filter((_, i) => said[i] === undefined || said[i].rank < LEVEL)
    : lines.slice(0, 1)
  return general.length === 0 ? ['no visible change'] : general.slice(0, MOST_LINES)
}

const LEVEL = 4

function areaWords(area: AreaPrediction, other: AreaPrediction, isSheen: boolean): Said[] {
  const [now, then] = [shownLab(area), shownLab(other)]
  const difference = labDifference2000(now, then)
  if (difference < SEEN) return []
  const [hue, hueBefore] = [hueWord(area.colour.words), hueWord(other.colour.words)]
  const say = (rank: number, words: string): Said[] => [{ rank, words, difference }]
  if (hueBefore !== null && now.l < DARK_LIGHTNESS && then.l - now.l >= FALLEN_LIGHTNESS) {
    return say(0, `${hueBefore} goes dark on the ${area.label}`)
  }
  if (isSheen && hue !== null && now.l - then.l >= SHEEN_LIGHTNESS) return say(1, `${hue} edge in the sheen, ${area.label}`)
  if (area.colour.clipped.some(Boolean) && !other.colour.clipped.some(Boolean)) return say(2, `${area.label} clips`)
  if (hue !== null && hue !== hueBefore) return say(3, `${area.label} turns ${area.colour.words}`)
  const stops = Math.log2(area.colour.xyz[1] / other.colour.xyz[1])
  if (!Number.isFinite(stops) || Math.abs(stops) < 0.1) return say(LEVEL + 1, `${area.label}: ${area.colour.words}`)
  return say(LEVEL, `${area.label} ${Math.abs(stops).toFixed(1)} stops ${stops < 0 ? 'darker' : 'lighter'}`)
}

/** As a display shows it, finish and all. */
function shownLab({ colour }: AreaPrediction): Lab {
  return labOfXyz(xyzFromLinear(linearFromHex(colour.display)))
}

/** "violet" of "deep violet"; null of greys, black and white. */
function hueWord(words: string): string | null {
  return /grey|black|white/.test(words) ? null : (words.split(' ').at(-1) ?? null)
}
