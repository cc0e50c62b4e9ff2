/**
 * Which of the things that stand become which of the things that shall stand, at the least cost in all. Each is paired at
 * most once; what is left over is taken away, or comes new.
 * @param pairCost finite and not negative, or Infinity where the one cannot become the other
 * @returns for each that stands, the index of what it becomes, or null
 *
 * Exact: the Hungarian method by shortest augmenting paths with potentials (H. W. Kuhn, "The Hungarian method for the
 * assignment problem", 1955), on a square table in which every thing may also be paired with its own leaving or coming.
 */
export function leastCostPairs(
  awayCosts: readonly number[], newCosts: readonly number[], pairCost: (from: number, to: number) => number,
): readonly (number | null)[] {
  const [n, m] = [awayCosts.length, newCosts.length]
  const size = n + m
  const never = 1e6 * (1 + sum(awayCosts) + sum(newCosts))
  const cost = (i: number, j: number): number => {
    if (i < n && j < m) return Math.min(never, pairCost(i, j))
    if (i < n) return j - m === i ? awayCosts[i]! : never
    if (j < m) return i - n === j ? newCosts[j]! : never
    return 0
  }
  // Rows and columns count from 1; column 0 holds the row that is being placed.
  const rowPotential = new Array<number>(size + 1).fill(0)
  const columnPotential = new Array<number>(size + 1).fill(0)
  const rowOf = new Array<number>(size + 1).fill(0)
  for (let row = 1; row <= size; row++) {
    rowOf[0] = row
    const least = new Array<number>(size + 1).fill(Infinity)
    const cameFrom = new Array<number>(size + 1).fill(0)
    const seen = new Array<boolean>(size + 1).fill(false)
    let column = 0
    do {
      seen[column] = true
      const here = rowOf[column]!
      let [delta, next] = [Infinity, 0]
      for (let j = 1; j <= size; j++) {
        if (seen[j]) continue
        const reduced = cost(here - 1, j - 1) - rowPotential[here]! - columnPotential[j]!
        if (reduced < least[j]!) [least[j], cameFrom[j]] = [reduced, column]
        if (least[j]! < delta) [delta, next] = [least[j]!, j]
      }
      for (let j = 0; j <= size; j++) {
        if (seen[j]) {
          rowPotential[rowOf[j]!]! += delta
          columnPotential[j]! -= delta
        } else least[j]! -= delta
      }
      column = next
    } while (rowOf[column] !== 0)
    while (column !== 0) {
      rowOf[column] = rowOf[cameFrom[column]!]!
      column = cameFrom[column]!
    }
  }
  const pairs = new Array<number | null>(n).fill(null)
  for (let j = 1; j <= m; j++) if (rowOf[j]! <= n) pairs[rowOf[j]! - 1] = j - 1
  return pairs
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, one) => total + one, 0)
}
