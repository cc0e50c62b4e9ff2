import { formatLength } from '../../plan/entry/length.ts'
import type { Piece } from '../../plan/schema/look.ts'
import { facingWords } from '../standWords.ts'
import { LEAST_DEGREES, LEAST_METRES, offset, wayWords } from '../sinceTick.ts'
import type { MoveContext } from './moveContext.ts'
import type { Move, MoveKind } from './move.ts'
import { pieceMinutes, TWO_PEOPLE_FRAME_METRES } from './moveMinutes.ts'
import { tapedWords } from './moveWords.ts'

/** One piece through the change, as LightPair is one light. */
export interface PiecePair {
  readonly thing: string
  readonly from: Piece | null
  readonly to: Piece | null
}

/** A flag becomes another only of the same size and cloth; else one goes and the other comes. */
export function isSameThing(one: Piece, other: Piece): boolean {
  const [a, b] = [one, other]
  return a.kind === b.kind && a.widthMetres === b.widthMetres && a.heightMetres === b.heightMetres
    && a.front === b.front && a.back === b.back && a.transmittance === b.transmittance
}

/** Null where it can stay as it stands. */
export function pieceMove(pair: PiecePair, context: MoveContext): Move | null {
  const { from, to } = pair
  if (from === null) return to === null ? null : piece(pair, to, 'piece-up', ['Set up', ...where(to, context)])
  if (to === null) return piece(pair, from, 'piece-away', ['Take away'])
  const way = wayWords(offset(from.place, to.place), context.units)
  const isMoved = way.length > 0
  const isTurned = ['facingDegrees', 'tiltDegrees', 'openDegrees'].some((key) => Math.abs(from[key as 'tiltDegrees'] - to[key as 'tiltDegrees']) >= LEAST_DEGREES)
  if (!isMoved && !isTurned) return null
  const words = isMoved ? [way.join(', '), ...where(to, context)] : [facingWords(to.facingDegrees, to.tiltDegrees), ...openWords(to)]
  const made = piece(pair, to, 'piece-moved', words)
  return isMoved ? made : { ...made, minutes: pieceMinutes(to.kind).turned }
}

export function carriedMetres(from: Piece, to: Piece): number {
  const { xMetres: x, yMetres: y, zMetres: z } = offset(from.place, to.place)
  const metres = Math.sqrt(x * x + y * y + z * z)
  return metres < LEAST_METRES ? 0 : metres
}

function where(to: Piece, context: MoveContext): readonly string[] {
  return [
    tapedWords(to.place.xMetres, to.place.yMetres, context),
    `${to.kind === 'v-flat' ? 'hinge' : 'middle'} ${formatLength(to.place.zMetres, context.units)} high. ${facingWords(to.facingDegrees, to.tiltDegrees)}`,
    ...openWords(to),
  ]
}

function openWords({ kind, openDegrees }: Piece): readonly string[] {
  return kind === 'v-flat' ? [`opened to ${Math.round(openDegrees)}°`] : []
}

function piece({ thing, to }: PiecePair, as: Piece, kind: MoveKind & `piece-${string}`, words: readonly string[]): Move {
  const minutes = pieceMinutes(as.kind)
  const isLarge = as.kind === 'scrim' && Math.max(as.widthMetres, as.heightMetres) >= TWO_PEOPLE_FRAME_METRES
  return {
    id: `${thing}.${kind}`, kind, name: as.label, thing, words,
    minutes: kind === 'piece-up' ? minutes.up : kind === 'piece-away' ? minutes.away : minutes.moved,
    people: isLarge ? 2 : 1,
    cautions: [
      ...(isLarge ? ['A frame this large catches air: two people, mind lamps and sprinklers, sandbags on its stands.'] : []),
      ...(as.kind === 'flag' && kind !== 'piece-away' ? ['A soft ball on the arm’s end at eye height; tighten so that the weight tightens it.'] : []),
    ],
    change: { piece: { thing, set: to } },
  }
}
