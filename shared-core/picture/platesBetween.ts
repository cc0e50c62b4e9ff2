import type { Vector } from '../arithmetic/vector.ts'
import type { BuiltSet } from '../set/builtSet.ts'
import type { Emitter } from '../set/emitter.ts'
import { Occluders } from '../set/occluders.ts'
import type { Panel } from '../set/panels.ts'
import type { SceneLight } from '../set/scene.ts'

/** What flat things could stand between a light's fronts and a ball: most of them cannot, and need not be asked. */
export interface PlatesBetween {
  readonly panels: readonly Panel[]
  readonly fronts: readonly { readonly owner: number, readonly light: SceneLight, readonly emitter: Emitter }[]
}

/** Panels and fronts of other lights that reach into the cone between the ball and any of the places that shine. */
export function platesBetween(
  set: BuiltSet, owner: number, shines: readonly { readonly centre: Vector, readonly radiusMetres: number }[],
  middle: Vector, radiusMetres: number,
): PlatesBetween {
  const isBetween = (centre: Vector, normal: Vector, reach: number): boolean => shines.some((shine) =>
    meetsCone(centre, reach, shine, middle, radiusMetres) && dividesCone(centre, normal, shine, middle, radiusMetres))
  return {
    panels: set.panels.filter(({ centre, normal, halfWidthMetres: w, halfHeightMetres: h }) =>
      isBetween(centre, normal, Math.sqrt(w * w + h * h))),
    fronts: [...set.lights.values()].flatMap(({ index, light, emitters }) =>
      emitters.slice(0, 1).filter(({ front, centre, axis, radiusMetres: reach }) =>
        index !== owner && front.shape !== 'sphere' && isBetween(centre, axis, reach)).map((emitter) => ({ owner: index, light, emitter }))),
  }
}

/** The same plates as something to ask; null for none. */
export function occludersOf({ panels, fronts }: PlatesBetween): Occluders | null {
  return panels.length + fronts.length === 0 ? null : new Occluders([], panels, fronts)
}

/** Whether a ball around a plate reaches into the cone from the subject's ball to what shines. */
function meetsCone(
  centre: Vector, reach: number, shine: { readonly centre: Vector, readonly radiusMetres: number }, middle: Vector, radius: number,
): boolean {
  const d: Vector = [shine.centre[0] - middle[0], shine.centre[1] - middle[1], shine.centre[2] - middle[2]]
  const c: Vector = [centre[0] - middle[0], centre[1] - middle[1], centre[2] - middle[2]]
  const along = (c[0] * d[0] + c[1] * d[1] + c[2] * d[2]) / (d[0] * d[0] + d[1] * d[1] + d[2] * d[2])
  const s = Math.min(1, Math.max(0, along))
  const [x, y, z] = [c[0] - s * d[0], c[1] - s * d[1], c[2] - s * d[2]]
  const width = Math.max(radius, shine.radiusMetres) + reach
  return x * x + y * y + z * z <= width * width
}

/** Whether a plate's plane has some of the ball on one side and some of what shines on the other. */
function dividesCone(
  centre: Vector, normal: Vector, shine: { readonly centre: Vector, readonly radiusMetres: number }, middle: Vector, radius: number,
): boolean {
  const side = (p: Vector): number => (p[0] - centre[0]) * normal[0] + (p[1] - centre[1]) * normal[1] + (p[2] - centre[2]) * normal[2]
  const ball = side(middle)
  const front = side(shine.centre)
  const allInFront = ball - radius >= 0 && front - shine.radiusMetres >= 0
  const allBehind = ball + radius <= 0 && front + shine.radiusMetres <= 0
  return !allInFront && !allBehind
}
