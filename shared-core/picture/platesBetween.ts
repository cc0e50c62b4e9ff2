import { subtract, type Vector } from '../arithmetic/vector.ts'
import type { BuiltSet } from '../set/builtSet.ts'
import type { Emitter } from '../set/emitter.ts'
import { panelCorners, type Panel } from '../set/panels.ts'
import type { SceneLight } from '../set/scene.ts'

/** A flat thing in the way: as a rectangle, and as the corners of its true outline. */
export interface Plate extends Pick<Panel, 'centre' | 'normal' | 'across' | 'up' | 'halfWidthMetres' | 'halfHeightMetres'> {
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
  const panels = set.panels.map(plateOfPanel).filter((plate) => standsBetween(plate, shine, ball))
  const fronts = [...set.lights.values()].flatMap(({ index, light, emitters: [emitter] }) => {
    if (index === owner || emitter!.front.shape === 'sphere') return []
    const plate = plateOfFront(emitter!)
    return standsBetween(plate, shine, ball) ? [{ light, plate }] : []
  })
  return { plates: [...panels, ...fronts.map(({ plate }) => plate)], lights: fronts.map(({ light }) => light) }
}

/** Whether a plate could hide any of what shines from any place in a ball. */
export function standsBetween(plate: Plate, shine: Round, ball: Round): boolean {
  return dividesCone(plate, shine, ball) && meetsCone(plate, shine, ball)
}

function plateOfPanel(panel: Panel): Plate {
  return { ...panel, corners: Float64Array.from(panelCorners(panel).flat()) }
}

/** Corners of a round front as something in the way. */
const ROUND_CORNERS = 12

function plateOfFront({ centre, axis, across, up, front, outline }: Emitter): Plate {
  const every = Math.ceil(outline.length / ROUND_CORNERS)
  return {
    centre, normal: axis, across, up, halfWidthMetres: front.widthMetres / 2, halfHeightMetres: front.heightMetres / 2,
    corners: Float64Array.from(outline.filter((_, i) => i % every === 0).flat()),
  }
}

/** Whether a plate's plane may have some of the ball on one side and some of what shines on the other. */
function dividesCone({ centre, normal }: Plate, shine: Round, ball: Round): boolean {
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
function meetsCone({ centre, across, up, halfWidthMetres: w, halfHeightMetres: h }: Plate, shine: Round, ball: Round): boolean {
  const sight = subtract(shine.centre, ball.centre)
  const square = sight[0] * sight[0] + sight[1] * sight[1] + sight[2] * sight[2]
  const part = Math.sqrt(w * w + h * h) / TESTS
  for (let i = 0; i < TESTS * TESTS; i++) {
    const u = w * ((2 * (i % TESTS) + 1) / TESTS - 1)
    const v = h * ((2 * Math.floor(i / TESTS) + 1) / TESTS - 1)
    const [x, y, z] = [0, 1, 2].map((k) => centre[k]! + u * across[k]! + v * up[k]! - ball.centre[k]!) as [number, number, number]
    const s = Math.min(1, Math.max(0, (x * sight[0] + y * sight[1] + z * sight[2]) / square))
    const [a, b, c] = [x - s * sight[0], y - s * sight[1], z - s * sight[2]]
    const width = ball.radiusMetres + s * (shine.radiusMetres - ball.radiusMetres) + part
    if (a * a + b * b + c * c <= width * width) return true
  }
  return false
}
