import { power } from '../arithmetic/portable.ts'

/**
 * sRGB (IEC 61966-2-1). Our own few lines and not a library's, because libraries call `Math.pow`, whose last bit differs
 * between engines; tests/reference compares them with two libraries.
 */

/** White of sRGB, (0.3127, 0.3290), as XYZ with Y = 1. */
export const SRGB_WHITE_XYZ = [0.3127 / 0.329, 1, (1 - 0.3127 - 0.329) / 0.329] as const

/** Linear light 0-1 of an encoded value 0-1. */
export function linearFromEncoded(encoded: number): number {
  return encoded <= 0.04045 ? encoded / 12.92 : power((encoded + 0.055) / 1.055, 2.4)
}

/** Encoded value 0-1 of linear light 0-1. Below 0 it goes on as a straight line. */
export function encodedFromLinear(linear: number): number {
  return linear <= 0.0031308 ? 12.92 * linear : 1.055 * power(linear, 1 / 2.4) - 0.055
}

/** XYZ (D65, Y = 1 for white) of linear sRGB. Matrix from the primaries and white of the standard. */
export function xyzFromLinear([r, g, b]: readonly [number, number, number]): [number, number, number] {
  return [
    0.4123907992659593 * r + 0.357584339383878 * g + 0.1804807884018343 * b,
    0.2126390058715102 * r + 0.715168678767756 * g + 0.0721923153607337 * b,
    0.0193308187155918 * r + 0.119194779794626 * g + 0.9505321522496607 * b,
  ]
}

/** Linear sRGB of XYZ (D65); may lie outside 0-1. */
export function linearFromXyz([x, y, z]: readonly [number, number, number]): [number, number, number] {
  return [
    3.2409699419045226 * x - 1.5373831775700939 * y - 0.4986107602930034 * z,
    -0.9692436362808796 * x + 1.8759675015077202 * y + 0.0415550574071756 * z,
    0.0556300796969937 * x - 0.2039769588889766 * y + 1.0569715142428786 * z,
  ]
}

/**
 * Linear sRGB of a colour written `#rrggbb`.
 * @throws RangeError when the text is not such a colour.
 */
export function linearFromHex(hex: string): [number, number, number] {
  if (!/^#[0-9a-f]{6}$/i.test(hex)) throw new RangeError(`not a colour like #7c7c7c: ${hex}`)
  const channel = (from: number): number => linearFromEncoded(Number.parseInt(hex.slice(from, from + 2), 16) / 255)
  return [channel(1), channel(3), channel(5)]
}

/** `#rrggbb` of linear sRGB, each channel held to 0-1. */
export function hexFromLinear(linear: readonly [number, number, number]): string {
  const code = (value: number): string => {
    const held = Math.min(Math.max(value, 0), 1)
    return Math.round(255 * encodedFromLinear(held)).toString(16).padStart(2, '0')
  }
  return `#${code(linear[0])}${code(linear[1])}${code(linear[2])}`
}
