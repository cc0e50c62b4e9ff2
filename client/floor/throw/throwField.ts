import { add, scale, type Vector } from '../../../shared-core/arithmetic/vector.ts'
import { gridPass } from '../../../shared-core/photometry/grid.ts'
import type { Modifier } from '../../../shared-core/plan/schema/kit.ts'
import type { Light } from '../../../shared-core/plan/schema/look.ts'
import { emittersOf, type Emitter } from '../../../shared-core/set/emitter.ts'
import { passes, type Obstacles } from './obstacles.ts'

/**
 * How a light spreads over a plane of the set, for drawing. The core's own fronts, lobes and grids are used, but a front
 * is a handful of points here and nothing bounces: good for the eye, not for the meter.
 */
export interface ThrowSource {
  readonly emitters: readonly { readonly emitter: Emitter; readonly points: readonly Vector[]; readonly nearest: number }[]
}

/** Fronts smaller than this throw as a point; a larger one is spread so that its shadows have soft edges. */
const POINT_METRES = 0.25

export function throwSource(id: string, light: Pick<Light, 'place' | 'aim' | 'rollDegrees' | 'grid'>, modifier: Modifier): ThrowSource {
  return {
    emitters: emittersOf({ id, place: light.place, aim: light.aim, rollDegrees: light.rollDegrees, modifier, grid: light.grid }).map(
      (emitter) => ({ emitter, points: pointsOn(emitter), nearest: emitter.areaSquareMetres / 8 }),
    ),
  }
}

function pointsOn(emitter: Emitter): Vector[] {
  const { centre, across, up, front } = emitter
  if (emitter.radiusMetres * 2 < POINT_METRES) return [centre]
  const at = (u: number, v: number): Vector => add(centre, add(scale(across, u * front.widthMetres), scale(up, v * front.heightMetres)))
  if (front.shape === 'rectangle') return [-1, 0, 1].flatMap((u) => [-1, 0, 1].map((v) => at(u / 3, v / 3)))
  return [centre, ...[0, 1, 2, 3, 4, 5].map((i) => at(0.36 * Math.cos((i * Math.PI) / 3), 0.36 * Math.sin((i * Math.PI) / 3)))]
}

/** Light that arrives at a place that looks at the light, for one lumen-second of the bare tube, in 1/m2. */
export function throwAt(source: ThrowSource, place: Vector, obstacles: Obstacles | null): number {
  let sum = 0
  for (const { emitter, points, nearest } of source.emitters) {
    const each = (emitter.axialRadiancePerLumenSecond * emitter.areaSquareMetres) / points.length
    for (const point of points) {
      const x = place[0] - point[0]
      const y = place[1] - point[1]
      const z = place[2] - point[2]
      const distance2 = x * x + y * y + z * z
      const cosine = (x * emitter.axis[0] + y * emitter.axis[1] + z * emitter.axis[2]) / Math.sqrt(distance2 + 1e-9)
      if (cosine <= 0 && emitter.front.shape !== 'sphere') continue
      const lobe = emitter.front.shape === 'sphere' ? 0.5 : cosine * lobeAt(cosine, emitter.front.lobeExponent)
      // A point near the front stands for the area around it: it cannot come nearer than that area is wide.
      const light = (each * lobe * gridPass(emitter.front.grid, cosine)) / (distance2 + nearest)
      if (light > 0) sum += obstacles === null ? light : light * passes(obstacles, point, place)
    }
  }
  return sum
}

function lobeAt(cosine: number, exponent: number): number {
  return exponent === 0 ? 1 : Math.pow(cosine, exponent)
}

/** A grid of cells over a plane of the set. */
export interface FieldGrid {
  readonly columns: number
  readonly rows: number
  /** Middle of a cell, counted from the top left of the drawing. */
  readonly placeOf: (column: number, row: number) => Vector
}

/** As good as nothing, and little enough to be averaged with its neighbours. */
const DARK_STOPS = -10
const DARK = 2 ** DARK_STOPS

/**
 * The throw over a grid in stops from the light's level at the place it serves: 0 there, -1 where half of it arrives.
 * @param reference light at the place served, as `throwAt` gives it, without obstacles
 */
export function throwField(source: ThrowSource, grid: FieldGrid, obstacles: Obstacles, reference: number): Float32Array {
  const stops = new Float32Array(grid.columns * grid.rows)
  const unit = reference > 0 ? 1 / reference : 0
  for (let row = 0; row < grid.rows; row++) {
    for (let column = 0; column < grid.columns; column++) {
      const times = throwAt(source, grid.placeOf(column, row), obstacles) * unit
      stops[row * grid.columns + column] = times > DARK ? Math.log2(times) : DARK_STOPS
    }
  }
  return softened(softened(stops, grid), grid)
}

/** Mean of each cell and its neighbours, so that a front of a few points does not leave its shadows in stripes. */
function softened(field: Float32Array, { columns, rows }: FieldGrid): Float32Array {
  const soft = new Float32Array(field.length)
  for (let row = 0; row < rows; row++) {
    const above = Math.max(0, row - 1) * columns
    const here = row * columns
    const below = Math.min(rows - 1, row + 1) * columns
    for (let column = 0; column < columns; column++) {
      const left = Math.max(0, column - 1)
      const right = Math.min(columns - 1, column + 1)
      const sum =
        field[above + left]! + field[above + column]! + field[above + right]! +
        field[here + left]! + field[here + column]! + field[here + right]! +
        field[below + left]! + field[below + column]! + field[below + right]!
      soft[here + column] = sum / 9
    }
  }
  return soft
}

/** From this far under the aperture up a throw shows, and at this far over it it is as strong as it is drawn. */
export const SHOWN_STOPS = { least: -5, most: 2 } as const

/** How strongly a level is drawn, 0 to 1, softly at both ends. */
export function strengthAt(stops: number): number {
  const share = Math.min(1, Math.max(0, (stops - SHOWN_STOPS.least) / (SHOWN_STOPS.most - SHOWN_STOPS.least)))
  return share * share * (3 - 2 * share)
}
