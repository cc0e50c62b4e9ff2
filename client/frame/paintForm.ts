import type { FormWeights } from './formWeights.ts'

/** Linear light from an sRGB byte, IEC 61966-2-1. */
function linearFromByte(byte: number): number {
  const c = byte / 255
  return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4
}

const LEVELS = 4096
const encodedBytes = Float32Array.from({ length: LEVELS + 1 }, (_, i) => {
  const c = i / LEVELS
  return 255 * (c <= 0.0031308 ? 12.92 * c : 1.055 * c ** (1 / 2.4) - 0.055)
})

/** Paints the form into RGBA bytes: `colours` are the areas' display colours (`#rrggbb`), blended in linear light. */
export function paintForm(form: FormWeights, colours: readonly string[], rgba: Uint8ClampedArray): void {
  const linear = new Float32Array(colours.length * 3)
  colours.forEach((hex, i) => {
    for (let channel = 0; channel < 3; channel++) linear[i * 3 + channel] = linearFromByte(parseInt(hex.slice(1 + channel * 2, 3 + channel * 2), 16))
  })
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
    rgba[p * 4] = encoded(red) + grain
    rgba[p * 4 + 1] = encoded(green) + grain
    rgba[p * 4 + 2] = encoded(blue) + grain
    rgba[p * 4 + 3] = 255
  }
}

function encoded(linear: number): number {
  return encodedBytes[Math.round(Math.min(1, linear) * LEVELS)] ?? 0
}
