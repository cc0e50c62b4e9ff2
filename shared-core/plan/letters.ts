const ALPHABET = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ'

/** The first free letter for a tape: A to Z, then A1 to Z9. The schema's limit of lights is far below what there is. */
export function nextLetter(taken: Iterable<string>): string {
  const used = new Set(taken)
  for (const suffix of ['', '1', '2', '3', '4', '5', '6', '7', '8', '9']) {
    for (const letter of ALPHABET) {
      if (!used.has(letter + suffix)) return letter + suffix
    }
  }
  throw new RangeError('more lights in a look than letters')
}
