import { WAVELENGTH_COUNT } from './spectrum.ts'

/** What a curve has to add up to: the sum of row × curve should be the target. */
export interface CurveDemand {
  readonly row: Float64Array
  readonly target: number
}

export interface SmoothestCurve {
  readonly curve: Float64Array
  /** Sum of row × curve minus the target, one for each demand; near 0 where the demands can be met within the bounds. */
  readonly misses: readonly number[]
}

/** How much a miss costs against roughness: high enough that a demand that can be met is met to about 1e-6. */
const MISS_PENALTY = 1e7
const MOST_STEPS = 80
/** Relative to the size of the answer's cost, which the penalty makes large where the demands cannot be met. */
const GAP_WANTED = 1e-11

/**
 * The curve with the least slope (sum of squared steps between neighbours) that meets the demands and stays between two
 * bounds; where the bounds do not allow it, the curve that misses them by least squares.
 *
 * A quadratic programme, solved by a primal-dual interior-point method: the slope's matrix is tridiagonal and the
 * demands are few, so a step is one sweep along the grid for each demand. Only the four operations are used, so the
 * answer is bit-equal everywhere.
 * Source of the least-slope idea: S. A. Burns, "Numerical methods for smoothest reflectance reconstruction",
 * Color Research and Application 45 (2020). The solver is our own.
 */
export function smoothestCurve(demands: readonly CurveDemand[], lowest: number, highest: number): SmoothestCurve {
  const n = WAVELENGTH_COUNT
  const curve = new Float64Array(n).fill((lowest + highest) / 2)
  const pressLow = new Float64Array(n).fill(1)
  const pressHigh = new Float64Array(n).fill(1)
  const misses = demands.map((demand) => missOf(demand, curve))
  for (let step = 0; step < MOST_STEPS; step++) {
    let gap = 0
    for (let i = 0; i < n; i++) {
      gap += (pressLow[i] as number) * ((curve[i] as number) - lowest)
      gap += (pressHigh[i] as number) * (highest - (curve[i] as number))
    }
    const missed = misses.reduce((sum, miss) => sum + Math.abs(miss), 0)
    if (gap < GAP_WANTED * (1 + MISS_PENALTY * missed)) break
    const centre = (0.1 * gap) / (2 * n)
    const move = newtonMove(demands, misses, curve, pressLow, pressHigh, lowest, highest, centre)
    walk(curve, pressLow, pressHigh, move, lowest, highest, centre)
    demands.forEach((demand, k) => (misses[k] = missOf(demand, curve)))
  }
  return { curve, misses }
}

function missOf({ row, target }: CurveDemand, curve: Float64Array): number {
  let sum = -target
  for (let i = 0; i < WAVELENGTH_COUNT; i++) sum += (row[i] as number) * (curve[i] as number)
  return sum
}

/** Solves (slope matrix + bounds' stiffness + penalty · rows rowsᵀ) move = downhill, by Woodbury's identity. */
function newtonMove(
  demands: readonly CurveDemand[],
  misses: readonly number[],
  curve: Float64Array,
  pressLow: Float64Array,
  pressHigh: Float64Array,
  lowest: number,
  highest: number,
  centre: number,
): Float64Array {
  const n = WAVELENGTH_COUNT
  const diagonal = new Float64Array(n)
  const downhill = new Float64Array(n)
  for (let i = 0; i < n; i++) {
    const value = curve[i] as number
    const toLow = value - lowest
    const toHigh = highest - value
    const before = i > 0 ? value - (curve[i - 1] as number) : 0
    const after = i < n - 1 ? (curve[i + 1] as number) - value : 0
    const neighbours = i > 0 && i < n - 1 ? 2 : 1
    diagonal[i] = neighbours + (pressLow[i] as number) / toLow + (pressHigh[i] as number) / toHigh
    downhill[i] = after - before + centre / toLow - centre / toHigh
  }
  demands.forEach(({ row }, k) => {
    const pull = MISS_PENALTY * (misses[k] as number)
    for (let i = 0; i < n; i++) downhill[i] = (downhill[i] as number) - pull * (row[i] as number)
  })
  const move = solveChain(diagonal, downhill)
  const responses = demands.map(({ row }) => solveChain(diagonal, row))
  const small = demands.map(({ row }, j) =>
    responses.map((response, k) => inner(row, response) + (j === k ? 1 / MISS_PENALTY : 0)),
  )
  const shares = solveDense(small, demands.map(({ row }) => inner(row, move)))
  responses.forEach((response, k) => {
    for (let i = 0; i < n; i++) move[i] = (move[i] as number) - (shares[k] as number) * (response[i] as number)
  })
  return move
}

/** Goes along the move as far as the bounds and their pressures allow. */
function walk(
  curve: Float64Array,
  pressLow: Float64Array,
  pressHigh: Float64Array,
  move: Float64Array,
  lowest: number,
  highest: number,
  centre: number,
): void {
  const n = WAVELENGTH_COUNT
  const moveLow = new Float64Array(n)
  const moveHigh = new Float64Array(n)
  let curveStep = 1
  let pressStep = 1
  for (let i = 0; i < n; i++) {
    const toLow = (curve[i] as number) - lowest
    const toHigh = highest - (curve[i] as number)
    const low = pressLow[i] as number
    const high = pressHigh[i] as number
    const change = move[i] as number
    const changeLow = centre / toLow - low - (low / toLow) * change
    const changeHigh = centre / toHigh - high + (high / toHigh) * change
    moveLow[i] = changeLow
    moveHigh[i] = changeHigh
    if (change < 0) curveStep = Math.min(curveStep, (-0.99 * toLow) / change)
    if (change > 0) curveStep = Math.min(curveStep, (0.99 * toHigh) / change)
    if (changeLow < 0) pressStep = Math.min(pressStep, (-0.99 * low) / changeLow)
    if (changeHigh < 0) pressStep = Math.min(pressStep, (-0.99 * high) / changeHigh)
  }
  const step = Math.min(curveStep, pressStep)
  for (let i = 0; i < n; i++) {
    curve[i] = (curve[i] as number) + step * (move[i] as number)
    pressLow[i] = (pressLow[i] as number) + step * (moveLow[i] as number)
    pressHigh[i] = (pressHigh[i] as number) + step * (moveHigh[i] as number)
  }
}

function inner(a: Float64Array, b: Float64Array): number {
  let sum = 0
  for (let i = 0; i < WAVELENGTH_COUNT; i++) sum += (a[i] as number) * (b[i] as number)
  return sum
}

/** Thomas's sweep for a chain: `diagonal` on the diagonal, −1 beside it. */
function solveChain(diagonal: Float64Array, right: Float64Array): Float64Array {
  const n = WAVELENGTH_COUNT
  const carried = new Float64Array(n)
  const answer = new Float64Array(n)
  let pivot = diagonal[0] as number
  answer[0] = (right[0] as number) / pivot
  for (let i = 1; i < n; i++) {
    carried[i] = -1 / pivot
    pivot = (diagonal[i] as number) + (carried[i] as number)
    answer[i] = ((right[i] as number) + (answer[i - 1] as number)) / pivot
  }
  for (let i = n - 2; i >= 0; i--) {
    answer[i] = (answer[i] as number) - (carried[i + 1] as number) * (answer[i + 1] as number)
  }
  return answer
}

/** Gaussian elimination with row exchange for the few demands. */
function solveDense(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const size = right.length
  const rows = matrix.map((row, k) => [...row, right[k] as number])
  for (let column = 0; column < size; column++) {
    let best = column
    for (let k = column + 1; k < size; k++) {
      if (Math.abs(rows[k]![column]!) > Math.abs(rows[best]![column]!)) best = k
    }
    const pivotRow = rows[best]!
    rows[best] = rows[column]!
    rows[column] = pivotRow
    for (let k = column + 1; k < size; k++) {
      const factor = rows[k]![column]! / pivotRow[column]!
      for (let j = column; j <= size; j++) rows[k]![j] = rows[k]![j]! - factor * pivotRow[j]!
    }
  }
  const answer = new Array<number>(size).fill(0)
  for (let k = size - 1; k >= 0; k--) {
    let sum = rows[k]![size]!
    for (let j = k + 1; j < size; j++) sum -= rows[k]![j]! * answer[j]!
    answer[k] = sum / rows[k]![k]!
  }
  return answer
}
