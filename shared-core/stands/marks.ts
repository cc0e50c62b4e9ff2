import type { Look } from '../plan/schema/look.ts'
import type { Plan } from '../plan/schema/plan.ts'

/** A place on the floor that is marked before anything stands: stands are taped out from two of them. */
export interface Mark {
  readonly id: 'subject' | 'camera' | 'left-end' | 'right-end'
  /** "the T" */
  readonly words: string
  readonly xMetres: number
  readonly yMetres: number
}

/** A place on the floor by two tapes and the side of the line between their marks. */
export interface Taped {
  readonly from: readonly [TapeFrom, TapeFrom]
  /** Two places are that far from both marks: which one. "camera right of the line between them"; null where both are one. */
  readonly side: string | null
}

export interface TapeFrom {
  readonly mark: Mark
  /** Along the floor, to below the middle of the front. */
  readonly floorMetres: number
}

/**
 * The marks of a look: the subject's T, the camera, and both ends of the backdrop's foot (of the rear wall where nothing
 * hangs before it).
 */
export function marksOf({ room }: Plan, { subject, camera, backdrop }: Look): readonly [Mark, Mark, Mark, Mark] {
  const isPaper = backdrop.kind === 'paper'
  const [left, right] = isPaper
    ? [backdrop.centreXMetres - backdrop.widthMetres / 2, backdrop.centreXMetres + backdrop.widthMetres / 2]
    : [-room.markFromLeftWallMetres, room.widthMetres - room.markFromLeftWallMetres]
  const y = isPaper ? backdrop.yMetres : room.markFromRearWallMetres
  const what = isPaper ? 'end of the paper' : 'rear corner'
  return [
    { id: 'subject', words: 'the T', xMetres: subject.xMetres, yMetres: subject.yMetres },
    { id: 'camera', words: 'the camera mark', xMetres: camera.place.xMetres, yMetres: camera.place.yMetres },
    { id: 'left-end', words: `the camera-left ${what}`, xMetres: left, yMetres: y },
    { id: 'right-end', words: `the camera-right ${what}`, xMetres: right, yMetres: y },
  ]
}

/** Without the T in it a pair has to be this much better: everybody measures from the T. */
const WITHOUT_T = 1.5
/** How much a tape reads wrong: so much anywhere, and as much again at this length. Common practice, no source. */
const LENGTH_OF_TWICE_THE_ERROR_METRES = 4
/** Nearer to the line than this, a place is on it. */
const ON_LINE_METRES = 0.02

/**
 * The two marks from which a place is found best: those whose tapes cross most squarely and are short. Two tapes that
 * cross at an angle find a place to 1 / sqrt(1 - |cos|) of their own error at worst (the larger root of the covariance of
 * two unit directions).
 */
export function tapedFrom(marks: readonly Mark[], xMetres: number, yMetres: number): Taped {
  let best: { readonly pair: readonly [Mark, Mark]; readonly error: number } | null = null
  for (let i = 0; i < marks.length; i++) {
    for (let j = i + 1; j < marks.length; j++) {
      const pair = [marks[i]!, marks[j]!] as const
      const hasT = pair.some(({ id }) => id === 'subject')
      const error = errorOf(pair, xMetres, yMetres) * (hasT ? 1 : WITHOUT_T)
      if (best === null || error < best.error) best = { pair, error }
    }
  }
  const [one, other] = best!.pair
  return {
    from: [tapeFrom(one, xMetres, yMetres), tapeFrom(other, xMetres, yMetres)],
    side: sideOf(one, other, xMetres, yMetres),
  }
}

function tapeFrom(mark: Mark, x: number, y: number): TapeFrom {
  return { mark, floorMetres: Math.sqrt((x - mark.xMetres) * (x - mark.xMetres) + (y - mark.yMetres) * (y - mark.yMetres)) }
}

/** How far a place may be found wrong by two tapes, relative to a short tape's own error. */
function errorOf(pair: readonly [Mark, Mark], x: number, y: number): number {
  const [a, b] = pair.map((mark) => tapeFrom(mark, x, y).floorMetres) as [number, number]
  const tape = 1 + Math.max(a, b) / LENGTH_OF_TWICE_THE_ERROR_METRES
  // At a mark itself there is nothing to measure.
  if (a < ON_LINE_METRES || b < ON_LINE_METRES) return tape
  const [m, n] = pair
  const cos = ((x - m.xMetres) * (x - n.xMetres) + (y - m.yMetres) * (y - n.yMetres)) / (a * b)
  return tape / Math.sqrt(Math.max(1e-9, 1 - Math.abs(cos)))
}

/** Which of the two places that both tapes reach: seen from the other one, the mirror image in the line between the marks. */
function sideOf(one: Mark, other: Mark, x: number, y: number): string | null {
  const [lx, ly] = [other.xMetres - one.xMetres, other.yMetres - one.yMetres]
  const size = Math.sqrt(lx * lx + ly * ly)
  if (size === 0) return null
  // Away from the line, along its normal.
  const away = ((x - one.xMetres) * -ly + (y - one.yMetres) * lx) / size
  if (Math.abs(away) < ON_LINE_METRES) return null
  const [nx, ny] = [(-ly / size) * away, (lx / size) * away]
  if (Math.abs(nx) >= Math.abs(ny)) return nx > 0 ? 'camera right of the line between them' : 'camera left of the line between them'
  return ny > 0 ? 'behind the line between them' : 'on the camera’s side of the line between them'
}
