/** Reciprocal megakelvin: steps of equal look, in which conversion sheets add. M = 10⁶ / T. */
export function miredOf(kelvin: number): number {
  return 1e6 / kelvin
}

/** The shift a sheet must give to turn one temperature into another; positive is warmer. */
export function shiftMired(fromKelvin: number, toKelvin: number): number {
  return miredOf(toKelvin) - miredOf(fromKelvin)
}
