/** Pixels of any picture, three values each at the start of every `stride`. */
export interface Pixels {
  readonly width: number
  readonly height: number
  readonly values: ArrayLike<number>
  /** 3 for channels alone, 4 with an alpha after them. */
  readonly stride: 3 | 4
}

/** Weights of brightness: luminance of display primaries (ITU-R BT.709), near enough for a camera's channels. */
const [RED, GREEN, BLUE] = [0.2126, 0.7152, 0.0722]

/**
 * The colour of a small square as an eye-dropper takes it: the mean of the third of its pixels that lie in the middle by
 * brightness. Neither grain nor a light's edge that crosses one side of the square pulls it, as it would pull a plain mean.
 * @param x,y middle of the square in whole pixels; what lies outside the picture is left out
 * @param reach pixels to each side: 1 is three by three
 * @throws RangeError when the square lies wholly outside the picture
 */
export function middleOfSquare({ width, height, values, stride }: Pixels, x: number, y: number, reach: number): [number, number, number] {
  const inSquare: { readonly at: number; readonly brightness: number }[] = []
  for (let j = Math.max(0, y - reach); j <= Math.min(height - 1, y + reach); j++) {
    for (let i = Math.max(0, x - reach); i <= Math.min(width - 1, x + reach); i++) {
      const at = stride * (j * width + i)
      inSquare.push({ at, brightness: RED * values[at]! + GREEN * values[at + 1]! + BLUE * values[at + 2]! })
    }
  }
  if (inSquare.length === 0) throw new RangeError(`No pixel of the picture lies around ${x}, ${y}`)
  inSquare.sort((a, b) => a.brightness - b.brightness)
  const leftOut = Math.floor(inSquare.length / 3)
  const middle = inSquare.slice(leftOut, inSquare.length - leftOut)
  const mean = (k: number): number => middle.reduce((sum, { at }) => sum + values[at + k]!, 0) / middle.length
  return [mean(0), mean(1), mean(2)]
}
