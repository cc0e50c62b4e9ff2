import { type Vector, add, cross, scale } from '../arithmetic/vector.ts'
import { cosine, radiansFromDegrees, sine } from '../arithmetic/portable.ts'
import { vectorOf } from './emitter.ts'
import type { ScenePiece } from './scene.ts'

/** A flat rectangle in the set with two sides: paper, a flag, a leaf of a V-flat, a scrim, a wall. */
export interface Panel {
  readonly centre: Vector
  /** Unit vectors; `normal` points out of the front. */
  readonly across: Vector
  readonly up: Vector
  readonly normal: Vector
  readonly halfWidthMetres: number
  readonly halfHeightMetres: number
}

export function panelCorners(panel: Panel): readonly Vector[] {
  const u = scale(panel.across, panel.halfWidthMetres)
  const v = scale(panel.up, panel.halfHeightMetres)
  const corner = (a: number, b: number) => add(panel.centre, add(scale(u, a), scale(v, b)))
  return [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)]
}

/** Direction on the floor: 0 to the camera, 90 to camera right. */
export function facingOnFloor(facingDegrees: number): Vector {
  const radians = radiansFromDegrees(facingDegrees)
  return [sine(radians), -cosine(radians), 0]
}

/** Unit direction of something that faces `facingDegrees` on the floor with its front tipped up by `tiltDegrees`. */
export function facingOf(facingDegrees: number, tiltDegrees: number): Vector {
  const level = facingOnFloor(facingDegrees)
  const tilt = radiansFromDegrees(tiltDegrees)
  return [level[0] * cosine(tilt), level[1] * cosine(tilt), sine(tilt)]
}

function panelFacing(
  centre: Vector, facingDegrees: number, tiltDegrees: number, widthMetres: number, heightMetres: number,
): Panel {
  const normal = facingOf(facingDegrees, tiltDegrees)
  // Level, and to the right of somebody who looks out of the panel's front.
  const across = facingOnFloor(facingDegrees - 90)
  return {
    centre, across, up: cross(across, normal), normal, halfWidthMetres: widthMetres / 2, halfHeightMetres: heightMetres / 2,
  }
}

/**
 * The panels of a piece: one, or the two leaves of a V-flat, hinged upright at its place and opening around the way it
 * faces; its front is the inside of the V.
 */
export function panelsOf(piece: ScenePiece): readonly Panel[] {
  const centre = vectorOf(piece.place)
  if (piece.kind !== 'v-flat') {
    return [panelFacing(centre, piece.facingDegrees, piece.tiltDegrees, piece.widthMetres, piece.heightMetres)]
  }
  return ([-1, 1] as const).map((side) => {
    const leafDegrees = piece.facingDegrees + (side * piece.openDegrees) / 2
    const leafCentre = add(centre, scale(facingOnFloor(leafDegrees), piece.widthMetres / 2))
    return panelFacing(leafCentre, leafDegrees - side * 90, 0, piece.widthMetres, piece.heightMetres)
  })
}
