import { add, scale, type Vector } from '../../../shared-core/arithmetic/vector.ts'
import { gridPass } from '../../../shared-core/photometry/grid.ts'
import type { Modifier } from '../../../shared-core/plan/schema/kit.ts'
import type { Light } from '../../../shared-core/plan/schema/look.ts'
import { emittersOf, type Emitter } from '../../../shared-core/set/emitter.ts'
import { NOBODY, type Occluders } from '../../../shared-core/set/occluders.ts'
import type { Obstacles } from './obstacles.ts'

/**
 * How a light spreads over a plane of the set, for drawing. The core's own fronts, lobes, grids and obstacles are used,
 * but a front is a handful of points here and nothing bounces: good for the eye, not for the meter.
 */
export interface ThrowSource {
  readonly fronts: readonly ThrowFront[]
}

interface ThrowFront {
  readonly emitter: Emitter
  readonly points: readonly Vector[]
  /** Width of the patch of front that each point stands for, in metres. */
  readonly patchMetres: number
  /** Light of one point at 1 m by cosine off the axis, from 0 to 1 in equal steps. */
  readonly byCosine: Float64Array
}

const COSINE_STEPS = 256
/** Fronts smaller than this throw as one point; a larger one is spread over several. */
const POINT_METRES = 0.25

export function throwSource(id: string, light: Pick<Light, 'place' | 'aim' | 'rollDegrees' | 'grid'>, modifier: Modifier): ThrowSource {
  const { place, aim, rollDegrees, grid } = light
  return {
    fronts: emittersOf({ id, place, aim, rollDegrees, grid, modifier }).map((emitter) => {
      const points = pointsOn(emitter)
      const each = (emitter.axialRadiancePerLumenSecond * emitter.areaSquareMetres) / points.length
      const byCosine = Float64Array.from({ length: COSINE_STEPS + 1 }, (_, i) => each * shareAt(emitter, i / COSINE_STEPS))
      return { emitter, points, patchMetres: Math.sqrt(emitter.areaSquareMetres / points.length), byCosine }
    }),
  }
}

/** Light off the axis for straight ahead, with the front's own foreshortening. A bare tube sends as much everywhere. */
function shareAt(emitter: Emitter, cosine: number): number {
  if (emitter.front.shape === 'sphere') return 1
  return Math.pow(cosine, emitter.front.lobeExponent + 1) * gridPass(emitter.front.grid, cosine)
}

function pointsOn(emitter: Emitter): Vector[] {
  const { centre, across, up, front } = emitter
  if (emitter.radiusMetres * 2 < POINT_METRES) return [centre]
  const at = (u: number, v: number): Vector => add(centre, add(scale(across, u * front.widthMetres), scale(up, v * front.heightMetres)))
  if (front.shape !== 'rectangle') return [[-1, -1], [1, -1], [1, 1], [-1, 1], [0, 0]].map(([u = 0, v = 0]) => at(u * 0.23, v * 0.23))
  const upright = front.heightMetres >= front.widthMetres
  return [-1.5, -0.5, 0.5, 1.5].map((step) => (upright ? at(0, step / 4) : at(step / 4, 0)))
}

/**
 * Light that arrives at a place that looks at the light, for one lumen-second of the bare tube, in 1/m2.
 * @param obstacles null to look through everything
 */
export function throwAt(source: ThrowSource, place: Vector, obstacles: Obstacles | null): number {
  let sum = 0
  for (const front of source.fronts) sum += throwFrom(front, place, obstacles)
  return sum
}

function throwFrom(front: ThrowFront, [px, py, pz]: Vector, obstacles: Obstacles | null): number {
  const { axis, centre, radiusMetres, front: { shape } } = front.emitter
  const nearest = front.patchMetres * front.patchMetres
  const blocked = obstacles !== null && obstacles.solid.consider(px, py, pz, centre[0], centre[1], centre[2], radiusMetres, NOBODY) > 0
  let sum = 0
  for (const point of front.points) {
    const x = px - point[0]
    const y = py - point[1]
    const z = pz - point[2]
    const distance2 = x * x + y * y + z * z
    const cosine = shape === 'sphere' ? 1 : (x * axis[0] + y * axis[1] + z * axis[2]) / Math.sqrt(distance2 + 1e-9)
    if (cosine <= 0) continue
    // A point near the front stands for the patch around it: it cannot come nearer than that patch is wide.
    const light = atCosine(front.byCosine, cosine) / (distance2 + nearest)
    sum += blocked ? light * obstacles.solid.visibleShare(point[0], point[1], point[2], front.patchMetres) : light
  }
  if (sum === 0 || obstacles === null) return sum
  for (const { occluders, transmittance } of obstacles.cloths) {
    sum *= transmittance + (1 - transmittance) * seen(occluders, px, py, pz, centre, front)
  }
  return sum
}

/** Mean share of a front that is seen past one cloth. */
function seen(occluders: Occluders, px: number, py: number, pz: number, centre: Vector, front: ThrowFront): number {
  if (occluders.consider(px, py, pz, centre[0], centre[1], centre[2], front.emitter.radiusMetres, NOBODY) === 0) return 1
  let sum = 0
  for (const point of front.points) sum += occluders.visibleShare(point[0], point[1], point[2], front.patchMetres)
  return sum / front.points.length
}

function atCosine(byCosine: Float64Array, cosine: number): number {
  const at = Math.min(COSINE_STEPS - 1e-9, cosine * COSINE_STEPS)
  const step = Math.floor(at)
  const low = byCosine[step]!
  return low + (byCosine[step + 1]! - low) * (at - step)
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
