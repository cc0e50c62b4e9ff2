/** A 3 × 3 matrix by rows. */
export type Matrix3 = readonly [Triple, Triple, Triple]
type Triple = readonly [number, number, number]

/** matrix · column. */
export function applyMatrix(m: Matrix3, v: Triple): [number, number, number] {
  return [
    m[0][0] * v[0] + m[0][1] * v[1] + m[0][2] * v[2],
    m[1][0] * v[0] + m[1][1] * v[1] + m[1][2] * v[2],
    m[2][0] * v[0] + m[2][1] * v[1] + m[2][2] * v[2],
  ]
}

/** a · b: what `b` does first and `a` after it. */
export function multiplyMatrices(a: Matrix3, b: Matrix3): Matrix3 {
  const column = (k: 0 | 1 | 2): [number, number, number] => applyMatrix(a, [b[0][k], b[1][k], b[2][k]])
  const [first, second, third] = [column(0), column(1), column(2)]
  return [
    [first[0], second[0], third[0]],
    [first[1], second[1], third[1]],
    [first[2], second[2], third[2]],
  ]
}

/**
 * The inverse by cofactors.
 * @throws RangeError when the matrix has none.
 */
export function invertMatrix(m: Matrix3): Matrix3 {
  const [[a, b, c], [d, e, f], [g, h, i]] = m
  const determinant = a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g)
  if (determinant === 0) throw new RangeError('this matrix cannot be inverted')
  return [
    [(e * i - f * h) / determinant, (c * h - b * i) / determinant, (b * f - c * e) / determinant],
    [(f * g - d * i) / determinant, (a * i - c * g) / determinant, (c * d - a * f) / determinant],
    [(d * h - e * g) / determinant, (b * g - a * h) / determinant, (a * e - b * d) / determinant],
  ]
}
