/**
 * What is believed of several unknowns at once: their mean, and how sure of each and of each pair together.
 * `covariance` is square, row by row.
 */
export interface Belief {
  readonly mean: Float64Array
  readonly covariance: Float64Array
}

/** Unknowns that know nothing of each other. */
export function independent(means: readonly number[], deviations: readonly number[]): Belief {
  const n = means.length
  const covariance = new Float64Array(n * n)
  deviations.forEach((deviation, i) => (covariance[i * n + i] = deviation * deviation))
  return { mean: Float64Array.from(means), covariance }
}

/** Variance of a weighted sum of the unknowns. */
export function varianceOf({ mean, covariance }: Belief, weights: Float64Array): number {
  const n = mean.length
  let variance = 0
  for (let i = 0; i < n; i++) {
    if (weights[i] === 0) continue
    for (let j = 0; j < n; j++) variance += weights[i]! * covariance[i * n + j]! * weights[j]!
  }
  return Math.max(0, variance)
}

/** A weighted sum of the unknowns, as believed. */
export function meanOf({ mean }: Belief, weights: Float64Array): number {
  let sum = 0
  for (let i = 0; i < mean.length; i++) sum += weights[i]! * mean[i]!
  return sum
}

/**
 * The belief after one more measured sum: the best linear unbiased estimate, updated by one scalar at a time
 * (R. E. Kalman, "A New Approach to Linear Filtering and Prediction Problems", J. Basic Eng. 82 (1960) 35; for
 * measurements of a constant: B. D. O. Anderson and J. B. Moore, Optimal Filtering, 1979).
 * @param measured the sum, in stops
 * @param variance of the measurement, above 0
 */
export function afterMeasuring(belief: Belief, weights: Float64Array, measured: number, variance: number): Belief {
  const { mean, covariance } = belief
  const n = mean.length
  const shared = new Float64Array(n)
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) shared[i]! += covariance[i * n + j]! * weights[j]!
  }
  let whole = variance
  for (let i = 0; i < n; i++) whole += weights[i]! * shared[i]!
  const news = (measured - meanOf(belief, weights)) / whole
  const nextMean = new Float64Array(n)
  const next = new Float64Array(n * n)
  for (let i = 0; i < n; i++) {
    nextMean[i] = mean[i]! + shared[i]! * news
    for (let j = 0; j < n; j++) next[i * n + j] = covariance[i * n + j]! - (shared[i]! * shared[j]!) / whole
  }
  return { mean: nextMean, covariance: next }
}
