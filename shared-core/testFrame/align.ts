import { cosine, degreesFromRadians, radiansFromDegrees } from '../arithmetic/portable.ts'
import type { Landmark } from './landmarks.ts'

/** Pixels of a picture from its left and top edge. */
export interface PicturePoint {
  readonly x: number
  readonly y: number
}

/** How the Frame lies on the photograph: turned, made larger and moved, never stretched. */
export interface Alignment {
  /** Pixels of the photograph for one Frame height. */
  readonly pixelsPerFrameHeight: number
  readonly turnDegrees: number
  /** How far the placed points lie from where this lays them, root mean square, in percent of the Frame's height. */
  readonly residualPercent: number
  /** The middle of the three points in the Frame: near it the rest is laid most exactly. */
  readonly middleX: number
  readonly middleY: number
  /** Where a place of the Frame (0-1 from the left and the top) lies in the photograph. */
  readonly toPhoto: (frameX: number, frameY: number) => PicturePoint
}

export type AlignmentOrRefusal = { readonly alignment: Alignment } | { readonly refused: string }

/** Height of the triangle over its longest side: below this the three points are a line. */
const LEAST_FLATNESS = 0.12
/** Of the triangle's longest side: a face seen a few degrees otherwise moves its points by this much at the most. */
const MOST_RESIDUAL_SHARE = 0.12
const MOST_TURN_DEGREES = 35
/** The Frame's height as a share of the photograph's. */
const FRAME_SHARE = { least: 0.3, most: 4 }

/**
 * Lays the Frame on a photograph by three points of the face, by least squares (a similarity: the fit of
 * S. Umeyama, "Least-squares estimation of transformation parameters between two point patterns", 1991, in the plane).
 * @param aspect width of the Frame over its height
 * @param placed where the landmarks are in the photograph, in their order
 * @returns a refusal in words where the points cannot be those of this face
 */
export function align(
  landmarks: readonly [Landmark, Landmark, Landmark], aspect: number,
  placed: readonly [PicturePoint, PicturePoint, PicturePoint], photoHeight: number,
): AlignmentOrRefusal {
  const from = landmarks.map(({ frameX, frameY }): PicturePoint => ({ x: frameX * aspect, y: frameY }))
  if (flatness(from) < LEAST_FLATNESS) {
    return { refused: 'In this prediction the eyes and the mouth lie in a line, so no photograph can be laid on it.' }
  }
  if (!placed.every(({ x, y }) => Number.isFinite(x) && Number.isFinite(y)) || flatness(placed) < LEAST_FLATNESS) {
    return { refused: 'The three points lie in a line or on each other. Put each on its own place.' }
  }
  if (Math.sign(turning(from)) !== Math.sign(turning(placed))) {
    return { refused: 'The points are mirrored: left and right are the camera\'s. Swap the two eyes, or turn the photograph the right way round.' }
  }
  const [a, b] = [middleOf(from), middleOf(placed)]
  let [along, across, size] = [0, 0, 0]
  from.forEach((point, i) => {
    const [px, py, qx, qy] = [point.x - a.x, point.y - a.y, placed[i]!.x - b.x, placed[i]!.y - b.y]
    along += px * qx + py * qy
    across += px * qy - py * qx
    size += px * px + py * py
  })
  const [c, s] = [along / size, across / size]
  const pixelsPerFrameHeight = Math.sqrt(c * c + s * s)
  const inPhoto = (x: number, y: number): PicturePoint =>
    ({ x: b.x + c * (x - a.x) - s * (y - a.y), y: b.y + s * (x - a.x) + c * (y - a.y) })

  const off = from.reduce((sum, { x, y }, i) => sum + squaredBetween(inPhoto(x, y), placed[i]!), 0)
  const residual = Math.sqrt(off / 3)
  if (residual > MOST_RESIDUAL_SHARE * longestSide(placed)) {
    return { refused: 'The points do not lie to each other as on this face. Look at each again, or at whether the head is turned as planned.' }
  }
  const turnDegrees = degreesFromRadians(Math.atan2(s, c))
  if (c < pixelsPerFrameHeight * cosine(radiansFromDegrees(MOST_TURN_DEGREES))) {
    return { refused: `The photograph is turned by about ${Math.round(turnDegrees)}° against the prediction. Turn it upright first.` }
  }
  const share = pixelsPerFrameHeight / photoHeight
  if (share < FRAME_SHARE.least || share > FRAME_SHARE.most) {
    return { refused: `The face is ${share < 1 ? 'far smaller' : 'far larger'} in the photograph than in the prediction: is it this look?` }
  }
  return {
    alignment: {
      pixelsPerFrameHeight, turnDegrees, middleX: a.x / aspect, middleY: a.y,
      residualPercent: (100 * residual) / pixelsPerFrameHeight,
      toPhoto: (frameX, frameY) => inPhoto(frameX * aspect, frameY),
    },
  }
}

/** Twice the area, with its sense of turning. */
function turning(points: readonly PicturePoint[]): number {
  const [p, q, r] = points as [PicturePoint, PicturePoint, PicturePoint]
  return (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x)
}

function longestSide(points: readonly PicturePoint[]): number {
  const [p, q, r] = points as [PicturePoint, PicturePoint, PicturePoint]
  return Math.sqrt(Math.max(squaredBetween(p, q), squaredBetween(q, r), squaredBetween(r, p)))
}

function flatness(points: readonly PicturePoint[]): number {
  const longest = longestSide(points)
  return longest > 0 ? Math.abs(turning(points)) / (longest * longest) : 0
}

function middleOf(points: readonly PicturePoint[]): PicturePoint {
  return { x: points.reduce((sum, { x }) => sum + x, 0) / points.length, y: points.reduce((sum, { y }) => sum + y, 0) / points.length }
}

function squaredBetween(p: PicturePoint, q: PicturePoint): number {
  return (p.x - q.x) * (p.x - q.x) + (p.y - q.y) * (p.y - q.y)
}
