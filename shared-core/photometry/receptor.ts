/** What a receptor makes of light by the angle it comes from. */

/** A flat disc takes the cosine, and nothing from behind. */
export function flatWeight(cosAngle: number): number {
  return Math.max(0, cosAngle)
}

/**
 * A hemispherical dome: (1 + cos) / 2, the projected area of a hemisphere lit from one side. Straight on it reads as a
 * flat disc; from the side half; from behind nothing.
 */
export function domeWeight(cosAngle: number): number {
  return (1 + cosAngle) / 2
}
