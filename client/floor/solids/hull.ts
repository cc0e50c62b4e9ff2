import type { DrawnPoint } from '../view/projection.ts'

/**
 * The convex outline around points of a drawing, clockwise on screen, without points that lie on its edges.
 * Monotone chain: A. M. Andrew, "Another efficient algorithm for convex hulls in two dimensions", 1979.
 */
export function convexHull(points: readonly DrawnPoint[]): DrawnPoint[] {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1])
  if (sorted.length < 3) return sorted
  const lower = chain(sorted)
  const upper = chain(sorted.reverse())
  return [...lower.slice(0, -1), ...upper.slice(0, -1)]
}

function chain(sorted: readonly DrawnPoint[]): DrawnPoint[] {
  const kept: DrawnPoint[] = []
  for (const point of sorted) {
    while (kept.length >= 2 && turnsBack(kept[kept.length - 2]!, kept[kept.length - 1]!, point)) kept.pop()
    kept.push(point)
  }
  return kept
}

function turnsBack(a: DrawnPoint, b: DrawnPoint, c: DrawnPoint): boolean {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]) <= 1e-12
}

/** The part of a convex outline that looks along `towards`, as a run of points; empty for an outline seen edge on. */
export function leadingEdge(outline: readonly DrawnPoint[], towards: DrawnPoint): DrawnPoint[] {
  if (outline.length < 3) return [...outline]
  const leads = outline.map((point, i) => {
    const next = outline[(i + 1) % outline.length]!
    // Clockwise on screen, the outside lies to the left of each edge.
    return (next[1] - point[1]) * towards[0] - (next[0] - point[0]) * towards[1] > 1e-9
  })
  const start = leads.findIndex((isLeading, i) => isLeading && !leads[(i + leads.length - 1) % leads.length])
  if (start < 0) return []
  const run: DrawnPoint[] = [outline[start]!]
  for (let i = start; leads[i % leads.length] && run.length <= outline.length; i++) run.push(outline[(i + 1) % outline.length]!)
  return run
}
