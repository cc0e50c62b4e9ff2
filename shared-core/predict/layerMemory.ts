import type { Layer } from '../picture/layer.ts'
import type { Fineness } from '../picture/shine.ts'
import { sameValues } from './stage.ts'

interface Remembered {
  readonly dependencies: readonly unknown[]
  readonly fineness: Fineness
  readonly layer: Layer
}

/** The last layer of each light. A full one serves where a coarse one is asked for, never the other way round. */
export class LayerMemory {
  private readonly layers = new Map<string, Remembered>()

  of(lightId: string, dependencies: readonly unknown[], fineness: Fineness, compute: (fineness: Fineness) => Layer): Layer {
    const before = this.layers.get(lightId)
    if (before && sameValues(before.dependencies, dependencies) && (before.fineness === 'full' || fineness === 'coarse')) {
      return before.layer
    }
    const layer = compute(fineness)
    this.layers.set(lightId, { dependencies, fineness, layer })
    return layer
  }

  keepOnly(lightIds: ReadonlySet<string>): void {
    for (const id of this.layers.keys()) if (!lightIds.has(id)) this.layers.delete(id)
  }
}
