/** Whole percents of shares that together are 1, adding up to 100 (largest remainders, Hamilton's method). */
export function sharesInPercent(shares: readonly number[]): readonly number[] {
  const whole = shares.map((share) => Math.floor(100 * share))
  const byRest = shares.map((share, i) => ({ i, rest: 100 * share - whole[i]! })).sort((a, b) => b.rest - a.rest || a.i - b.i)
  const left = shares.length === 0 ? 0 : 100 - whole.reduce((sum, one) => sum + one, 0)
  for (const { i } of byRest.slice(0, Math.max(0, left))) whole[i] = whole[i]! + 1
  return whole
}
