/// <reference lib="webworker" />
import subjectUrl from '../../../shared-core/subject/asset/subject.bin?url'
import type { Plan } from '../../../shared-core/plan/schema/plan.ts'
import { LookPicture } from '../../../shared-core/predict/lookPicture.ts'
import { decodeSubject } from '../../../shared-core/subject/asset/decode.ts'
import type { DrawnPicture, PictureKind, PictureOrder } from './pictureOrders.ts'
import { shareBranches } from './shareBranches.ts'

/** Draws the board's pictures beside the page, one order after another; which one is next is the page's to say. */
const subject = fetch(subjectUrl).then(async (answer) => {
  if (!answer.ok) throw new Error(`The subject could not be loaded (${answer.status}).`)
  return decodeSubject(new Uint8Array(await answer.arrayBuffer()))
})
/** Said by the first picture that needs it. */
subject.catch(() => undefined)

const pictures = new Map<PictureKind, LookPicture>()
let lastPlan: Plan | null = null

addEventListener('message', (event: MessageEvent<PictureOrder>) => {
  void draw(event.data).then((drawn) => postMessage(drawn, drawn.rgba === null ? [] : [drawn.rgba.buffer]))
})

async function draw(order: PictureOrder): Promise<DrawnPicture> {
  const { slot, kind, lookId, width, height, soloLightId, coarse } = order
  try {
    const asset = await subject
    const plan = shareBranches(lastPlan, order.plan)
    lastPlan = plan
    let picture = pictures.get(kind)
    if (!picture) pictures.set(kind, (picture = new LookPicture(asset)))
    const { rgba } = picture.draw(plan, lookId, { width, height, soloLightId, coarse })
    // A copy: the picture may use its own pixels again.
    return { slot, width, height, rgba: new Uint8ClampedArray(rgba), trouble: '' }
  } catch (error) {
    return { slot, width, height, rgba: null, trouble: error instanceof Error ? error.message : String(error) }
  }
}
