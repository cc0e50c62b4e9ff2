import { colourDifference2000 } from '../colour/difference.ts'
import type { LinearSrgb } from '../colour/triples.ts'
import { xyzFromLinear } from '../spectra/srgb.ts'
import type { Alignment, PicturePoint } from './align.ts'
import { DARK_FLOOR, SlipFitter, type SeenArea } from './fit.ts'
import type { TestFrameModel } from './model.ts'
import { DISC_RADIUS, discColour, type Bytes } from './sample.ts'
import { luminanceOf, shown } from './shown.ts'

/**
 * What the prediction's own picture may show beside the area's number: more, and something else lies before the place, as
 * the head lies before the middle of the background.
 */
const HIDDEN = { stops: 1.2, colour: 28 } as const
/** How exactly a hand puts a point, as a share of the Frame's height, and how far the three points lie from their middle. */
const PLACED_WITHIN = 0.002
const POINTS_REACH = 0.04
/** More than this between a place and where it may as well lie, and an edge is too near. */
const EDGE_STOPS = 1.3

/**
 * The areas' colours in a photograph, as if read at the very places of the model: what the same disc of the predicted
 * picture has beyond the place's own number (a nose's highlight, a shadow's edge) is taken off. Areas outside the
 * photograph, hidden in the Frame, or so near an edge that points put by hand may miss them are left out.
 * @param predicted the look's whole Frame in sRGB, at any size
 */
export function seenAreas(model: TestFrameModel, photo: Bytes, alignment: Alignment, predicted: Bytes): SeenArea[] {
  const fitter = new SlipFitter(model, [])
  const veil = fitter.veilOf(model.planned)
  const middle = { x: alignment.middleX * predicted.width, y: alignment.middleY * predicted.height }
  const nothing = new Array<number>(3 + model.lights.length).fill(0)
  return model.areas.flatMap(({ frameX, frameY }, index): SeenArea[] => {
    const planned = shown(model.showing, fitter.channels(model.planned, nothing, index, veil), 0)
    const inFrame = { x: frameX * predicted.width, y: frameY * predicted.height }
    const drawn = discColour(predicted, inFrame, DISC_RADIUS * predicted.height)
    if (drawn === null || isHidden(drawn, planned) || isByAnEdge(predicted, drawn, inFrame, middle)) return []
    const found = discColour(photo, alignment.toPhoto(frameX, frameY), DISC_RADIUS * alignment.pixelsPerFrameHeight)
    if (found === null) return []
    const atPlace = (k: 0 | 1 | 2): number =>
      Math.min(1, Math.max(0, ((found[k] + DARK_FLOOR) * (planned[k] + DARK_FLOOR)) / (drawn[k] + DARK_FLOOR) - DARK_FLOOR))
    return [{ index, linear: [atPlace(0), atPlace(1), atPlace(2)] }]
  })
}

function isHidden(drawn: LinearSrgb, planned: LinearSrgb): boolean {
  const stops = Math.log2((luminanceOf(drawn) + DARK_FLOOR) / (luminanceOf(planned) + DARK_FLOOR))
  return Math.abs(stops) > HIDDEN.stops || colourDifference2000(xyzFromLinear(drawn), xyzFromLinear(planned)) > HIDDEN.colour
}

/** The further from the face, the more a small slip of the points moves a place: whether that reaches something else. */
function isByAnEdge(predicted: Bytes, drawn: LinearSrgb, at: PicturePoint, middle: PicturePoint): boolean {
  const { height } = predicted
  const [dx, dy] = [at.x - middle.x, at.y - middle.y]
  const drift = PLACED_WITHIN * (height + Math.sqrt(dx * dx + dy * dy) / POINTS_REACH)
  return [[drift, 0], [-drift, 0], [0, drift], [0, -drift]].some(([x, y]) => {
    const beside = discColour(predicted, { x: at.x + x!, y: at.y + y! }, DISC_RADIUS * height)
    return beside !== null && Math.abs(Math.log2((luminanceOf(beside) + DARK_FLOOR) / (luminanceOf(drawn) + DARK_FLOOR))) > EDGE_STOPS
  })
}
