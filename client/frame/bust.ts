import type { AreaPrediction, Framing } from '../../shared-core/predict/prediction.ts'

/** A place in the Frame in metres at the subject's distance, from the left and the top edge. */
export interface FramePoint {
  readonly across: number
  readonly down: number
}

/**
 * Where head, neck and shoulders of a plain form lie in the Frame, from the areas' own places, so that the form follows
 * the camera. Lengths are metres at the subject.
 */
export interface Bust {
  readonly widthMetres: number
  readonly heightMetres: number
  readonly midlineAcross: number
  readonly noseAcross: number
  readonly crownDown: number
  readonly chinDown: number
  readonly neckBaseDown: number
  readonly shoulderDown: number
  readonly shoulderHalfMetres: number
  readonly torsoAcross: number
  readonly lips: FramePoint
  readonly statureMetres: number
  /** Lowest point of the cloth's neckline. */
  readonly necklineDown: number
  /** Whether the breastbone shows. */
  readonly isOpen: boolean
}

/**
 * Proportions as shares of stature. Head breadth 154 of 1755 mm, face width 143, neck girth 395 (a width of 126), from
 * ANSUR II, men's medians; chin to crown 232 of 1755 mm, ANSUR 1988, from memory.
 */
export const HEAD_HEIGHT = 0.132
export const HEAD_HALF_BREADTH = 0.0439
export const FACE_HALF_BREADTH = 0.0407
export const NECK_HALF_BREADTH = 0.0335

/** Lips over chin, and the hair's top over the crown, as shares of stature. From memory. */
const LIPS_OVER_CHIN = 0.0245
const HAIR_OVER_CROWN = 0.009

/** The bust as the areas place it; null when the areas of a head are missing. */
export function bustFrom(areas: readonly AreaPrediction[], framing: Framing, statureMetres: number): Bust | null {
  const widthMetres = framing.atSubjectWidthMetres
  const heightMetres = framing.atSubjectHeightMetres
  const at = (id: string): FramePoint | null => {
    const area = areas.find((one) => one.id === id)
    if (!area || !Number.isFinite(area.frameX) || !Number.isFinite(area.frameY)) return null
    return { across: area.frameX * widthMetres, down: area.frameY * heightMetres }
  }
  const nose = at('nose')
  const [lips, hair] = [at('lips'), at('hair')]
  const [shoulderLeft, shoulderRight] = [at('shoulder-left'), at('shoulder-right')]
  if (!nose || !lips || !shoulderLeft || !shoulderRight || !(widthMetres > 0) || !(heightMetres > 0)) return null

  const sides = ['rear-jaw-left', 'rear-jaw-right'].map(at).filter((point) => point !== null)
  const chinDown = lips.down + LIPS_OVER_CHIN * statureMetres
  const shoulderDown = mean([shoulderLeft.down, shoulderRight.down])
  const neckBaseDown = shoulderDown - Math.max(0.022 * statureMetres, 0.5 * (shoulderDown - chinDown))
  const breastbone = areas.find((area) => area.id === 'breastbone' && area.material === 'skin')
  return {
    widthMetres,
    heightMetres,
    statureMetres,
    midlineAcross: sides.length > 0 ? mean(sides.map(({ across }) => across)) : nose.across,
    noseAcross: nose.across,
    crownDown: hair ? Math.min(hair.down + HAIR_OVER_CROWN * statureMetres, chinDown - 0.8 * HEAD_HEIGHT * statureMetres) : chinDown - HEAD_HEIGHT * statureMetres,
    chinDown,
    neckBaseDown,
    shoulderDown,
    shoulderHalfMetres: Math.max(0.09 * statureMetres, Math.abs(shoulderRight.across - shoulderLeft.across) / 2 + 0.031 * statureMetres),
    torsoAcross: mean([shoulderLeft.across, shoulderRight.across]),
    lips,
    necklineDown: breastbone ? breastbone.frameY * heightMetres + 0.014 * statureMetres : neckBaseDown + 0.034 * statureMetres,
    isOpen: breastbone !== undefined,
  }
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length
}
