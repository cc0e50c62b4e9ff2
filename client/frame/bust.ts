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
}

/**
 * Proportions as shares of stature. Head breadth 154 of 1755 mm, face width 143, neck girth 395 (a width of 126), from
 * ANSUR II, men's medians; chin to crown 232 of 1755 mm, ANSUR 1988, from memory.
 */
export const HEAD_HEIGHT = 0.132
export const HEAD_HALF_BREADTH = 0.0439
export const FACE_HALF_BREADTH = 0.0407
export const NECK_HALF_BREADTH = 0.0335

/** The tip of the nose over the chin, as a share of the height from chin to crown. */
const NOSE_OVER_CHIN = 0.37

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
  const [lips, neck] = [at('lips'), at('neck')]
  const [shoulderLeft, shoulderRight] = [at('shoulder-left'), at('shoulder-right')]
  if (!nose || !lips || !neck || !shoulderLeft || !shoulderRight || !(widthMetres > 0) || !(heightMetres > 0)) return null

  const sides = ['rear-jaw-left', 'rear-jaw-right', 'cheek-left', 'cheek-right'].map(at).filter((point) => point !== null)
  const midlineAcross = sides.length > 0 ? mean(sides.map(({ across }) => across)) : nose.across
  const chinDown = nose.down + NOSE_OVER_CHIN * HEAD_HEIGHT * statureMetres
  const shoulderDown = mean([shoulderLeft.down, shoulderRight.down])
  return {
    widthMetres,
    heightMetres,
    midlineAcross,
    noseAcross: nose.across,
    crownDown: chinDown - HEAD_HEIGHT * statureMetres,
    chinDown,
    neckBaseDown: chinDown + 0.55 * Math.max(0.04, shoulderDown - chinDown),
    shoulderDown,
    shoulderHalfMetres: Math.max(0.09 * statureMetres, Math.abs(shoulderRight.across - shoulderLeft.across) / 2 + 0.03 * statureMetres),
    torsoAcross: mean([shoulderLeft.across, shoulderRight.across]),
    lips,
  }
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length
}
