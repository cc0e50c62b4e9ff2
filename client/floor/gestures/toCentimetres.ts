/** Metres to the whole centimetre: finer than a hand on the Floor can mean. */
export function toCentimetres(metres: number): number {
  return Math.round(metres * 100) / 100
}
