import type { PlanEdit } from '../edit.ts'
import type { Piece } from '../schema/look.ts'
import { LIMITS, type Plan } from '../schema/plan.ts'
import type { Place } from '../schema/quantities.ts'
import { newId } from '../newId.ts'
import { usualPieces } from '../usual/pieces.ts'
import { refuse, type Result } from '../result.ts'
import { addBranch, removeBranch } from './adding.ts'
import { changeBranch, type EditResult, type Patch } from './changing.ts'
import { pieceIn } from './lookAt.ts'

export type NewPiece = Pick<Piece, 'kind' | 'place'> & Partial<Piece>
type PieceResult = Result<{ readonly edit: PlanEdit; readonly pieceId: string }>

const piecePath = (lookId: string, pieceId: string) => ['looks', lookId, 'pieces', pieceId]

/** Sets up a piece, with the size and cloth usual for its kind unless told otherwise. */
export function addPiece(plan: Plan, lookId: string, piece: NewPiece): PieceResult {
  const pieceId = newId()
  const added = addBranch(
    plan, 'addPiece', piecePath(lookId, pieceId), { ...usualPieces[piece.kind], ...piece }, LIMITS.piecesPerLook,
  )
  return added.ok ? { ...added, pieceId } : added
}

/** The same piece again, half a metre to camera right. */
export function duplicatePiece(plan: Plan, lookId: string, pieceId: string): PieceResult {
  const piece = pieceIn(plan, lookId, pieceId)
  if (!piece) return refuse('That piece is no longer in the look.')
  const place = { ...piece.place, xMetres: Math.min(piece.place.xMetres + 0.5, 50) }
  const copy = addPiece(plan, lookId, { ...piece, place })
  return copy.ok ? { ...copy, edit: { ...copy.edit, name: 'duplicatePiece' } } : copy
}

/** Takes a piece out of the set; refused when it is no longer there. */
export function removePiece(plan: Plan, lookId: string, pieceId: string): EditResult {
  return removeBranch(plan, 'removePiece', piecePath(lookId, pieceId))
}

/** Changes any leaves of a piece, each within its bounds. */
export function changePiece(plan: Plan, lookId: string, pieceId: string, patch: Patch<Piece>): EditResult {
  return changeBranch(plan, 'changePiece', piecePath(lookId, pieceId), patch)
}

/** Moves the centre of a piece (the hinge of a V-flat); coordinates not given stay. */
export function movePiece(plan: Plan, lookId: string, pieceId: string, place: Partial<Place>): EditResult {
  return changeBranch(plan, 'movePiece', piecePath(lookId, pieceId), { place })
}
