import { timesFromStops } from '../../arithmetic/portable.ts'
import { cameraMatrix } from '../../colour/cameraMatrix.ts'
import { applyMatrix, invertMatrix } from '../../colour/matrix.ts'
import { boundedLeastSquares } from '../boundedLeastSquares.ts'
import type { LookModel, Part } from '../lookModel.ts'
import { rangeOf } from '../powerKnobs.ts'
import { lightOf, type Draft } from '../draft.ts'
import type { Task } from '../task.ts'
import type { WeighedChoice } from './colourChoices.ts'

/** Channels past this are clipped or as good as: what lies behind cannot be told from them. */
const CLIPPED_FROM = 0.98
/** A channel is judged against itself and this share of the area's strongest. */
const FLOOR_SHARE = 0.15

/** One number wanted of a sum of lights: how much of it a part of light brings, and how exactly it is wanted. */
interface Row {
  readonly of: (choice: WeighedChoice, lightIndex: number) => number
  readonly rest: number
  readonly target: number
  readonly scale: number
}

/**
 * How well lights so chosen could give what is wanted, were their powers free within their heads: a linear fit of what
 * each brings to the wanted channels and levels, which ranks choices without a single prediction.
 */
export class ColourFit {
  private readonly rows: readonly Row[]
  private readonly lower: number[]
  private readonly upper: number[]

  constructor(task: Task, draft: Draft, private readonly model: LookModel, lightIds: readonly string[]) {
    const toChannels = invertMatrix(cameraMatrix(model.whiteBalanceKelvin))
    this.rows = task.aims.flatMap(({ want }): Row[] => {
      if (want.kind === 'area-colour') {
        const targets = applyMatrix(toChannels, want.xyz)
        const floor = FLOOR_SHARE * Math.max(...targets.map(Math.abs))
        return targets.flatMap((target, k) => (target >= CLIPPED_FROM ? [] : [
          this.row(want.areaId, lightIds, target, Math.abs(target) + floor, (part) => part.channels[k]!)]))
      }
      if (want.kind !== 'area-level') return []
      const target = model.areaUnitAt(want.stops)
      return [this.row(want.areaId, lightIds, target, target, (part) => part.luxSeconds)]
    })
    const ranges = lightIds.map((id) => rangeOf({ lights: [{ id, head: draft.plan.heads[lightOf(draft, id).headId]! }] }, draft, 'heads'))
    this.lower = ranges.map(({ lower }) => timesFromStops(lower))
    this.upper = ranges.map(({ upper }) => timesFromStops(upper))
  }

  /** Column of one light under a choice; fits are made of these. */
  column(choice: WeighedChoice, lightIndex: number): number[] {
    return this.rows.map((row) => row.of(choice, lightIndex) / row.scale)
  }

  /** Mean square of what is missed, relative, with the best powers for these columns. */
  miss(columns: readonly (readonly number[])[]): number {
    // Unknowns as shares of full power, so that bright and dim lights are alike to the solver.
    const matrix = this.rows.map((_, r) => columns.map((column, i) => column[r]! * this.upper[i]!))
    const wanted = this.rows.map(({ target, rest, scale }) => (target - rest) / scale)
    const shares = boundedLeastSquares(matrix, wanted, this.lower.map((least, i) => least / this.upper[i]!), this.upper.map(() => 1))
    const squares = wanted.reduce((sum, value, r) => {
      const missed = shares.reduce((left, share, i) => left - matrix[r]![i]! * share, value)
      return sum + missed * missed
    }, 0)
    return squares / Math.max(1, wanted.length)
  }

  private row(areaId: string, lightIds: readonly string[], target: number, scale: number, amount: (part: Part) => number): Row {
    const parts = this.model.partsAt(areaId)
    const indices = lightIds.map((id) => this.model.lightIds.indexOf(id))
    const others = parts?.lights.reduce((sum, part, i) => (indices.includes(i) ? sum : sum + amount(part)), amount(parts.ambient)) ?? 0
    return {
      target, scale: Math.max(scale, 1e-6), rest: others,
      of: (choice, lightIndex) => {
        const part = choice.sheets.partsAt(areaId)?.lights[indices[lightIndex]!]
        return part ? amount(part) * choice.timesAt(areaId) : 0
      },
    }
  }
}
