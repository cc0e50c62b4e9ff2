/** While a hand moves something the Frame is drawn at half its size or less, with so many pixels at most, and shown at its full size. */
const HAND_PIXELS = 44_000

export function handSize(widthPixels: number, heightPixels: number): { readonly width: number; readonly height: number } {
  const shrink = Math.max(2, Math.sqrt((widthPixels * heightPixels) / HAND_PIXELS))
  return { width: Math.ceil(widthPixels / shrink), height: Math.ceil(heightPixels / shrink) }
}
