import { scale, add, direction, subtract, type Vector } from '../../arithmetic/vector.ts'
import { changeLight } from '../../plan/edits/lights.ts'
import { vectorOf } from '../../set/emitter.ts'
import type { Snag } from '../snag.ts'
import { centimetresText, mendBy, type Check, type CheckView } from './check.ts'

/** A stand above this, and any boom, carries a sandbag (common practice, no source). The stand's manual comes first. */
const SANDBAG_FROM_METRES = 2
/** Half the spread of a stand's legs, and the least free way beside it (common practice, no source). */
const LEG_REACH_METRES = 0.5
const WALKWAY_METRES = 0.6
/** A head that hangs nearer than this to where a person stands, plan view, hangs over them. */
const OVER_PERSON_METRES = 0.6
/** Of a head behind its modifier. Common practice, no source. */
const HEAD_DEPTH_METRES = 0.3

export const sandbag: Check = ({ plan, look, measured: { lookId } }) =>
  Object.entries(look.lights).flatMap(([id, light]): Snag[] => {
    const isBoom = light.support === 'boom'
    if (light.sandbag || (!isBoom && light.place.zMetres <= SANDBAG_FROM_METRES)) return []
    return [{
      key: `sandbag:${id}`,
      rule: 'sandbag',
      severity: 'stop',
      message: `${light.letter} ${isBoom ? 'hangs from a boom' : `stands at ${light.place.zMetres.toFixed(2)} m`} and no sandbag is planned`,
      action: 'Sandbag on the leg under the load, longest leg towards it; the stand’s manual and the studio’s rules come first',
      value: light.place.zMetres,
      threshold: isBoom ? 0 : SANDBAG_FROM_METRES,
      unit: 'm up',
      about: [id],
      ...mendBy(`Plan a sandbag for ${light.letter}`, changeLight(plan, lookId, id, { sandbag: true })),
    }]
  })

export const safetyCable: Check = ({ plan, look, measured: { lookId } }) =>
  Object.entries(look.lights).flatMap(([id, light]): Snag[] => {
    const halfWidth = (plan.modifiers[light.modifierId]?.widthMetres ?? 0) / 2
    const aside = flatDistance(vectorOf(light.place), [look.subject.xMetres, look.subject.yMetres, 0]) - halfWidth
    if (light.support !== 'boom' || light.safetyCable || aside >= OVER_PERSON_METRES) return []
    return [{
      key: `safety-cable:${id}`,
      rule: 'safety-cable',
      severity: 'stop',
      message: `${light.letter} hangs from a boom over the subject and no safety cable is planned`,
      action: 'Safety cable on head and modifier, nobody underneath while it moves; rigging over people is for those trained to do it',
      value: aside,
      threshold: OVER_PERSON_METRES,
      unit: 'm aside',
      about: [id],
      ...mendBy(`Plan a safety cable for ${light.letter}`, changeLight(plan, lookId, id, { safetyCable: true })),
    }]
  })

/** The way from the camera to the subject stays free of stands. */
export const walkway: Check = (view) =>
  Object.entries(view.look.lights).flatMap(([id, light]): Snag[] => {
    if (light.support === 'boom') return []
    const { camera, subject } = view.look
    const from = vectorOf(camera.place)
    const aside = besideLine(footOf(view, id), from, [subject.xMetres, subject.yMetres, 0])
    if (aside === null) return []
    const free = aside - LEG_REACH_METRES
    if (free >= WALKWAY_METRES / 2) return []
    return [{
      key: `walkway:${id}`,
      rule: 'walkway',
      severity: 'stop',
      message: `${light.letter}’s stand leaves ${centimetresText(Math.max(0, free + WALKWAY_METRES / 2))} of the way between camera and subject`,
      action: `Move ${light.letter}’s stand ${centimetresText(WALKWAY_METRES / 2 - free)} aside, or hang it from a boom`,
      value: free + WALKWAY_METRES / 2,
      threshold: WALKWAY_METRES,
      unit: 'm free',
      about: [id],
    }]
  })

/** The stand is under the head, which sits behind the front. */
function footOf({ plan, look }: CheckView, lightId: string): Vector {
  const light = look.lights[lightId]!
  const depth = Math.max(plan.modifiers[light.modifierId]?.depthMetres ?? 0, HEAD_DEPTH_METRES)
  const beam = direction(subtract(vectorOf(light.aim), vectorOf(light.place)))
  return add(vectorOf(light.place), scale(beam, -depth))
}

function flatDistance(a: Vector, b: Vector): number {
  return Math.sqrt((a[0] - b[0]) * (a[0] - b[0]) + (a[1] - b[1]) * (a[1] - b[1]))
}

/** On the floor, from a point to the line between two others; null for a point beyond either of them. */
function besideLine(point: Vector, from: Vector, to: Vector): number | null {
  const [alongX, alongY] = [to[0] - from[0], to[1] - from[1]]
  const squared = alongX * alongX + alongY * alongY
  const share = squared === 0 ? -1 : ((point[0] - from[0]) * alongX + (point[1] - from[1]) * alongY) / squared
  return share < 0 || share > 1 ? null : flatDistance(point, [from[0] + share * alongX, from[1] + share * alongY, 0])
}
