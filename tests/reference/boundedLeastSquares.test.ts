import { createRequire } from 'node:module'
import { describe, expect, it } from 'vitest'
import { boundedLeastSquares } from '../../shared-core/ask/boundedLeastSquares.ts'
import { randomOf } from '../core/random.ts'

/** The general quadratic solver of D. Goldfarb and A. Idnani (1983), as the registry's `quadprog` carries it over from R. */
interface QuadraticSolver {
  solveQP(D: number[][], d: number[], A: number[][], b: number[]): { solution: number[]; message: string }
}
const { solveQP } = createRequire(import.meta.url)('quadprog') as QuadraticSolver

/** It counts from 1, as its Fortran did. */
const fromOne = <Value>(values: readonly Value[]): Value[] => [undefined as Value, ...values]

function byQuadraticProgramme(matrix: number[][], wanted: number[], lower: number[], upper: number[]): number[] {
  const n = lower.length
  const index = Array.from({ length: n }, (_, i) => i)
  const D = index.map((i) => fromOne(index.map((j) => matrix.reduce((sum, row) => sum + row[i]! * row[j]!, 0))))
  const d = index.map((i) => matrix.reduce((sum, row, k) => sum + row[i]! * wanted[k]!, 0))
  const A = index.map((i) => fromOne([...index.map((j) => (i === j ? 1 : 0)), ...index.map((j) => (i === j ? -1 : 0))]))
  const { solution, message } = solveQP(fromOne(D), fromOne(d), fromOne(A), fromOne([...lower, ...upper.map((value) => -value)]))
  expect(message).toBe('')
  return solution.slice(1)
}

describe('bounded least squares against a general quadratic solver', () => {
  it('finds the same least point in 100 random cases, with bounds that bind in most', () => {
    const random = randomOf(1974)
    let bound = 0
    for (let trial = 0; trial < 100; trial++) {
      const n = 1 + Math.floor(random() * 8)
      const rows = n + Math.floor(random() * 10)
      const matrix = Array.from({ length: rows }, () => Array.from({ length: n }, () => random() * 2 - 1))
      const wanted = Array.from({ length: rows }, () => 4 * random() - 2)
      const lower = Array.from({ length: n }, () => -random())
      const upper = lower.map((value) => value + 0.05 + 1.5 * random())
      const ours = boundedLeastSquares(matrix, wanted, lower, upper)
      const theirs = byQuadraticProgramme(matrix, wanted, lower, upper)
      if (ours.some((value, i) => value === lower[i] || value === upper[i])) bound += 1
      ours.forEach((value, i) => {
        expect(value).toBeGreaterThanOrEqual(lower[i]!)
        expect(value).toBeLessThanOrEqual(upper[i]!)
        // Square systems may be ill-conditioned, and the other solver works on the squared matrix: compare the sums there.
        if (rows > n + 1) expect(value).toBeCloseTo(theirs[i]!, 6)
      })
      const squares = (x: number[]) =>
        matrix.reduce((sum, row, k) => sum + (row.reduce((total, value, i) => total + value * x[i]!, 0) - wanted[k]!) ** 2, 0)
      expect(squares(ours)).toBeLessThanOrEqual(squares(theirs) + 1e-9)
    }
    expect(bound).toBeGreaterThan(60)
  })

  it('copes with columns that say the same thing, with nothing to solve, and with fixed variables', () => {
    const [a, b] = boundedLeastSquares([[1, 1], [2, 2]], [3, 6], [0, 0], [2, 2])
    expect(a! + b!).toBeCloseTo(3, 12)
    expect(boundedLeastSquares([], [], [], [])).toEqual([])
    expect(boundedLeastSquares([[1, 1]], [5], [1, 0], [1, 10])).toEqual([1, 4])
  })
})
