import type { Ellipsoid } from '../../shared-core/set/subjectForm.ts'

/**
 * Light from a front by sheer numbers: a dense grid of points, each asked alone, each shadow by the textbook ray test
 * (quadratic for an ellipsoid, plane and bounds for a plate). Shares no code with what it checks.
 */

type Three = readonly [number, number, number]

export interface PlainFront {
  readonly centre: Three
  readonly axis: Three
  readonly across: Three
  readonly up: Three
  /** Whether a point u, v metres from the centre lies on the front. */
  readonly holds: (u: number, v: number) => boolean
  readonly halfWidth: number
  readonly halfHeight: number
  /** Radiance at an angle from the axis, by its cosine. */
  readonly radiance: (cosine: number) => number
}

export interface PlainPlate {
  readonly centre: Three
  readonly normal: Three
  readonly across: Three
  readonly up: Three
  readonly halfWidth: number
  readonly halfHeight: number
  readonly round: boolean
}

const minus = (a: Three, b: Three): Three => [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
const inner = (a: Three, b: Three): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]

function crossesEllipsoid(from: Three, to: Three, part: Ellipsoid): boolean {
  const local = (v: Three): Three => [0, 1, 2].map((i) =>
    inner(v, part.axes[i as 0 | 1 | 2]) / part.semiAxesMetres[i as 0 | 1 | 2]) as unknown as Three
  const o = local(minus(from, part.centre))
  const d = local(minus(to, from))
  const a = inner(d, d)
  const b = inner(o, d)
  const c = inner(o, o) - 1
  const discriminant = b * b - a * c
  if (discriminant <= 0) return false
  const root = Math.sqrt(discriminant)
  const near = (-b - root) / a
  const far = (-b + root) / a
  return near < 1 && far > 0
}

function crossesPlate(from: Three, to: Three, plate: PlainPlate): boolean {
  const before = inner(minus(from, plate.centre), plate.normal)
  const after = inner(minus(to, plate.centre), plate.normal)
  if (before * after >= 0) return false
  const share = before / (before - after)
  const hit: Three = [0, 1, 2].map((i) => from[i]! + share * (to[i]! - from[i]!) - plate.centre[i]!) as unknown as Three
  const u = Math.abs(inner(hit, plate.across))
  const v = Math.abs(inner(hit, plate.up))
  return plate.round ? u * u + v * v <= plate.halfWidth ** 2 : u <= plate.halfWidth && v <= plate.halfHeight
}

export interface PlainReceipt {
  readonly flat: number
  readonly domeOut: number
}

/** Exposure on a flat and a domed receptor, by `side` x `side` points. */
export function bruteForce(
  front: PlainFront, place: Three, facing: Three, parts: readonly Ellipsoid[], plates: readonly PlainPlate[], side: number,
): PlainReceipt {
  let flat = 0
  let domeOut = 0
  const cell = (4 * front.halfWidth * front.halfHeight) / (side * side)
  for (let i = 0; i < side; i++) {
    for (let j = 0; j < side; j++) {
      const u = front.halfWidth * ((2 * i + 1) / side - 1)
      const v = front.halfHeight * ((2 * j + 1) / side - 1)
      if (!front.holds(u, v)) continue
      const point = [0, 1, 2].map((k) => front.centre[k]! + u * front.across[k]! + v * front.up[k]!) as unknown as Three
      const ray = minus(point, place)
      const square = inner(ray, ray)
      const long = Math.sqrt(square)
      const cosFront = -inner(ray, front.axis) / long
      if (cosFront <= 0) continue
      if (parts.some((part) => crossesEllipsoid(place, point, part))) continue
      if (plates.some((plate) => crossesPlate(place, point, plate))) continue
      const light = (front.radiance(cosFront) * cosFront * cell) / square
      const cosine = inner(ray, facing) / long
      flat += light * Math.max(0, cosine)
      domeOut += (light * (1 + cosine)) / 2
    }
  }
  return { flat, domeOut }
}
