import { subtract, type Vector } from '../arithmetic/vector.ts'
import type { BuiltSet } from '../set/builtSet.ts'
import type { Emitter } from '../set/emitter.ts'
import { panelCorners, type Panel } from '../set/panels.ts'
import { panelOfFront } from '../set/plates.ts'
import type { SceneLight } from '../set/scene.ts'

/** A flat thing as a rectangle: a round one as the square around it. */
type Flat = Pick<Panel, 'centre' | 'normal' | 'across' | 'up' | 'halfWidthMetres' | 'halfHeightMetres'>

/** A flat thing in the way, with the corners of its true outline. */
export interface Plate extends Flat {
  readonly corners: Float64Array
}

/** What flat things could stand between a light's fronts and a ball: most of them cannot, and need not be asked. */
export interface PlatesBetween {
  readonly plates: readonly Plate[]
  /** The other lights among whose fronts some of the plates are. */
  readonly lights: readonly SceneLight[]
}

interface Round {
  readonly centre: Vector
  readonly radiusMetres: number
}

/** Panels and fronts of other lights that reach into the cone between a ball and a light's front. */
export function platesBetween(set: BuiltSet, owner: number, shine: Round, middle: Vector, radiusMetres: number): PlatesBetween {
  const ball = { centre: middle, radiusMetres }
  const panels = set.panels.filter((panel) => standsBetween(panel, shine, ball)).map(plateOfPanel)
  const fronts = [...set.lights.values()].flatMap(({ index, light, emitters: [emitter] }) => {
    if (index === owner || emitter!.front.shape === 'sphere') return []
    return standsBetween(panelOfFront(emitter!), shine, ball) ? [{ light, plate: plateOfFront(emitter!) }] : []
  })
  return { plates: [...panels, ...fronts.map(({ plate }) => plate)], lights: fronts.map(({ light }) => light) }
}

/** Whether a plate could hide any of what shines from any place in a ball. */
export function standsBetween(plate: Flat, shine: Round, ball: Round): boolean {
  return dividesCone(plate, shine, ball) && meetsCone(plate, shine, ball)
}

function plateOfPanel(panel: Panel): Plate {
  return { ...panel, corners: Float64Array.from(panelCorners(panel).flat()) }
}

/** Corners of a round front as something in the way. */
const ROUND_CORNERS = 12

function plateOfFront(emitter: Emitter): Plate {
  const { outline } = emitter
  const every = Math.ceil(outline.length / ROUND_CORNERS)
  return { ...panelOfFront(emitter), corners: Float64Array.from(outline.filter((_, i) => i % every === 0).flat()) }
}

/** Whether a plate's plane may have some of the ball on one side and some of what shines on the other. */
function dividesCone({ centre, normal }: Flat, shine: Round, ball: Round): boolean {
  const side = (p: Vector): number =>
    (p[0] - centre[0]) * normal[0] + (p[1] - centre[1]) * normal[1] + (p[2] - centre[2]) * normal[2]
  const atBall = side(ball.centre)
  const atShine = side(shine.centre)
  const allInFront = atBall - ball.radiusMetres >= 0 && atShine - shine.radiusMetres >= 0
  const allBehind = atBall + ball.radiusMetres <= 0 && atShine + shine.radiusMetres <= 0
  return !allInFront && !allBehind
}

/** Tests across a plate, each for its own part of it. */
const TESTS = 6

/** Whether any part of a plate reaches into the cone from the ball to what shines. */
function meetsCone({ centre, across, up, halfWidthMetres: w, halfHeightMetres: h }: Flat, shine: Round, ball: Round): boolean {
  const [sx, sy, sz] = subtract(shine.centre, ball.centre)
  const [cx, cy, cz] = subtract(centre, ball.centre)
  const perSquare = 1 / (sx * sx + sy * sy + sz * sz)
  const growth = shine.radiusMetres - ball.radiusMetres
  /** Whether what lies within `reach` of a place, seen from the ball's middle, may be in the cone. */
  const isNear = (x: number, y: number, z: number, reach: number): boolean => {
    const along = (x * sx + y * sy + z * sz) * perSquare
    const s = along < 0 ? 0 : along > 1 ? 1 : along
    const a = x - s * sx
    const b = y - s * sy
    const c = z - s * sz
    const width = ball.radiusMetres + s * growth + reach
    return a * a + b * b + c * c <= width * width
  }
  const half = Math.sqrt(w * w + h * h)
  // Most plates are nowhere near: one test with room for the cone's own growth tells.
  if (!isNear(cx, cy, cz, 2 * half + Math.abs(growth))) return false
  const part = half / TESTS
  for (let i = 0; i < TESTS; i++) {
    const u = w * ((2 * i + 1) / TESTS - 1)
    for (let j = 0; j < TESTS; j++) {
      const v = h * ((2 * j + 1) / TESTS - 1)
      if (isNear(cx + u * across[0] + v * up[0], cy + u * across[1] + v * up[1], cz + u * across[2] + v * up[2], part)) return true
    }
  }
  return false
}
