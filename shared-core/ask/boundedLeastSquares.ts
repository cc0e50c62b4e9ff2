/** Rows of a dense matrix. */
export type Rows = readonly (readonly number[])[]

/** A gradient this small against the size of the problem counts as none. */
const FLAT = 1e-12
/** A column this near to a sum of earlier ones adds nothing of its own. */
const DEPENDENT = 1e-11

/**
 * The `x` that makes the sum of squares of `matrix x - wanted` least while `lower <= x <= upper`, for small dense
 * problems. An active-set method: variables rest on a bound or are free; the free ones are solved for, those that would
 * leave their range stop at its end, and the resting one that would gain most is freed next (Lawson & Hanson, Solving
 * Least Squares Problems, 1974, chapter 23; Stark & Parker, Bounded-variable least squares, 1995).
 * @param matrix one row for each equation
 * @param lower,upper finite, lower <= upper
 */
export function boundedLeastSquares(
  matrix: Rows, wanted: readonly number[], lower: readonly number[], upper: readonly number[],
): number[] {
  const count = lower.length
  const x = [...lower]
  const isFree = new Array<boolean>(count).fill(false)
  const tired = new Set<number>()
  const scale = Math.max(1e-300, ...wanted.map(Math.abs), ...matrix.flat().map(Math.abs))
  for (let round = 0; round < 30 * (count + 1); round++) {
    const freed = mostToGain(gradient(matrix, wanted, x), x, lower, upper, isFree, tired, FLAT * scale * scale)
    if (freed === null) return x
    isFree[freed] = true
    const before = x[freed]!
    settle(matrix, wanted, lower, upper, x, isFree)
    // Freed and at once back where it was: rounding, not gain. It rests until something else has moved.
    if (x[freed] === before) tired.add(freed)
    else tired.clear()
  }
  return x
}

/** Solves for the free variables until all of them lie within their ranges. */
function settle(
  matrix: Rows, wanted: readonly number[], lower: readonly number[], upper: readonly number[], x: number[], isFree: boolean[],
): void {
  for (;;) {
    const free = x.flatMap((_, i) => (isFree[i] ? [i] : []))
    if (free.length === 0) return
    const rest = wanted.map((value, row) => value - x.reduce((sum, xi, i) => (isFree[i] ? sum : sum + matrix[row]![i]! * xi), 0))
    const target = leastSquares(matrix.map((row) => free.map((i) => row[i]!)), rest)
    let share = 1
    let stopped = -1
    free.forEach((i, at) => {
      const step = target[at]! - x[i]!
      const room = (step > 0 ? upper[i]! : lower[i]!) - x[i]!
      if (Math.abs(step) > Math.abs(room) && room / step < share) [share, stopped] = [Math.max(0, room / step), i]
    })
    free.forEach((i, at) => { x[i] = x[i]! + share * (target[at]! - x[i]!) })
    if (stopped < 0) return
    x[stopped] = target[free.indexOf(stopped)]! > upper[stopped]! ? upper[stopped]! : lower[stopped]!
    isFree[stopped] = false
  }
}

/** How fast the sum of squares falls with each variable. */
function gradient(matrix: Rows, wanted: readonly number[], x: readonly number[]): number[] {
  const missing = wanted.map((value, row) => value - x.reduce((sum, xi, i) => sum + matrix[row]![i]! * xi, 0))
  return x.map((_, i) => missing.reduce((sum, value, row) => sum + matrix[row]![i]! * value, 0))
}

function mostToGain(
  slope: readonly number[], x: readonly number[], lower: readonly number[], upper: readonly number[],
  isFree: readonly boolean[], tired: ReadonlySet<number>, flat: number,
): number | null {
  let best: number | null = null
  let most = flat
  slope.forEach((fall, i) => {
    if (isFree[i] || tired.has(i) || lower[i] === upper[i]) return
    const gain = x[i] === upper[i] ? -fall : fall
    if (gain > most) [best, most] = [i, gain]
  })
  return best
}

/**
 * Least squares without bounds by modified Gram-Schmidt on the matrix with the right side beside it (Björck 1967).
 * A column that depends on earlier ones gets 0.
 */
function leastSquares(matrix: number[][], wanted: readonly number[]): number[] {
  const count = matrix[0]?.length ?? 0
  const columns = Array.from({ length: count }, (_, i) => matrix.map((row) => row[i]!))
  const left = [...wanted]
  const upperRight = columns.map(() => new Array<number>(count).fill(0))
  const right = new Array<number>(count).fill(0)
  const isKept = columns.map((column, i) => {
    const original = norm(matrix.map((row) => row[i]!))
    const size = norm(column)
    if (size <= DEPENDENT * original || size === 0) return false
    for (let row = 0; row < column.length; row++) column[row]! /= size
    upperRight[i]![i] = size
    for (let j = i + 1; j < count; j++) upperRight[i]![j] = takeOut(column, columns[j]!)
    right[i] = takeOut(column, left)
    return true
  })
  const x = new Array<number>(count).fill(0)
  for (let i = count - 1; i >= 0; i--) {
    if (!isKept[i]) continue
    let value = right[i]!
    for (let j = i + 1; j < count; j++) value -= upperRight[i]![j]! * x[j]!
    x[i] = value / upperRight[i]![i]!
  }
  return x
}

/** Takes the part along a unit vector out of another, and says how long that part was. */
function takeOut(unit: readonly number[], from: number[]): number {
  let along = 0
  for (let row = 0; row < unit.length; row++) along += unit[row]! * from[row]!
  for (let row = 0; row < unit.length; row++) from[row]! -= along * unit[row]!
  return along
}

function norm(values: readonly number[]): number {
  return Math.sqrt(values.reduce((sum, value) => sum + value * value, 0))
}
