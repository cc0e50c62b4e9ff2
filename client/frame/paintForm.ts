import type { FormWeights } from './formWeights.ts'

/** Linear light of `#rrggbb` colours, three numbers each. sRGB: IEC 61966-2-1. */
export function linearFromHexes(hexes: readonly string[]): Float32Array {
  const linear = new Float32Array(hexes.length * 3)
  hexes.forEach((hex, i) => {
    for (let channel = 0; channel < 3; channel++) {
      const encoded = parseInt(hex.slice(1 + channel * 2, 3 + channel * 2), 16) / 255
      linear[i * 3 + channel] = encoded <= 0.04045 ? encoded / 12.92 : ((encoded + 0.055) / 1.055) ** 2.4
    }
  })
  return linear
}

const LEVELS = 4096
const encodedBytes = Float32Array.from({ length: LEVELS + 1 }, (_, i) => {
  const linear = i / LEVELS
  return 255 * (linear <= 0.0031308 ? 12.92 * linear : 1.055 * linear ** (1 / 2.4) - 0.055)
})

/** Paints the form into RGBA bytes: `linear` holds the areas' colours, summed by the form's weights in linear light. */
export function paintForm(form: FormWeights, linear: Float32Array, rgba: Uint8ClampedArray): void {
  // Tight on purpose: it runs for every pixel on every move of a hand, so it makes no objects.
  const { counts, areaIndex, weight } = form
  let pair = 0
  for (let p = 0; p < counts.length; p++) {
    const end = pair + counts[p]!
    let red = 0
    let green = 0
    let blue = 0
    for (; pair < end; pair++) {
      const at = areaIndex[pair]! * 3
      const share = weight[pair]!
      red += share * linear[at]!
      green += share * linear[at + 1]!
      blue += share * linear[at + 2]!
    }
    // Half a step of fixed grain, so that slow gradients do not show bands.
    const grain = ((p * 2654435761) >>> 24) / 256 - 0.5
    const byte = p * 4
    rgba[byte] = encodedOf(red) + grain
    rgba[byte + 1] = encodedOf(green) + grain
    rgba[byte + 2] = encodedOf(blue) + grain
    rgba[byte + 3] = 255
  }
}

function encodedOf(linear: number): number {
  return linear >= 1 ? 255 : encodedBytes[(linear * LEVELS + 0.5) | 0]!
}
