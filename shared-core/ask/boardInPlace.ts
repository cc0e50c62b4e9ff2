import { degreesFromRadians } from '../arithmetic/portable.ts'
import type { Look, Piece } from '../plan/schema/look.ts'
import { usualPieces } from '../plan/usual/pieces.ts'
import { placeAt } from './lightChanges.ts'

/** As near as a board stands that fills a side, out of the frame of a half length (common practice, no source). */
const BESIDE_METRES = 0.9
const BOARD_METRES = { widthMetres: 1.2, heightMetres: 2 }

/**
 * A white board on the side that a light came from, turned to the subject, to throw back what the others give; null for
 * a light from behind, where there is nothing to throw back, and for one from straight in front, where the camera stands.
 */
export function boardInPlaceOf(look: Look, lightId: string): Piece | null {
  const light = look.lights[lightId]
  if (!light || light.plane === 'background' || light.plane === 'edge') return null
  const dx = light.place.xMetres - look.subject.xMetres
  const dy = light.place.yMetres - look.subject.yMetres
  const length = Math.sqrt(dx * dx + dy * dy)
  if (length < 0.1 || Math.abs(dx) < Math.abs(dy) / 2) return null
  const [ux, uy] = [dx / length, dy / length]
  return {
    ...usualPieces.board, kind: 'board', label: `White board, in place of ${light.letter}`, ...BOARD_METRES,
    place: placeAt([look.subject.xMetres + ux * BESIDE_METRES, look.subject.yMetres + uy * BESIDE_METRES, 1.2]),
    // Its front looks back along the way from the subject.
    facingDegrees: Math.round(degreesFromRadians(Math.atan2(-ux, uy))),
  }
}
