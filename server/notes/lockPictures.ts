import { canonicalJson } from '../../shared-core/notes/canonical.ts'
import type { Look } from '../../shared-core/plan/schema/look.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { predict } from '../../shared-core/predict/predict.ts'
import { drawStandIns } from '../../shared-core/predict/standIns.ts'
import { newLookPicture, pngOf } from '../picture/framePng.ts'

/** Tall enough to judge a face on a laptop; stand-ins stand in a row, so half of it. */
const HEIGHT = 720
const STAND_IN_HEIGHT = 360
/** A very wide crop is drawn no wider than that. */
const WIDEST = 1_600

export interface DrawingOrder {
  readonly plan: Plan
  readonly lookId: string
  readonly standIns: boolean
}

/** Everything of a lock that takes time to make. */
export interface LockPictures {
  readonly picture: Uint8Array
  readonly standIns: readonly { readonly words: string; readonly itaDegrees: number; readonly picture: Uint8Array }[]
  /** Canonical JSON. */
  readonly prediction: string
}

/** Draws and predicts a look as the board does. Takes seconds: to be run beside the relay's own thread. */
export function lockPictures({ plan, lookId, standIns }: DrawingOrder): LockPictures {
  const look = plan.looks[lookId]!
  const lookPicture = newLookPicture()
  const order = { soloLightId: null, coarse: false }
  const picture = pngOf(lookPicture.draw(plan, lookId, { ...sizeOf(look, HEIGHT), ...order }), plan, lookId)
  const drawn = standIns ? drawStandIns(lookPicture, plan, lookId, { ...sizeOf(look, STAND_IN_HEIGHT), ...order }) : []
  return {
    picture,
    standIns: drawn.map(({ standIn, picture: one }) => ({ ...standIn, picture: pngOf(one, plan, lookId) })),
    // Through JSON first: what a prediction leaves undefined is not said at all.
    prediction: canonicalJson(JSON.parse(JSON.stringify(predict(plan, lookId)))),
  }
}

function sizeOf({ camera }: Look, tallest: number): { readonly width: number; readonly height: number } {
  const ratio = camera.sensorWidthMillimetres / camera.sensorHeightMillimetres
  const width = Math.max(1, Math.min(WIDEST, Math.round(tallest * ratio)))
  return { width, height: Math.max(1, Math.min(tallest, Math.round(width / ratio))) }
}
