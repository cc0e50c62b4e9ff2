import { radiansFromDegrees } from '../../../shared-core/arithmetic/portable.ts'
import { add, scale, type Vector } from '../../../shared-core/arithmetic/vector.ts'
import type { Piece } from '../../../shared-core/plan/schema/look.ts'
import { vectorOf } from '../../../shared-core/set/emitter.ts'
import { facingOrientation } from './orientation.ts'
import type { Solid } from './solid.ts'

/** The panels of a flag, board or scrim (one) or of a V-flat (two, joined at the hinge), as four corners each. */
export function piecePanels(piece: Piece): Vector[][] {
  const centre = vectorOf(piece.place)
  if (piece.kind !== 'v-flat') {
    const { right, up } = facingOrientation(piece.facingDegrees, piece.tiltDegrees)
    return [panel(add(centre, scale(right, -piece.widthMetres / 2)), scale(right, piece.widthMetres), up, piece.heightMetres)]
  }
  return [-1, 1].map((side) => {
    const along = wingDirection(piece, side)
    return panel(centre, scale(along, piece.widthMetres), [0, 0, 1], piece.heightMetres)
  })
}

export function pieceSolids(piece: Piece): Solid[] {
  return piecePanels(piece).map((points) => ({ part: 'panel', points }))
}

/** A V-flat opens towards the way it faces: both wings lean forward from the hinge by half the angle between them. */
function wingDirection(piece: Piece, side: number): Vector {
  const half = radiansFromDegrees(piece.openDegrees / 2)
  const { axis, right } = facingOrientation(piece.facingDegrees)
  return add(scale(axis, Math.cos(half)), scale(right, side * Math.sin(half)))
}

function panel(start: Vector, across: Vector, up: Vector, height: number): Vector[] {
  const low = add(start, scale(up, -height / 2))
  const high = add(start, scale(up, height / 2))
  return [low, add(low, across), add(high, across), high]
}
