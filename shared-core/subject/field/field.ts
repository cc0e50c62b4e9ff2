import { blend, ellipsoid, ramp } from './primitives.ts'
import { headMass } from './skull.ts'
import { eyeball, withEyes } from './eye.ts'
import { withNose } from './nose.ts'
import { withMouth } from './mouth.ts'
import { ear } from './ear.ts'
import { hair } from './hair.ts'
import { neck } from './neck.ts'
import { torsoMass, withCollarbones } from './torso.ts'
import { cloth } from './cloth.ts'

/** Height of the eyes over the floor, in mm, for a stature of 1740. */
export const EYE_HEIGHT = 1620
const LOWEST = -600
/** The shoulders were modelled for a longer neck: they sit this much higher. */
export const SHOULDER_LIFT = 8
/** The head reaches down to here, the torso and the cloth up to here: elsewhere they need not be asked. */
const HEAD_BOTTOM = -150
const TORSO_TOP = -30
export const CLOTH_TOP = -118
/** Beyond this the head's round outline is distance enough. */
const NEAR_HEAD = 40

/** Both halves are modelled as one; the fold is rounded so that nothing creases on the middle line. */
export const folded = (x: number): number => Math.sqrt(x * x + 1.2)

const masses = (column: number, ax: number, y: number, z: number): number =>
  blend(column, torsoMass(ax, y, z - SHOULDER_LIFT), 30)

function bareBody(ax: number, y: number, z: number): number {
  const column = neck(ax, y, z)
  if (z > TORSO_TOP) return column
  return Math.max(withCollarbones(masses(column, ax, y, z), ax, y, z - SHOULDER_LIFT), LOWEST - z)
}

const outline = (x: number, y: number, z: number): number => ellipsoid(x, y, z, 0, 0, 0, 90, 125, 130)

function bareHead(ax: number, y: number, z: number): number {
  let head = headMass(ax, y, z)
  head = withNose(head, ax, y, z)
  head = withMouth(head, ax, y, z)
  head = withEyes(head, ax, y, z)
  return blend(head, ear(ax, y, z), 4)
}

function skinOver(body: number, ax: number, y: number, z: number): number {
  if (z < HEAD_BOTTOM) return body
  const far = outline(ax, y, z)
  if (far > NEAR_HEAD) return Math.min(body, far - 10)
  return blend(bareHead(ax, y, z), body, 12)
}

export function clothMm(x: number, y: number, z: number): number {
  const ax = folded(x)
  if (z > CLOTH_TOP) return 1e3
  const large = masses(neck(ax, y, z), ax, y, z)
  const lifted = z - SHOULDER_LIFT
  return Math.max(cloth(large, withCollarbones(large, ax, y, lifted), ax, y, lifted), LOWEST - z)
}

/** Skin, hair and cloth, without the eyeballs. */
export function surfaceMm(x: number, y: number, z: number): number {
  const ax = folded(x)
  const body = bareBody(ax, y, z)
  let d = skinOver(body, ax, y, z)
  if (z > -110 && outline(ax, y, z) < NEAR_HEAD) d = blend(d, hair(x, y, z), 2 + 14 * ramp(20, 60, y) * ramp(-15, -50, z))
  if (z < CLOTH_TOP) d = Math.min(d, clothMm(x, y, z))
  return d
}

export function subjectMm(x: number, y: number, z: number): number {
  return Math.min(surfaceMm(x, y, z), eyeball(Math.abs(x), y, z))
}
