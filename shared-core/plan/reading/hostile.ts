import { printable, pathText, type Problem } from './problem.ts'

/** The plan is seven levels deep; a gel's rows add two. */
const DEEPEST = 12

/**
 * What no plan ever holds and what a parser may trip over: keys that lead into a prototype, and nesting without end.
 * Looked for before anything else reads the value.
 */
export function hostileProblem(value: unknown, path: readonly string[] = []): Problem | null {
  if (typeof value !== 'object' || value === null) return null
  if (path.length > DEEPEST) return { path: pathText(path.slice(0, 4)), message: 'is nested too deep' }
  for (const key of Object.keys(value)) {
    if (key === '__proto__') return { path: pathText(path), message: `holds the forbidden key ${printable(key)}` }
    const problem = hostileProblem((value as Record<string, unknown>)[key], [...path, key])
    if (problem) return problem
  }
  return null
}
