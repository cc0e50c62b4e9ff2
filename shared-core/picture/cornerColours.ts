import type { LightTable, LitLayer } from './compose.ts'
import type { SurfaceLayer } from './layer.ts'
import type { SurfaceSamples } from './surfaceSamples.ts'

type Corners = Pick<SurfaceSamples, 'cornerCount' | 'cornerSlots' | 'cornerMaterials'>

/** What one light's share of the corners' colours follows from. */
interface Summand {
  readonly surface: SurfaceLayer
  readonly table: LightTable
}

/**
 * Colours of the corners that a picture of the subject is drawn between. A hand changes one light for many pictures on
 * end: what the room and the other lights give is summed once then, and only that light is added anew.
 */
export class CornerColours {
  /** Camera channels, three a corner; rounded once, when all lights are in it. */
  readonly channels: Float32Array
  /** The room's light and all lights but `without`. */
  private readonly still: Float64Array
  private without: number | null = null
  private last: readonly Summand[] = []
  private lastAmbient: Float64Array = new Float64Array(0)

  constructor(private readonly corners: Corners) {
    this.channels = new Float32Array(3 * corners.cornerCount)
    this.still = new Float64Array(3 * corners.cornerCount)
  }

  /** @param ambient channels of each material under the room's steady light */
  colour(lights: readonly LitLayer[], ambient: Float64Array): void {
    const summands = lights.map(({ layer: { surface }, table }) => ({ surface, table }))
    const changed = this.changedSinceLast(summands, ambient)
    if (changed === null || changed !== this.without) {
      this.fill(ambient)
      summands.forEach((one, i) => { if (i !== changed) this.add(one, this.still) })
    }
    this.without = changed
    if (changed === null) this.channels.set(this.still)
    else this.add(summands[changed]!, this.channels)
    this.last = summands
    this.lastAmbient = ambient
  }

  /** Index of the one light that is not as it was; null where more has changed. */
  private changedSinceLast(summands: readonly Summand[], ambient: Float64Array): number | null {
    const { last, lastAmbient } = this
    if (summands.length !== last.length || ambient.length !== lastAmbient.length) return null
    if (!ambient.every((channel, i) => channel === lastAmbient[i])) return null
    const changed = summands.flatMap(({ surface, table }, i) => (surface === last[i]!.surface && table === last[i]!.table ? [] : [i]))
    return changed.length === 0 ? this.without : changed.length === 1 ? changed[0]! : null
  }

  private fill(ambient: Float64Array): void {
    const { corners: { cornerCount, cornerMaterials }, still } = this
    for (let c = 0, at = 0; c < cornerCount; c++, at += 3) {
      const row = 3 * cornerMaterials[c]!
      still[at] = ambient[row]!
      still[at + 1] = ambient[row + 1]!
      still[at + 2] = ambient[row + 2]!
    }
  }

  /** Writes the still sum and one light's share. */
  private add({ surface: { directInside, returned, returnedInside, sheen }, table }: Summand, into: Float32Array | Float64Array): void {
    const { corners: { cornerCount, cornerSlots, cornerMaterials }, still } = this
    const { direct: ofDirect, returned: ofReturned } = table
    const [sr, sg, sb] = [table.sheen[0]!, table.sheen[1]!, table.sheen[2]!]
    const [nr, ng, nb] = [table.returnedSheen[0]!, table.returnedSheen[1]!, table.returnedSheen[2]!]
    for (let c = 0, at = 0; c < cornerCount; c++, at += 3) {
      const slot = cornerSlots[c]!
      const row = 3 * cornerMaterials[c]!
      const d = directInside[slot]!
      const r = returnedInside[slot]!
      const m = sheen[slot]!
      const n = returned[slot]! - r
      into[at] = still[at]! + (d * ofDirect[row]! + r * ofReturned[row]! + m * sr + n * nr)
      into[at + 1] = still[at + 1]! + (d * ofDirect[row + 1]! + r * ofReturned[row + 1]! + m * sg + n * ng)
      into[at + 2] = still[at + 2]! + (d * ofDirect[row + 2]! + r * ofReturned[row + 2]! + m * sb + n * nb)
    }
  }
}
