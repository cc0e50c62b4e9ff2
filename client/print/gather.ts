import { driftWords, type ThingDrifts } from '../../shared-core/ask/whatMatters.ts'
import type { Units } from '../../shared-core/plan/entry/length.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { pictureHeight } from '../../shared-core/predict/pictureText.ts'
import { createPredictor } from '../../shared-core/predict/predict.ts'
import type { Prediction } from '../../shared-core/predict/prediction.ts'
import type { Trigger } from '../../shared-core/rig/triggers.ts'
import { askDesk } from '../ask/pageDesk.ts'
import { pictureDesk } from '../frame/picture/pictureDesk.ts'
import type { PrintedPicture } from './paper.ts'
import type { PrintedLook, PrintedState } from './printJob.ts'

/** A look in the state in which it is to be printed. */
export interface LookToPrint {
  readonly plan: Plan
  readonly lookId: string
  readonly state: PrintedState
}

/** Fine enough for a hand's width on paper. */
const PICTURE_WIDTH = 660
const JPEG_QUALITY = 0.92

const predictions = new WeakMap<Plan, Map<string, Prediction>>()
const predictor = createPredictor()

function predictionOf(plan: Plan, lookId: string): Prediction {
  const ofPlan = predictions.get(plan) ?? new Map<string, Prediction>()
  predictions.set(plan, ofPlan)
  const known = ofPlan.get(lookId) ?? predictor(plan, lookId)
  ofPlan.set(lookId, known)
  return known
}

/** Everything but what has to be waited for: enough to lay the pages out and count them. */
export function withoutPictures({ plan, lookId, state }: LookToPrint, triggers: Readonly<Record<string, Trigger>>): PrintedLook {
  const look = plan.looks[lookId]
  if (look === undefined) throw new RangeError(`The plan has no look called ${lookId}`)
  return { plan, lookId, look, state, prediction: predictionOf(plan, lookId), frame: null, singles: {}, triggers, matters: {} }
}

/** The same with its pictures, drawn in the worker, and what must not drift, in the units that the page is printed in. */
export async function withPictures(printed: PrintedLook, units: Units): Promise<PrintedLook> {
  const { plan, lookId, prediction } = printed
  const matters = mattersOf(plan, lookId, units)
  const frame = await pictureOf(printed, null)
  const singles: Record<string, PrintedPicture> = {}
  for (const { id, on } of prediction.lights) {
    const single = on ? await pictureOf(printed, id) : null
    if (single !== null) singles[id] = single
  }
  return { ...printed, frame, singles, matters: await matters }
}

function mattersOf(plan: Plan, lookId: string, units: Units): Promise<PrintedLook['matters']> {
  return new Promise((resolve) => {
    askDesk().order({ slot: `print ${lookId}`, kind: 'what-matters', plan, lookId }, {
      answered: (found) => resolve(Object.fromEntries(found.flatMap((thing) => linesOf(thing, units)))),
      // A print without tolerances is still a print.
      failed: () => resolve({}),
    })
  })
}

function linesOf({ thing, id, drifts }: ThingDrifts, units: Units): (readonly [string, readonly string[]])[] {
  return thing === 'light' && id !== null ? [[id, drifts.map((drift) => driftWords(drift, units))]] : []
}

async function pictureOf({ plan, lookId, look }: PrintedLook, soloLightId: string | null): Promise<PrintedPicture | null> {
  const desk = pictureDesk()
  if (desk === null) return null
  const size = { width: PICTURE_WIDTH, height: pictureHeight(look, PICTURE_WIDTH) }
  const rgba = await new Promise<Uint8ClampedArray<ArrayBuffer> | null>((resolve) => {
    desk.order({
      slot: `print ${soloLightId ?? 'frame'}`, kind: 'saved', plan, lookId, ...size, soloLightId, coarse: false, view: 'picture', space: 'srgb',
    }, (drawn) => resolve(drawn.rgba))
  })
  if (rgba === null) return null
  const canvas = document.createElement('canvas')
  Object.assign(canvas, size)
  canvas.getContext('2d')?.putImageData(new ImageData(rgba, size.width, size.height), 0, 0)
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/jpeg', JPEG_QUALITY))
  return blob === null ? null : { format: 'jpeg', bytes: new Uint8Array(await blob.arrayBuffer()) }
}
