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
  let pair = 0
  for (let p = 0; p < form.counts.length; p++) {
    let [red, green, blue] = [0, 0, 0]
    for (const end = pair + (form.counts[p] ?? 0); pair < end; pair++) {
      const at = (form.areaIndex[pair] ?? 0) * 3
      const weight = form.weight[pair] ?? 0
      red += weight * (linear[at] ?? 0)
      green += weight * (linear[at + 1] ?? 0)
      blue += weight * (linear[at + 2] ?? 0)
    }
    // Half a step of fixed grain, so that slow gradients do not show bands.
    const grain = ((p * 2654435761) >>> 24) / 256 - 0.5
    rgba[p * 4] = encodedOf(red) + grain
    rgba[p * 4 + 1] = encodedOf(green) + grain
    rgba[p * 4 + 2] = encodedOf(blue) + grain
    rgba[p * 4 + 3] = 255
  }
}

function encodedOf(linear: number): number {
  return encodedBytes[Math.round(Math.min(1, linear) * LEVELS)] ?? 0
}
