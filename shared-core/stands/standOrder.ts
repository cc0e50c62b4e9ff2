import type { Light, Look, Piece } from '../plan/schema/look.ts'
import { lightsInSetUpOrder } from '../predict/sceneOfLook.ts'

/** What stands by itself in a look. */
export type Standing =
  | { readonly kind: 'light'; readonly id: string; readonly light: Light }
  | { readonly kind: 'piece'; readonly id: string; readonly piece: Piece }

/**
 * The stands of a look in the order in which they are built: scrims, since light is thrown through them; the gelled
 * background with the key off; the other lights in the look's own order; then what cuts or returns light. Lights that
 * are off are not rigged. (Background gel first: common practice, no source.)
 */
export function standingInOrder(look: Look): readonly Standing[] {
  const lights = lightsInSetUpOrder(look).filter(([, { on }]) => on)
    .map(([id, light]): Standing & { kind: 'light' } => ({ kind: 'light', id, light }))
  const pieces = Object.entries(look.pieces).sort(([idA, a], [idB, b]) => compareText(a.label, b.label) || compareText(idA, idB))
    .map(([id, piece]): Standing & { kind: 'piece' } => ({ kind: 'piece', id, piece }))
  const isFirst = ({ light }: { readonly light: Light }) => light.plane === 'background' && light.gelIds.length > 0
  const isScrim = ({ piece }: { readonly piece: Piece }) => piece.kind === 'scrim'
  return [
    ...pieces.filter(isScrim), ...lights.filter(isFirst), ...lights.filter((one) => !isFirst(one)),
    ...pieces.filter((one) => !isScrim(one)),
  ]
}

function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0
}
