/// <reference lib="webworker" />
import subjectUrl from '../../../shared-core/subject/asset/subject.bin?url'
import { ROOM_TINT } from '../../../shared-core/picture/leaderView.ts'
import { spotWeights } from '../../../shared-core/picture/spotReading.ts'
import type { Plan } from '../../../shared-core/plan/schema/plan.ts'
import { shareStructure } from '../../../shared-core/plan/reading/shareStructure.ts'
import { LookPicture } from '../../../shared-core/predict/lookPicture.ts'
import { SubjectSight } from '../../../shared-core/predict/subjectSight.ts'
import { WhoLights } from '../../../shared-core/predict/whoLights.ts'
import { decodeSubject } from '../../../shared-core/subject/asset/decode.ts'
import type { DrawnPicture, FoundPlaces, FoundShares, HandNear, PictureKind, PictureOrder, PlacesOrder, SentOrder, SharesOrder } from './pictureOrders.ts'
import { Rehearsal } from './rehearsal.ts'
import { unpackPlan } from './planParcel.ts'
import { drawView, ROOM_LETTERS, type LetteredPlane } from './viewLetters.ts'

const rehearsal = new Rehearsal()

/** Draws the board's pictures beside the page, one order after another; which one is next is the page's to say. */
const subject = fetch(subjectUrl).then(async (answer) => {
  if (!answer.ok) throw new Error(`The subject could not be loaded (${answer.status}).`)
  return decodeSubject(new Uint8Array(await answer.arrayBuffer()))
})
/** Said by the first picture that needs it. */
subject.then((asset) => rehearsal.begin(asset), () => undefined)

const pictures = new Map<PictureKind, LookPicture>()
const whoLights = new WhoLights()
let sight: SubjectSight | null = null
/** As it came with the last order. */
let planSent: Plan | null = null
/** The same, with the objects that the pictures were made from. */
let lastPlan: Plan | null = null
/** The Frame that is on the page, and the plan it was drawn from. */
let onThePage: { readonly order: PictureOrder; readonly plan: Plan } | null = null

addEventListener('message', ({ data: sent }: MessageEvent<SentOrder | HandNear>) => {
  if (sent.kind === 'hand near') return rehearsal.handIsNear()
  rehearsal.giveWay()
  if (sent.kind === 'shares') return postMessage(sharesAt(sent))
  const plan = planSent = unpackPlan(planSent, sent.plan)
  if (sent.kind === 'places') void placesOf({ ...sent, plan }).then((found) => postMessage(found))
  else void draw({ ...sent, plan }).then((drawn) => postMessage(drawn, [drawn.rgba, drawn.linear].flatMap((pixels) => pixels?.buffer ?? [])))
})

async function draw(order: PictureOrder): Promise<DrawnPicture> {
  const { slot, kind, lookId, width, height, view } = order
  try {
    const asset = await subject
    const plan = shareStructure(lastPlan, order.plan)
    lastPlan = plan
    // A saved picture is large, and seldom asked for: its layers go with the next picture of the page.
    if (kind !== 'saved') pictures.delete('saved')
    let picture = pictures.get(kind)
    if (!picture) pictures.set(kind, (picture = new LookPicture(asset)))
    const crop = order.eyes && picture.eyesCrop(plan, lookId, order.eyes.width, order.eyes.height)
    if (crop === null) throw new Error('The camera sees no eyes.')
    const { rgba, linear } = picture.draw(plan, lookId, crop === undefined ? order : { ...order, crop })
    const isFrame = kind === 'frame' || kind === 'hand'
    if (isFrame) onThePage = { order, plan }
    // What lies side by side is looked at, not worked on.
    if (kind !== 'proof') rehearsal.takeUp(plan, lookId)
    const spot = spotWeights(plan.looks[lookId]!.camera)
    const letters = drawView(view, linear, width, height, spot, rgba, () => sourcesOf(picture, plan, order))
    return { slot, width, height, rgba,
      // A copy: the next picture writes over it.
      linear: order.isRead === true ? new Float32Array(linear) : null, letters, trouble: '' }
  } catch (error) {
    return { slot, width, height, rgba: null, linear: null, letters: [], trouble: error instanceof Error ? error.message : String(error) }
  }
}

/** Each light's part of the whole Frame, with its letter and its tint. */
function sourcesOf(picture: LookPicture, plan: Plan, order: PictureOrder): readonly LetteredPlane[] {
  const parts = picture.parts(plan, order.lookId, order)
  return whoLights.everywhere(parts).map(({ lightId, brightness }) => ({
    brightness, letter: lightId === null ? ROOM_LETTERS : (parts.look.lights[lightId]?.letter ?? ''),
    tint: (lightId === null ? undefined : order.tints?.[lightId]) ?? ROOM_TINT,
  }))
}

function sharesAt({ slot, frameX, frameY }: SharesOrder): FoundShares {
  const picture = onThePage && pictures.get(onThePage.order.kind)
  if (!picture || !onThePage) return { slot, shares: [] }
  const { order, plan } = onThePage
  const x = Math.floor(frameX * order.width)
  const y = Math.floor(frameY * order.height)
  if (x < 0 || y < 0 || x >= order.width || y >= order.height) return { slot, shares: [] }
  return { slot, shares: whoLights.at(picture.parts(plan, order.lookId, order), x, y) }
}

async function placesOf({ slot, plan: sent, lookId, under, places }: PlacesOrder): Promise<FoundPlaces> {
  try {
    sight ??= new SubjectSight(await subject)
    const seen = sight
    const plan = shareStructure(lastPlan, sent)
    return {
      slot,
      under: under.map(([frameX, frameY]) => seen.placeUnder(plan, lookId, frameX, frameY)),
      seen: places.map((place) => seen.isSeen(plan, lookId, place)),
    }
  } catch {
    // No surface: everything lies on the picture, and nothing hides.
    return { slot, under: under.map(() => null), seen: places.map(() => true) }
  }
}
