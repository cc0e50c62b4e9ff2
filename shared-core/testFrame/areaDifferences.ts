import { colourWords } from '../colour/hueWords.ts'
import { colourDifference2000 } from '../colour/difference.ts'
import type { LinearSrgb } from '../colour/triples.ts'
import { hexFromLinear, xyzFromLinear } from '../spectra/srgb.ts'
import { USUAL, type SeenArea, type SlipFitter } from './fit.ts'
import type { TestFrameModel } from './model.ts'
import { luminanceOf, shown } from './shown.ts'

/** One area of a photograph against what was planned for it, what is put down to the camera taken off. */
export interface AreaDifference {
  readonly id: string
  readonly label: string
  readonly frameX: number
  readonly frameY: number
  /** How much more light (positive) lies there than planned; null where both are black or white. */
  readonly stops: number | null
  /** CIEDE2000 at the photograph's own luminance: colour apart from brightness. */
  readonly colour: number
  /** "0.8 stop brighter, pale apricot instead of deep violet"; "as planned". */
  readonly words: string
  /** `#rrggbb` of both. */
  readonly seen: string
  readonly planned: string
}

/** Nobody turns a light for less. Common practice, no source. */
const LEAST_STOPS = 0.3
const LEAST_COLOUR = 2 * USUAL.areaColour
const MOST_STOPS = 6

export function differencesOf(
  model: TestFrameModel, fitter: SlipFitter, seen: readonly SeenArea[],
  camera: { readonly exposureStops: number; readonly contrast: number; readonly mired: number },
): AreaDifference[] {
  const values = [camera.exposureStops, camera.contrast, camera.mired, ...model.lights.map(() => 0)]
  const veil = fitter.veilOf(model.planned)
  return seen.map(({ index, linear }) => {
    const { id, label, frameX, frameY } = model.areas[index]!
    const plannedAt = (stops: number): LinearSrgb =>
      shown(model.showing, fitter.channels(model.planned, [camera.exposureStops + stops, ...values.slice(1)], index, veil), camera.contrast)
    const planned = plannedAt(0)
    const stops = stopsBetween(luminanceOf(linear), luminanceOf(planned), (more) => luminanceOf(plannedAt(more)))
    const times = luminanceOf(linear) / Math.max(luminanceOf(planned), 1e-6)
    const level: LinearSrgb = [planned[0] * times, planned[1] * times, planned[2] * times]
    const colour = colourDifference2000(xyzFromLinear(linear), xyzFromLinear(level))
    return {
      id, label, frameX, frameY, stops, colour, seen: hexFromLinear(linear), planned: hexFromLinear(planned),
      words: wordsOf(stops, colour, colourWords(xyzFromLinear(linear)), colourWords(xyzFromLinear(planned))),
    }
  })
}

/** By halves, as the curve only rises. */
function stopsBetween(seen: number, planned: number, shownAt: (stops: number) => number): number | null {
  const isWhite = seen > 0.97 && planned > 0.97
  const isBlack = seen < 0.002 && planned < 0.002
  if (isWhite || isBlack) return null
  let [low, high] = [-MOST_STOPS, MOST_STOPS]
  for (let i = 0; i < 18; i++) {
    const middle = (low + high) / 2
    if (shownAt(middle) < seen) low = middle
    else high = middle
  }
  return (low + high) / 2
}

function wordsOf(stops: number | null, colour: number, seen: string, planned: string): string {
  const said: string[] = []
  if (stops !== null && Math.abs(stops) >= LEAST_STOPS) {
    const much = Math.abs(stops) > MOST_STOPS - 0.1 ? 'far' : `${Math.abs(stops).toFixed(1)} stop`
    said.push(`${much} ${stops > 0 ? 'brighter' : 'darker'}`)
  }
  if (colour >= LEAST_COLOUR) said.push(seen === planned ? 'another shade of the same hue' : `${seen} instead of ${planned}`)
  return said.length === 0 ? 'as planned' : said.join(', ')
}
