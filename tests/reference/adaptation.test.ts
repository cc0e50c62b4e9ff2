import { describe, expect, it } from 'vitest'
import { adaptationMatrix } from '../../shared-core/colour/adaptation.ts'
import { applyMatrix, invertMatrix, multiplyMatrices, type Matrix3 } from '../../shared-core/colour/matrix.ts'
import type { Xyz } from '../../shared-core/colour/triples.ts'

/** Whites of ASTM E308 with Y = 1. */
const WHITES = {
  A: [1.0985, 1, 0.35585],
  D50: [0.96422, 1, 0.82521],
  D55: [0.95682, 1, 0.92149],
  D65: [0.95047, 1, 1.08883],
} as const satisfies Record<string, Xyz>

const expectMatrix = (found: Matrix3, published: readonly (readonly number[])[], tolerance: number): void =>
  found.forEach((row, r) => row.forEach((value, c) => expect(Math.abs(value - published[r]![c]!)).toBeLessThan(tolerance)))

describe('Bradford', () => {
  it('from D65 to D50 is the published matrix', () => {
    // Source: B. Lindbloom, "Chromatic Adaptation", Bradford table. tol 1e-6.
    expectMatrix(adaptationMatrix(WHITES.D50, WHITES.D65, 'bradford'), [
      [1.0478112, 0.0228866, -0.050127],
      [0.0295424, 0.9904844, -0.0170491],
      [-0.0092345, 0.0150436, 0.7521316],
    ], 1e-6)
  })

  it('from D65 to A and from D55 to D65', () => {
    // Source: the cone matrix (Lam 1985; ICC) worked apart with numpy. tol 2e-6.
    expectMatrix(adaptationMatrix(WHITES.A, WHITES.D65, 'bradford'), [
      [1.2164557, 0.1109905, -0.1549325],
      [0.1533326, 0.9152313, -0.0559953],
      [-0.0239469, 0.0358984, 0.3147529],
    ], 2e-6)
    expectMatrix(adaptationMatrix(WHITES.D65, WHITES.D55, 'bradford'), [
      [0.9726856, -0.0135482, 0.0361731],
      [-0.0167463, 1.0049102, 0.0120598],
      [0.0070026, -0.0116372, 1.1869548],
    ], 2e-6)
  })
})

describe('CAT16', () => {
  it('with full adaptation', () => {
    // Source: Li et al., Color Research and Application 42 (2017), worked apart with numpy. tol 2e-6.
    expectMatrix(adaptationMatrix(WHITES.D50, WHITES.D65, 'cat16'), [
      [1.0108226, 0.0405991, -0.034106],
      [0.0054139, 0.9935956, 0.001156],
      [0.0002508, -0.0114802, 0.7682115],
    ], 2e-6)
    expectMatrix(adaptationMatrix(WHITES.D65, WHITES.D55, 'cat16'), [
      [0.9938229, -0.0236342, 0.0251708],
      [-0.0031859, 1.0039577, -0.0009869],
      [-0.0002259, 0.0085992, 1.1724999],
    ], 2e-6)
  })
})

describe('any adaptation', () => {
  for (const cones of ['bradford', 'cat16'] as const) {
    it(`${cones}: white onto white, there and back is nothing`, () => {
      const there = adaptationMatrix(WHITES.A, WHITES.D65, cones)
      const back = adaptationMatrix(WHITES.D65, WHITES.A, cones)
      applyMatrix(there, WHITES.D65).forEach((value, k) => expect(value).toBeCloseTo(WHITES.A[k]!, 12))
      expectMatrix(multiplyMatrices(back, there), [[1, 0, 0], [0, 1, 0], [0, 0, 1]], 1e-12)
    })
  }

  it('a matrix times its inverse is nothing', () => {
    const m: Matrix3 = [[2, 1, 0.5], [0.2, 3, 1], [0.1, 0.4, 1.5]]
    expectMatrix(multiplyMatrices(m, invertMatrix(m)), [[1, 0, 0], [0, 1, 0], [0, 0, 1]], 1e-12)
    expect(() => invertMatrix([[1, 2, 3], [2, 4, 6], [0, 0, 1]])).toThrow(RangeError)
  })
})
