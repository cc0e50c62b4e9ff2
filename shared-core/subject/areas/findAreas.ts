import { type Vector, direction, dot } from '../../arithmetic/vector.ts'
import { cosine, radiansFromDegrees, sine } from '../../arithmetic/portable.ts'
import { EYE_HEIGHT, surfaceMm } from '../field/field.ts'
import { materialMm } from '../field/material.ts'
import { gradientAt } from '../mesh/ontoSurface.ts'
import type { SubjectArea, SubjectAreaId } from './subjectAreas.ts'

interface Wanted {
  readonly id: SubjectAreaId
  /** About where, in mm from the point between the eyes. */
  readonly near: Vector
  /** Degrees from straight ahead towards camera right, and upwards. */
  readonly turnedDegrees: number
  readonly upDegrees: number
  /** How far from `near` a better facing may be looked for, in mm. */
  readonly withinMm: number
}

const middle: readonly Wanted[] = [
  { id: 'nose', near: [0, -116, -36], turnedDegrees: 0, upDegrees: 8, withinMm: 4 },
  { id: 'lips', near: [0, -106, -76], turnedDegrees: 0, upDegrees: 0, withinMm: 3 },
  { id: 'neck', near: [0, -48, -150], turnedDegrees: 0, upDegrees: 0, withinMm: 8 },
  { id: 'hair', near: [0, -42, 116], turnedDegrees: 0, upDegrees: 60, withinMm: 10 },
  { id: 'breastbone', near: [0, -48, -226], turnedDegrees: 0, upDegrees: 12, withinMm: 10 },
]
const pairs = [
  { name: 'cheek', near: [48, -68, -32], turnedDegrees: 45, upDegrees: 5, withinMm: 9 },
  { name: 'jaw', near: [54, -34, -68], turnedDegrees: 82, upDegrees: 0, withinMm: 12 },
  { name: 'rear-jaw', near: [54, -4, -66], turnedDegrees: 125, upDegrees: 0, withinMm: 12 },
  { name: 'shoulder', near: [180, 2, -212], turnedDegrees: 55, upDegrees: 52, withinMm: 14 },
] as const

const wanted: readonly Wanted[] = [
  ...middle,
  ...pairs.flatMap(({ name, near, turnedDegrees, upDegrees, withinMm }) => ([-1, 1] as const).map((side) => ({
    id: `${name}-${side < 0 ? 'left' : 'right'}` as const,
    near: [side * near[0], near[1], near[2]] as const,
    turnedDegrees: side * turnedDegrees, upDegrees, withinMm,
  }))),
]

/** Looks near the wanted place for the surface that faces the wanted way best; null if a ray misses the body. */
function snap(want: Wanted): { at: Vector, facing: Vector } | null {
  const turned = radiansFromDegrees(want.turnedDegrees)
  const up = radiansFromDegrees(want.upDegrees)
  const aim: Vector = [sine(turned) * cosine(up), -cosine(turned) * cosine(up), sine(up)]
  const across = direction([-aim[1], aim[0], 0])
  const over: Vector = [-aim[2] * across[1], aim[2] * across[0], aim[0] * across[1] - aim[1] * across[0]]
  let best: { at: Vector, facing: Vector, merit: number } | null = null
  for (let j = -4; j <= 4; j++) for (let i = -4; i <= 4; i++) {
    if (want.near[0] === 0 && i !== 0) continue
    const [a, b] = [(i / 4) * want.withinMm, (j / 4) * want.withinMm]
    const start = [0, 1, 2].map((axis) => want.near[axis]! + aim[axis]! * 30 + across[axis]! * a + over[axis]! * b)
    let [x, y, z] = [start[0]!, start[1]!, start[2]!]
    let d = 1
    for (let round = 0; round < 90 && d > 0.005; round++) {
      d = surfaceMm(x, y, z)
      x -= aim[0] * d * 0.8
      y -= aim[1] * d * 0.8
      z -= aim[2] * d * 0.8
    }
    if (d > 0.02) continue
    const facing = facingAt(x, y, z)
    const merit = dot(facing, aim) - (0.02 * (i * i + j * j)) / 16
    if (!best || merit > best.merit) best = { at: [x, y, z], facing, merit }
  }
  return best
}

/** Outward over 3 mm. Differences of both signs: those of one lean where the surface is bent two ways. */
function facingAt(x: number, y: number, z: number): Vector {
  const [a, b] = [gradientAt(surfaceMm, x, y, z, 1.5), gradientAt(surfaceMm, x, y, z, -1.5)]
  return direction([a[0] + b[0], a[1] + b[1], a[2] + b[2]])
}

/**
 * The named areas put on the surface: run by the test that guards the table in subjectAreas.ts, and by whoever has
 * changed the form and needs the table anew. Throws if a place has left the body.
 */
export function findAreas(): SubjectArea[] {
  return wanted.map((want) => {
    const found = snap(want)
    if (!found) throw new Error(`There is no surface near the ${want.id}.`)
    const m = materialMm(...found.at)
    const material = m.cloth > 0.5 ? 'cloth' : m.hair > 0.5 ? 'hair' : m.lips > 0.5 ? 'lips' : 'skin'
    const round = (value: number, steps: number): number => Math.round(value * steps) / steps
    return {
      id: want.id,
      place: [round(found.at[0] / 1000, 1e5), round(found.at[1] / 1000, 1e5), round((found.at[2] + EYE_HEIGHT) / 1000, 1e5)],
      facing: [round(found.facing[0], 1e4), round(found.facing[1], 1e4), round(found.facing[2], 1e4)],
      material,
      onHead: !['neck', 'breastbone'].includes(want.id) && !want.id.startsWith('shoulder'),
    }
  })
}
