/// <reference lib="webworker" />
import subjectUrl from '../../../shared-core/subject/asset/subject.bin?url'
import { drawClipping, drawStops } from '../../../shared-core/picture/views.ts'
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
  void draw(event.data).then((drawn) => postMessage(drawn, [drawn.rgba, drawn.linear].flatMap((pixels) => pixels?.buffer ?? [])))
})

async function draw(order: PictureOrder): Promise<DrawnPicture> {
  const { slot, kind, lookId, width, height, soloLightId, coarse, view, space } = order
  try {
    const asset = await subject
    const plan = shareBranches(lastPlan, order.plan)
    lastPlan = plan
    let picture = pictures.get(kind)
    if (!picture) pictures.set(kind, (picture = new LookPicture(asset)))
    const { rgba, linear } = picture.draw(plan, lookId, { width, height, soloLightId, coarse, space })
    // Copies: the picture may use its own pixels again.
    const pixels = new Uint8ClampedArray(rgba)
    if (view === 'stops') drawStops(linear, width, height, pixels)
    if (view === 'clipping') drawClipping(linear, width, height, pixels)
    return { slot, width, height, rgba: pixels, linear: kind === 'frame' || kind === 'hand' ? new Float32Array(linear) : null, trouble: '' }
  } catch (error) {
    return { slot, width, height, rgba: null, linear: null, trouble: error instanceof Error ? error.message : String(error) }
  }
}
