/**
 * Solves a symmetrical, positive set of linear equations by Cholesky's square root.
 * @param matrix by rows; written over
 */
export function solved(matrix: Float64Array, right: Float64Array): Float64Array {
  const size = right.length
  for (let j = 0; j < size; j++) {
    let pivot = matrix[j * size + j]!
    for (let k = 0; k < j; k++) pivot -= matrix[j * size + k]! * matrix[j * size + k]!
    const root = Math.sqrt(Math.max(pivot, 1e-12))
    matrix[j * size + j] = root
    for (let i = j + 1; i < size; i++) {
      let sum = matrix[i * size + j]!
      for (let k = 0; k < j; k++) sum -= matrix[i * size + k]! * matrix[j * size + k]!
      matrix[i * size + j] = sum / root
    }
  }
  const found = right.slice()
  for (let i = 0; i < size; i++) {
    for (let k = 0; k < i; k++) found[i] = found[i]! - matrix[i * size + k]! * found[k]!
    found[i] = found[i]! / matrix[i * size + i]!
  }
  for (let i = size - 1; i >= 0; i--) {
    for (let k = i + 1; k < size; k++) found[i] = found[i]! - matrix[k * size + i]! * found[k]!
    found[i] = found[i]! / matrix[i * size + i]!
  }
  return found
}
