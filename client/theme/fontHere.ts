/** Longer than a font takes on any network one would plan a set on; past it, another font is better than nothing. */
const patienceMs = 1_200

/**
 * Resolves when the board's font is here, or will not come in time. Labels are laid out by the measured width of their
 * text: measured in another font, they would be cut off.
 */
export async function fontHere(): Promise<void> {
  const loaded = Promise.all(['430', '580'].map((weight) => document.fonts.load(`${weight} 14px "Instrument Sans Variable"`)))
  await Promise.race([loaded.catch(() => undefined), new Promise((resolve) => setTimeout(resolve, patienceMs))])
}
