import { add, scale, type Vector } from '../../../shared-core/arithmetic/vector.ts'
import { outlineOf } from '../../../shared-core/photometry/frontOutline.ts'
import { frontOf } from '../../../shared-core/photometry/modifier.ts'
import type { Modifier, ModifierKind } from '../../../shared-core/plan/schema/kit.ts'
import type { Light } from '../../../shared-core/plan/schema/look.ts'
import { vectorOf } from '../../../shared-core/set/emitter.ts'
import { aimedOrientation, type Orientation } from './orientation.ts'
import { ring, type Solid } from './solid.ts'

/** A mono head without its modifier; common practice, no source. */
const HEAD_LENGTH_METRES = 0.3
const HEAD_RADIUS_METRES = 0.065
/** The ring by which a modifier hangs on the head; common practice, no source. */
const MOUNT_RADIUS_METRES = 0.075

/** The front of the modifier in its plane, the same outline that shines in the core: all distances are taped to its centre. */
export function frontOutline(light: Light, modifier: Modifier): Vector[] {
  const { right, up } = aimedOrientation(light.place, light.aim, light.rollDegrees)
  const centre = vectorOf(light.place)
  return outlineOf(frontOf(modifier, light.grid)).map(([u, v]) => add(centre, add(scale(right, u), scale(up, v))))
}

/** Head, body and front, in true size, in the order to draw them. */
export function lightSolids(light: Light, modifier: Modifier): Solid[] {
  const orientation = aimedOrientation(light.place, light.aim, light.rollDegrees)
  const front = frontOutline(light, modifier)
  return [
    { part: 'head', points: headPoints(light, modifier, orientation) },
    { part: 'body', points: bodyPoints(light, modifier, orientation, front) },
    { part: 'front', points: front },
  ]
}

/** Where the head turns on its stand: behind a box, in the mouth of a reflective umbrella. */
export function pivotOf(light: Light, modifier: Modifier): Vector {
  const { axis } = aimedOrientation(light.place, light.aim)
  return add(vectorOf(light.place), scale(axis, -headStart(modifier) - HEAD_LENGTH_METRES / 3))
}

function headStart(modifier: Modifier): number {
  return looksIntoUmbrella(modifier.kind) ? -HEAD_LENGTH_METRES / 2 : modifier.depthMetres
}

function headPoints(light: Light, modifier: Modifier, { axis, right, up }: Orientation): Vector[] {
  const start = headStart(modifier)
  const near = add(vectorOf(light.place), scale(axis, -start))
  const far = add(near, scale(axis, -HEAD_LENGTH_METRES))
  return [...ring(near, right, up, HEAD_RADIUS_METRES, 12), ...ring(far, right, up, HEAD_RADIUS_METRES, 12)]
}

function bodyPoints(light: Light, modifier: Modifier, { axis, right, up }: Orientation, front: readonly Vector[]): Vector[] {
  const behind = (share: number) => add(vectorOf(light.place), scale(axis, -modifier.depthMetres * share))
  const radius = modifier.widthMetres / 2
  if (modifier.kind === 'umbrella-shoot-through') {
    return [0, 0.15, 0.4, 0.7, 1].flatMap((share) => ring(behind(share), right, up, radius * Math.sqrt(share), 20))
  }
  if (looksIntoUmbrella(modifier.kind)) {
    return [0, 0.3, 0.6, 0.85, 1].flatMap((share) => ring(behind(share), right, up, radius * Math.sqrt(1 - share), 20))
  }
  return [...front, ...ring(behind(1), right, up, Math.min(radius, MOUNT_RADIUS_METRES), 12)]
}

/** The head of these looks into the umbrella, its back to the subject. */
function looksIntoUmbrella(kind: ModifierKind): boolean {
  return kind === 'umbrella-white' || kind === 'umbrella-silver' || kind === 'umbrella-diffused'
}
