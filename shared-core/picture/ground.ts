import { dot, subtract, type Vector } from '../arithmetic/vector.ts'
import { builtSet } from '../set/builtSet.ts'
import type { CameraView } from '../set/camera.ts'
import type { Emitter } from '../set/emitter.ts'
import type { Panel } from '../set/panels.ts'
import type { Scene } from '../set/scene.ts'
import { BACKDROP_ID } from '../set/surfaces.ts'

/** Something flat that may show behind the subject: one panel of a surface, or one lit front. */
export interface Ground {
  readonly kind: 'paper' | 'wall' | 'piece' | 'front'
  readonly surfaceId: string | null
  readonly lightId: string | null
  /** The swatch of what is met; null for a bare lit front. */
  readonly swatch: string | null
  readonly transmittance: number
  readonly facing: Vector
  readonly panel: Pick<Panel, 'centre' | 'across' | 'up' | 'normal' | 'halfWidthMetres' | 'halfHeightMetres'>
  readonly emitter: Emitter | null
}

/**
 * What lies behind the subject, fast: for every place in the Frame the index of the nearest ground. The same answer as
 * `behindAt` in set/behind.ts, which says what it means.
 */
export class GroundFinder {
  readonly grounds: readonly Ground[]
  private readonly void: number
  /** Of each ground, how the plane and its two axes change across the Frame: constant, per frameX, per frameY. */
  private readonly slopes: Float64Array
  private readonly heights: Float64Array

  constructor(scene: Scene) {
    const { view } = builtSet(scene)
    const grounds = groundsOf(scene)
    this.grounds = grounds
    this.void = grounds.length - 1
    this.slopes = new Float64Array(9 * grounds.length)
    this.heights = new Float64Array(3 * grounds.length)
    grounds.forEach(({ panel }, g) => {
      const from = subtract(panel.centre, view.place)
      ;[panel.normal, panel.across, panel.up].forEach((axis, k) => {
        this.slopes.set(alongFrame(view, axis), 9 * g + 3 * k)
        this.heights[3 * g + k] = dot(from, axis)
      })
    })
  }

  at(frameX: number, frameY: number): number {
    let nearest = Infinity
    let found = this.void
    const { slopes, heights, grounds } = this
    for (let g = 0; g < this.void; g++) {
      const s = 9 * g
      const slope = slopes[s]! + slopes[s + 1]! * frameX + slopes[s + 2]! * frameY
      if (slope > -1e-12) continue
      const depth = heights[3 * g]! / slope
      if (depth <= 1e-6 || depth >= nearest) continue
      const u = depth * (slopes[s + 3]! + slopes[s + 4]! * frameX + slopes[s + 5]! * frameY) - heights[3 * g + 1]!
      const v = depth * (slopes[s + 6]! + slopes[s + 7]! * frameX + slopes[s + 8]! * frameY) - heights[3 * g + 2]!
      if (!holds(grounds[g]!, u, v)) continue
      nearest = depth
      found = g
    }
    return found
  }

  /** Where the sight through a place of the Frame meets a ground's plane, kept inside the ground's edges. */
  placeOn(ground: number, frameX: number, frameY: number): Vector {
    const { panel } = this.grounds[ground]!
    const s = 9 * ground
    const along = (k: number): number => this.slopes[s + 3 * k]! + this.slopes[s + 3 * k + 1]! * frameX + this.slopes[s + 3 * k + 2]! * frameY
    const slope = along(0)
    // Past the plane's own horizon there is no such place: its far edge stands in.
    const depth = slope < -1e-6 ? this.heights[3 * ground]! / slope : 100
    const away = depth > 0 && depth < 100 ? depth : 100
    const u = held(away * along(1) - this.heights[3 * ground + 1]!, panel.halfWidthMetres)
    const v = held(away * along(2) - this.heights[3 * ground + 2]!, panel.halfHeightMetres)
    return [0, 1, 2].map((k) => panel.centre[k]! + u * panel.across[k]! + v * panel.up[k]!) as unknown as Vector
  }
}

const held = (value: number, most: number): number => Math.min(most, Math.max(-most, value))

/** How an axis's share of the line of sight, one metre deep, goes across the Frame. */
function alongFrame(view: CameraView, axis: Vector): readonly [number, number, number] {
  const right = dot(view.right, axis) * view.widthPerMetre
  const up = dot(view.up, axis) * view.heightPerMetre
  return [dot(view.ahead, axis) - right * view.axisX + up * view.axisY, right, -up]
}

function holds({ panel, emitter }: Ground, u: number, v: number): boolean {
  if (emitter === null) return Math.abs(u) <= panel.halfWidthMetres + 1e-9 && Math.abs(v) <= panel.halfHeightMetres + 1e-9
  const outline = emitter.outlineOnFront
  for (let i = 0; i < outline.length; i++) {
    const [au, av] = outline[i]!
    const [bu, bv] = outline[(i + 1) % outline.length]!
    if ((bu - au) * (v - av) - (bv - av) * (u - au) < 0) return false
  }
  return true
}

/** All that could be met, in the order of `behindAt`, and last the rear wall's plane for a sight that meets nothing. */
function groundsOf(scene: Scene): readonly Ground[] {
  const set = builtSet(scene)
  const panels = set.surfaces.flatMap((surface) => surface.panels.map((panel): Ground => ({
    kind: surface.isRoom ? 'wall' : surface.id === BACKDROP_ID ? 'paper' : 'piece',
    surfaceId: surface.id, lightId: null, swatch: surface.swatch, transmittance: surface.transmittance,
    facing: panel.normal, panel, emitter: null,
  })))
  const fronts = [...set.lights].flatMap(([lightId, { emitters }]) => emitters.map((emitter): Ground => ({
    kind: 'front', surfaceId: null, lightId, swatch: null, transmittance: 0, facing: emitter.axis,
    panel: {
      centre: emitter.centre, across: emitter.across, up: emitter.up, normal: emitter.axis,
      halfWidthMetres: emitter.radiusMetres, halfHeightMetres: emitter.radiusMetres,
    },
    emitter,
  })))
  const rear = set.surfaces.find(({ id }) => id === 'rearWall')!
  const beyond: Ground = {
    kind: 'wall', surfaceId: rear.id, lightId: null, swatch: rear.swatch, transmittance: 0, facing: [0, -1, 0],
    panel: rear.panels[0]!, emitter: null,
  }
  return [...panels, ...fronts, beyond]
}
