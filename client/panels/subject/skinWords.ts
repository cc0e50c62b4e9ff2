/**
 * Depth of a skin in words, by its individual typology angle in degrees: the classes of Chardon, Cretois and Hourseau
 * (1991) with plain names, and "very deep" from -50 down.
 */
export function skinWords(itaDegrees: number): string {
  if (itaDegrees > 55) return 'very fair'
  if (itaDegrees > 41) return 'fair'
  if (itaDegrees > 28) return 'medium'
  if (itaDegrees > 10) return 'tan'
  if (itaDegrees > -30) return 'brown'
  return itaDegrees > -50 ? 'deep' : 'very deep'
}

/** "rosy", "neutral", "olive" and what lies between. */
export function undertoneWords(undertone: number): string {
  if (Math.abs(undertone) < 0.12) return 'neutral'
  const word = undertone > 0 ? 'rosy' : 'olive'
  return Math.abs(undertone) < 0.5 ? `a little ${word}` : word
}

/** "matt" to "dewy". */
export function sheenWords(sheen: number): string {
  if (sheen < 0.12) return 'matt'
  if (sheen < 0.4) return 'natural'
  return sheen < 0.75 ? 'satin' : 'dewy'
}
