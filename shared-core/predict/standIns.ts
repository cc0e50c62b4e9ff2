import type { Plan } from '../plan/schema/plan.ts'
import type { LookPicture, Picture, PictureRequest } from './lookPicture.ts'

/** One of the row of skins on which a look is judged before it is agreed. */
export interface StandIn {
  readonly words: string
  readonly itaDegrees: number
}

/**
 * Five skins across the range, by individual typology angle: one in the middle of each class from very light to brown and
 * one well into dark (classes of Chardon, Cretois and Hourseau 1991; Del Bino and Bernerd 2013).
 */
export const standIns: readonly StandIn[] = [
  { words: 'very fair', itaDegrees: 60 },
  { words: 'fair', itaDegrees: 46 },
  { words: 'tan', itaDegrees: 20 },
  { words: 'deep', itaDegrees: -12 },
  { words: 'very deep', itaDegrees: -48 },
]

/** The plan with one look's subject in another skin; everything else, sheen and undertone too, stays. */
export function planOnSkin(plan: Plan, lookId: string, { itaDegrees }: StandIn): Plan {
  const look = plan.looks[lookId]
  if (!look) return plan
  const subject = { ...look.subject, skinItaDegrees: itaDegrees }
  return { ...plan, looks: { ...plan.looks, [lookId]: { ...look, subject } } }
}

/** The look on each stand-in, drawn off the screen with one subject's surface: layers are shared, for skin is only colour. */
export function drawStandIns(
  picture: LookPicture, plan: Plan, lookId: string, request: PictureRequest,
): readonly { readonly standIn: StandIn; readonly picture: Picture }[] {
  return standIns.map((standIn) => {
    const drawn = picture.draw(planOnSkin(plan, lookId, standIn), lookId, request)
    return { standIn, picture: { ...drawn, linear: Float32Array.from(drawn.linear) } }
  })
}
