import type { Fineness } from '../picture/shine.ts'
import { sameValues } from './stage.ts'

interface Remembered<Result> {
  readonly dependencies: readonly unknown[]
  readonly fineness: Fineness
  readonly result: Result
}

/** The last layer of each light, or part of one. A full one serves where a coarse one is asked for, never the other way round. */
export class LayerMemory<Result> {
  private readonly layers = new Map<string, Remembered<Result>>()

  of(lightId: string, dependencies: readonly unknown[], fineness: Fineness, compute: (fineness: Fineness) => Result): Result {
    const before = this.layers.get(lightId)
    if (before && sameValues(before.dependencies, dependencies) && (before.fineness === 'full' || fineness === 'coarse')) {
      return before.result
    }
    const result = compute(fineness)
    this.layers.set(lightId, { dependencies, fineness, result })
    return result
  }

  keepOnly(lightIds: ReadonlySet<string>): void {
    for (const id of this.layers.keys()) if (!lightIds.has(id)) this.layers.delete(id)
  }
}
