import { type Vector, add, cross, direction, scale, subtract } from '../arithmetic/vector.ts'
import { cosine, radiansFromDegrees, sine } from '../arithmetic/portable.ts'
import { axialRadiancePerExitance } from '../photometry/lobe.ts'
import { type Front, frontOf } from '../photometry/modifier.ts'
import { type OutlinePoint, outlineArea, outlineOf } from '../photometry/frontOutline.ts'
import { cornersOf } from '../photometry/polygon.ts'
import type { SceneLight, ScenePlace } from './scene.ts'

/** An area that emits, standing in the set. All light figures are for one lumen-second of the bare tube. */
export interface Emitter {
  readonly front: Front
  readonly centre: Vector
  /** The way it shines. */
  readonly axis: Vector
  /** Across the front: horizontal until rolled. */
  readonly across: Vector
  /** Up the front. */
  readonly up: Vector
  readonly outlineOnFront: readonly OutlinePoint[]
  readonly outline: readonly Vector[]
  /** The outline as one run of numbers. */
  readonly corners: Float64Array
  /** From the centre to its farthest corner. */
  readonly radiusMetres: number
  readonly areaSquareMetres: number
  /** Straight ahead, before the grid, in 1/(m2 sr). */
  readonly axialRadiancePerLumenSecond: number
}

export function vectorOf(place: ScenePlace): Vector {
  return [place.xMetres, place.yMetres, place.zMetres]
}

/** Axes of a front that shines along `axis`: its width lies level until rolled (clockwise as seen from behind it). */
export function frontAxes(axis: Vector, rollDegrees: number): { across: Vector; up: Vector } {
  // A front that shines straight up or down has no level width of its own: camera right serves.
  const level = Math.abs(axis[2]) > 0.9999 ? ([1, 0, 0] as const) : direction(cross(axis, [0, 0, 1]))
  const upright = cross(level, axis)
  const roll = radiansFromDegrees(rollDegrees)
  const across = subtract(scale(level, cosine(roll)), scale(upright, sine(roll)))
  return { across, up: cross(across, axis) }
}

function standingEmitter(light: SceneLight, front: Front, axis: Vector, fluxShare: number): Emitter {
  const centre = vectorOf(light.place)
  const { across, up } = frontAxes(axis, light.rollDegrees)
  const outlineOnFront = outlineOf(front)
  const outline = outlineOnFront.map(([u, v]) => add(centre, add(scale(across, u), scale(up, v))))
  const areaSquareMetres = outlineArea(outlineOnFront)
  // A tube shines from all round: its surface is four times the disc that one sees of it.
  const exitance = fluxShare / (front.shape === 'sphere' ? 4 * areaSquareMetres : areaSquareMetres)
  return {
    front,
    centre,
    axis,
    across,
    up,
    outlineOnFront,
    outline,
    corners: cornersOf(outline),
    radiusMetres: Math.sqrt(Math.max(...outlineOnFront.map(([u, v]) => u * u + v * v))),
    areaSquareMetres,
    axialRadiancePerLumenSecond: exitance * axialRadiancePerExitance(front.lobeExponent),
  }
}

const builtLights = new WeakMap<SceneLight, readonly Emitter[]>()

/**
 * The fronts of a light in the set: one, or two for a translucent umbrella that also sends light backwards. Remembered
 * with the light's object.
 */
export function emittersOf(light: SceneLight): readonly Emitter[] {
  let emitters = builtLights.get(light)
  if (!emitters) builtLights.set(light, (emitters = buildEmitters(light)))
  return emitters
}

function buildEmitters(light: SceneLight): readonly Emitter[] {
  const front = frontOf(light.modifier, light.grid)
  const axis = direction(subtract(vectorOf(light.aim), vectorOf(light.place)))
  const forward = standingEmitter(light, front, axis, front.fluxShare)
  if (front.backFluxShare === 0) return [forward]
  const noGrid = { kind: 'none', openingDegrees: 120 } as const
  const backFront: Front = { ...front, fluxShare: front.backFluxShare, backFluxShare: 0, lobeExponent: 0, grid: noGrid }
  return [forward, standingEmitter(light, backFront, scale(axis, -1), front.backFluxShare)]
}
