import Color from 'colorjs.io'
import { converter } from 'culori'
import { convertLrgbToOklab } from 'culori/fn'
import { describe, expect, it } from 'vitest'
import { colourDifference2000, labDifference2000, labOfXyz } from '../../shared-core/colour/difference.ts'
import type { Xyz } from '../../shared-core/colour/triples.ts'
import {
  encodedFromLinear,
  hexFromLinear,
  linearFromEncoded,
  linearFromHex,
  linearFromXyz,
  SRGB_WHITE_XYZ,
  xyzFromLinear,
} from '../../shared-core/spectra/srgb.ts'

const inColorjs = ([x, y, z]: Xyz): Color => new Color('xyz-d65', [x, y, z])

describe('CIEDE2000', () => {
  // Source: Sharma, Wu, Dalal, Color Research and Application 30 (2005), Table 1: L a b, L a b, ΔE00. Both orders.
  const pairs = [
    [50, 2.6772, -79.7751, 50, 0, -82.7485, 2.0425], [50, 3.1571, -77.2803, 50, 0, -82.7485, 2.8615],
    [50, 2.8361, -74.02, 50, 0, -82.7485, 3.4412], [50, -1.3802, -84.2814, 50, 0, -82.7485, 1],
    [50, -1.1848, -84.8006, 50, 0, -82.7485, 1], [50, -0.9009, -85.5211, 50, 0, -82.7485, 1],
    [50, 0, 0, 50, -1, 2, 2.3669], [50, -1, 2, 50, 0, 0, 2.3669],
    [50, 2.49, -0.001, 50, -2.49, 0.0009, 7.1792], [50, 2.49, -0.001, 50, -2.49, 0.001, 7.1792],
    [50, 2.49, -0.001, 50, -2.49, 0.0011, 7.2195], [50, 2.49, -0.001, 50, -2.49, 0.0012, 7.2195],
    [50, -0.001, 2.49, 50, 0.0009, -2.49, 4.8045], [50, -0.001, 2.49, 50, 0.001, -2.49, 4.8045],
    [50, -0.001, 2.49, 50, 0.0011, -2.49, 4.7461], [50, 2.5, 0, 50, 0, -2.5, 4.3065],
    [50, 2.5, 0, 73, 25, -18, 27.1492], [50, 2.5, 0, 61, -5, 29, 22.8977],
    [50, 2.5, 0, 56, -27, -3, 31.903], [50, 2.5, 0, 58, 24, 15, 19.4535],
    [50, 2.5, 0, 50, 3.1736, 0.5854, 1], [50, 2.5, 0, 50, 3.2972, 0, 1],
    [50, 2.5, 0, 50, 1.8634, 0.5757, 1], [50, 2.5, 0, 50, 3.2592, 0.335, 1],
    [60.2574, -34.0099, 36.2677, 60.4626, -34.1751, 39.4387, 1.2644],
    [63.0109, -31.0961, -5.8663, 62.8187, -29.7946, -4.0864, 1.263],
    [61.2901, 3.7196, -5.3901, 61.4292, 2.248, -4.962, 1.8731],
    [35.0831, -44.1164, 3.7933, 35.0232, -40.0716, 1.5901, 1.8645],
    [22.7233, 20.0904, -46.694, 23.0331, 14.973, -42.5619, 2.0373],
    [36.4612, 47.858, 18.3852, 36.2715, 50.5065, 21.2231, 1.4146],
    [90.8027, -2.0831, 1.441, 91.1528, -1.6435, 0.0447, 1.4441],
    [90.9257, -0.5406, -0.9208, 88.6381, -0.8985, -0.7239, 1.5381],
    [6.7747, -0.2908, -2.4247, 5.8714, -0.0985, -2.2286, 0.6377],
    [2.0776, 0.0795, -1.135, 0.9033, -0.0636, -0.5514, 0.9082],
  ] as const

  it('is there in full', () => expect(pairs).toHaveLength(34))

  pairs.forEach(([l1, a1, b1, l2, a2, b2, published], k) => {
    it(`pair ${k + 1}, both orders`, () => {
      const one = { l: l1, a: a1, b: b1 }
      const other = { l: l2, a: a2, b: b2 }
      expect(Math.abs(labDifference2000(one, other) - published)).toBeLessThan(1e-4)
      expect(Math.abs(labDifference2000(other, one) - published)).toBeLessThan(1e-4)
    })
  })

  it('from XYZ agrees with colorjs.io', () => {
    const colours: Xyz[] = [[0.2, 0.15, 0.05], [0.4, 0.45, 0.5], [0.1, 0.09, 0.5], [0.93, 0.98, 1.05]]
    for (const one of colours) {
      for (const other of colours) {
        const oracle = inColorjs(one).deltaE(inColorjs(other), '2000')
        // colorjs.io adapts D65 to D50 before CIELAB, which moves a difference of 50 by up to about 1.
        const mine = colourDifference2000(one, other)
        expect(Math.abs(mine - oracle)).toBeLessThan(0.05 + 0.06 * oracle)
      }
    }
  })
})

describe('sRGB', () => {
  it('encodes and decodes as the standard says', () => {
    // Source: IEC 61966-2-1, worked values. tol 1e-6.
    const published = [
      [0.001, 0.01292], [0.0031308, 0.04045], [0.01, 0.099853], [0.05, 0.247801], [0.18, 0.461356], [0.214041, 0.5],
      [0.5, 0.735357], [0.9, 0.954687], [1, 1],
    ] as const
    for (const [linear, encoded] of published) {
      expect(Math.abs(encodedFromLinear(linear) - encoded)).toBeLessThan(1e-6)
      expect(Math.abs(linearFromEncoded(encoded) - linear)).toBeLessThan(2e-6)
    }
  })

  it('agrees with culori and colorjs.io on all codes and on the matrix', () => {
    const toLinear = converter('lrgb')
    const toXyz = converter('xyz65')
    for (let code = 0; code < 256; code += 5) {
      const hex = `#${[code, 255 - code, (code * 7) % 256].map((c) => c.toString(16).padStart(2, '0')).join('')}`
      const linear = linearFromHex(hex)
      const byCulori = toLinear(hex)!
      ;[byCulori.r, byCulori.g, byCulori.b].forEach((value, k) => expect(linear[k]).toBeCloseTo(value, 12))
      const xyz = xyzFromLinear(linear)
      const xyzByCulori = toXyz(hex)!
      ;[xyzByCulori.x, xyzByCulori.y, xyzByCulori.z].forEach((value, k) => expect(xyz[k]).toBeCloseTo(value, 12))
      new Color(hex).to('xyz-d65').coords.forEach((value, k) => expect(xyz[k]).toBeCloseTo(value ?? 0, 6))
      expect(hexFromLinear(linear)).toBe(hex)
      linearFromXyz(xyz).forEach((value, k) => expect(value).toBeCloseTo(linear[k]!, 12))
    }
  })

  it('has its white where the standard puts it', () => {
    // Source: IEC 61966-2-1, white (0.3127, 0.3290).
    xyzFromLinear([1, 1, 1]).forEach((value, k) => expect(value).toBeCloseTo(SRGB_WHITE_XYZ[k]!, 9))
  })

  it('refuses what is no colour', () => {
    for (const text of ['red', '#12345', '#gggggg', '']) expect(() => linearFromHex(text)).toThrow(RangeError)
  })
})

describe('OKLab', () => {
  it('of culori is colorjs.io’s and the published one', () => {
    // Source: colorjs.io 0.7 for #ff0000, #00ff00, #0000ff, #808080, #c69676; B. Ottosson 2020. tol 1e-4.
    const published = {
      '#ff0000': [0.627955, 0.224863, 0.125846], '#00ff00': [0.86644, -0.233888, 0.179498],
      '#0000ff': [0.452014, -0.032457, -0.311528], '#808080': [0.599871, 0, 0], '#c69676': [0.710766, 0.041946, 0.059717],
    }
    for (const [hex, oklab] of Object.entries(published)) {
      const [r, g, b] = linearFromHex(hex)
      const found = convertLrgbToOklab({ r, g, b })
      ;[found.l, found.a, found.b].forEach((value, k) => expect(Math.abs(value - oklab[k]!)).toBeLessThan(1e-4))
      const byColorjs = new Color(hex).to('oklab').coords
      byColorjs.forEach((value, k) => expect(Math.abs((value ?? 0) - oklab[k]!)).toBeLessThan(1e-4))
    }
  })

  it('of XYZ, from the colour-science test suite', () => {
    // Source: colour-science, test_oklab: XYZ to OKLab. tol 1e-4 (its matrices are rounded otherwise than sRGB's).
    const published = [
      [[0.20654008, 0.12197225, 0.05136952], [0.51634, 0.154695, 0.062896]],
      [[0.1422201, 0.23042768, 0.10495772], [0.599107, -0.111392, 0.075085]],
    ] as const
    for (const [xyz, oklab] of published) {
      const [r, g, b] = linearFromXyz(xyz)
      const found = convertLrgbToOklab({ r, g, b })
      ;[found.l, found.a, found.b].forEach((value, k) => expect(Math.abs(value - oklab[k]!)).toBeLessThan(1e-4))
    }
  })
})

describe('CIELAB against D65', () => {
  it('has the published values', () => {
    // Source: CIE 15 formula, values by colorjs.io's D65 Lab. tol 1e-3.
    const published = {
      '#ff0000': [53.2371, 80.0901, 67.2033], '#00ff00': [87.7355, -86.1816, 83.1866],
      '#0000ff': [32.3009, 79.1953, -107.8555], '#808080': [53.585, 0, 0], '#c69676': [65.8479, 13.8107, 23.8599],
    }
    for (const [hex, lab] of Object.entries(published)) {
      const { l, a, b } = labOfXyz(xyzFromLinear(linearFromHex(hex)))
      ;[l, a, b].forEach((value, k) => expect(Math.abs(value - lab[k]!)).toBeLessThan(2e-3))
    }
  })
})
