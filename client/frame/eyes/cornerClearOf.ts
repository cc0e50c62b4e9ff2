/** A place of the Frame, 0-1 from the left and the top. */
interface Place {
  readonly frameX: number
  readonly frameY: number
}

export interface Corner {
  readonly side: 'left' | 'right'
  readonly edge: 'top' | 'bottom'
}

const CORNERS: readonly Corner[] = [
  { side: 'left', edge: 'top' }, { side: 'right', edge: 'top' }, { side: 'left', edge: 'bottom' }, { side: 'right', edge: 'bottom' },
]

/** A named area is a point; its part of the face goes on around it. */
const CLEAR = 0.035

/**
 * A corner where a box of this size keeps clear of all of these places: top left where it can, for the foot is where the
 * picture is read; where none is clear, the one that keeps farthest.
 * @param width,height as shares of the Frame
 */
export function cornerClearOf(places: readonly Place[], width: number, height: number): Corner {
  const away = (corner: Corner): number => Math.min(...places.map(({ frameX, frameY }) => {
    const x = corner.side === 'left' ? frameX - width : 1 - width - frameX
    const y = corner.edge === 'top' ? frameY - height : 1 - height - frameY
    return Math.max(x, y)
  }), 1)
  return CORNERS.find((corner) => away(corner) > CLEAR) ?? CORNERS.reduce((best, corner) => (away(corner) > away(best) ? corner : best))
}
