/**
 * Nelder and Mead's simplex search (Computer Journal 7, 1965): walks downhill on `cost` from `start`.
 * @param reach first step in each parameter.
 */
export function descend(
  cost: (p: readonly number[]) => number,
  start: readonly number[],
  reach: readonly number[],
  steps = 4_000,
): number[] {
  const size = start.length
  const at = (p: number[]) => ({ p, cost: cost(p) })
  let simplex = [at([...start]), ...start.map((_, k) => at(start.map((v, j) => (j === k ? v + reach[k]! : v))))]
  for (let step = 0; step < steps; step++) {
    simplex.sort((a, b) => a.cost - b.cost)
    const best = simplex[0]!
    const worst = simplex[size]!
    const middle = start.map((_, k) => simplex.slice(0, size).reduce((sum, v) => sum + v.p[k]!, 0) / size)
    const along = (factor: number) => at(middle.map((v, k) => v + factor * (worst.p[k]! - v)))
    const reflected = along(-1)
    if (reflected.cost < best.cost) {
      const further = along(-2)
      simplex[size] = further.cost < reflected.cost ? further : reflected
    } else if (reflected.cost < simplex[size - 1]!.cost) {
      simplex[size] = reflected
    } else {
      const nearer = along(reflected.cost < worst.cost ? -0.5 : 0.5)
      if (nearer.cost < Math.min(worst.cost, reflected.cost)) simplex[size] = nearer
      else simplex = simplex.map((v) => (v === best ? v : at(v.p.map((x, k) => (x + best.p[k]!) / 2))))
    }
  }
  return simplex.sort((a, b) => a.cost - b.cost)[0]!.p
}
