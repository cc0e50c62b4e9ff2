import { describe, expect, it } from 'vitest'
import { discCosineIntegral } from '../../shared-core/photometry/disc.ts'
import { configurationFactor } from '../../shared-core/photometry/polygon.ts'

/**
 * J. R. Howell, A Catalog of Radiation Heat Transfer Configuration Factors, section B: entries B-3 (parallel rectangle),
 * B-4 (perpendicular rectangle), B-13 (parallel disc), the perpendicular disc, and Lambert's polygon formula (1760).
 * Figures from the catalogue's formulae, each also found by numerical quadrature to 1e-15.
 */
const TOLERANCE_DIGITS = 9
type Three = readonly [number, number, number]

const up: Three = [0, 0, 1]
const origin: Three = [0, 0, 0]

function rectangleAt(left: number, right: number, front: number, back: number, height: number): Three[] {
  return [[left, front, height], [right, front, height], [right, back, height], [left, back, height]]
}
const fromCorner = (a: number, b: number, height: number) => rectangleAt(0, a, 0, b, height)
const centred = (a: number, b: number, height: number) => rectangleAt(-a / 2, a / 2, -b / 2, b / 2, height)
/** Standing at y = distance, its lower edge in the element's plane, from the element to the right. */
const standing = (height: number, width: number, distance: number): Three[] =>
  [[0, distance, 0], [width, distance, 0], [width, distance, height], [0, distance, height]]

const polygons: readonly (readonly [name: string, polygon: Three[], normal: Three, factor: number])[] = [
  ['parallel from the corner, 1 x 1 at 1', fromCorner(1, 1, 1), up, 0.1385316060],
  ['parallel from the corner, 2 x 1 at 1.5', fromCorner(2, 1, 1.5), up, 0.1223596616],
  ['parallel centred, 1 x 1 at 1', centred(1, 1, 1), up, 0.2394564705],
  ['parallel centred, 0.9 x 1.2 at 1.5', centred(0.9, 1.2, 1.5), up, 0.1311600166],
  ['parallel centred, 0.3 x 1.4 at 1.2', centred(0.3, 1.4, 1.2), up, 0.0759335122],
  ['perpendicular, height 1, width 1, distance 1', standing(1, 1, 1), up, 0.0557341970],
  ['perpendicular, height 2, width 1, distance 0.5', standing(2, 1, 0.5), up, 0.1587748045],
  ['triangle', [[1, 0, 1], [0, 1, 1], [-1, -1, 1]], up, 0.3003491901],
  ['tilted 30 degrees', centred(1, 1, 1), [Math.sin(Math.PI / 6), 0, Math.cos(Math.PI / 6)], 0.2073753865],
  ['tilted 45 degrees', centred(1, 1, 1), [Math.SQRT1_2, 0, Math.SQRT1_2], 0.1693212941],
  ['oblique rectangle', [[0.5, -0.6, 1], [1.1, -0.6, 1.8], [1.1, 0.6, 1.8], [0.5, 0.6, 1]], up, 0.0174221086],
]

const discs: readonly (readonly [name: string, radius: number, height: number, offset: number, toAxis: boolean, factor: number])[] = [
  ['on axis, r 1 at 1', 1, 1, 0, false, 0.5],
  ['on axis, r 0.5 at 2', 0.5, 2, 0, false, 0.0588235294],
  ['on axis, r 0.75 at 2', 0.75, 2, 0, false, 0.1232876712],
  ['offset 1, r 1 at 1', 1, 1, 1, false, 0.2763932023],
  ['offset 1.5, r 0.5 at 2', 0.5, 2, 1.5, false, 0.0256583510],
  ['perpendicular, r 1, height 1, offset 2', 1, 1, 2, true, 0.0854101966],
  ['perpendicular, r 0.5, height 1, offset 1', 0.5, 1, 1, true, 0.0581563057],
]

describe('configuration factors (Howell)', () => {
  it.each(polygons)('%s', (_, polygon, normal, factor) => {
    expect(configurationFactor(polygon, origin, normal)).toBeCloseTo(factor, TOLERANCE_DIGITS)
    expect(configurationFactor([...polygon].reverse(), origin, normal)).toBeCloseTo(factor, TOLERANCE_DIGITS)
  })

  it.each(discs)('disc %s', (_, radius, height, offset, toAxis, factor) => {
    const integral = discCosineIntegral(radius, height, offset, toAxis ? 0 : 1, toAxis ? 1 : 0)
    expect(integral / Math.PI).toBeCloseTo(factor, TOLERANCE_DIGITS)
  })

  it('closes: the six sides around the middle of a cube\'s floor fill the sky', () => {
    const ceiling = configurationFactor(centred(1, 1, 1), origin, up)
    const wall = configurationFactor([[-0.5, 0.5, 0], [0.5, 0.5, 0], [0.5, 0.5, 1], [-0.5, 0.5, 1]], origin, up)
    expect(ceiling).toBeCloseTo(0.2394564705, TOLERANCE_DIGITS)
    expect(wall).toBeCloseTo(0.1901358824, TOLERANCE_DIGITS)
    expect(ceiling + 4 * wall).toBeCloseTo(1, TOLERANCE_DIGITS)
  })

  it('cuts at the horizon: a wall that goes on below the floor gives what its upper part gives', () => {
    const whole = configurationFactor([[0, 1, -3], [1, 1, -3], [1, 1, 1], [0, 1, 1]], origin, up)
    expect(whole).toBeCloseTo(0.0557341970, TOLERANCE_DIGITS)
    expect(configurationFactor(centred(1, 1, 1), origin, [0, 0, -1])).toBe(0)
  })

  it('refuses what is no polygon or too many corners', () => {
    expect(() => configurationFactor([[0, 0, 1], [1, 0, 1]], origin, up)).toThrow(RangeError)
    expect(() => configurationFactor(Array.from({ length: 65 }, (): Three => [0, 0, 1]), origin, up)).toThrow(RangeError)
  })
})

describe('five-times rule (IES Lighting Handbook): by how much a point source over-estimates', () => {
  const overEstimate = (areaSquareMetres: number, distance: number, factor: number) =>
    areaSquareMetres / (Math.PI * distance * distance) / factor - 1

  it.each([[1, 0.25], [1.5, 0.11111], [2, 0.0625], [3, 0.02778], [4, 0.01563], [5, 0.01], [10, 0.0025]])(
    'a disc at %d times its diameter: %d', (k, expected) => {
      const factor = discCosineIntegral(0.5, k, 0, 1, 0) / Math.PI
      expect(overEstimate(Math.PI / 4, k, factor)).toBeCloseTo(expected, 4)
      // Exactly 1 / (4 k^2).
      expect(overEstimate(Math.PI / 4, k, factor)).toBeCloseTo(1 / (4 * k * k), 9)
    })

  it.each([
    [1, 0.16550, 0.32930, 0.16912], [2, 0.04158, 0.08302, 0.04373], [3, 0.01850, 0.03697, 0.01957],
    [5, 0.00666, 0.01332, 0.00707], [10, 0.00167, 0.00333, 0.00177],
  ])('a square by diagonal and by side, a 4:1 strip by its long side, at %d times', (k, byDiagonal, bySide, strip) => {
    const square = (distance: number) => overEstimate(1, distance, configurationFactor(centred(1, 1, distance), origin, up))
    expect(square(k * Math.SQRT2)).toBeCloseTo(byDiagonal, 4)
    expect(square(k)).toBeCloseTo(bySide, 4)
    expect(overEstimate(0.25, k, configurationFactor(centred(0.25, 1, k), origin, up))).toBeCloseTo(strip, 4)
  })
})
