/// <reference lib="webworker" />
import { LookPicture } from '../../shared-core/predict/lookPicture.ts'
import { decodeSubject } from '../../shared-core/subject/asset/decode.ts'
import subjectUrl from '../../shared-core/subject/asset/subject.bin?url'
import { align } from '../../shared-core/testFrame/align.ts'
import { judgeTestFrame } from '../../shared-core/testFrame/judge.ts'
import { landmarksOf } from '../../shared-core/testFrame/landmarks.ts'
import { buildTestFrameModel, type TestFrameModel } from '../../shared-core/testFrame/model.ts'
import type { Bytes } from '../../shared-core/testFrame/sample.ts'
import { seenAreas } from '../../shared-core/testFrame/seenAreas.ts'
import type { FromTestFrameWorker, ToTestFrameWorker } from './testFrameOrders.ts'

type LookOrder = Extract<ToTestFrameWorker, { do: 'look' }>

interface Ready {
  readonly order: LookOrder
  readonly picture: Bytes
  readonly model: TestFrameModel
}

const subject = fetch(subjectUrl).then(async (answer) => {
  if (!answer.ok) throw new Error(`The subject could not be loaded (${answer.status}).`)
  return decodeSubject(new Uint8Array(await answer.arrayBuffer()))
})
/** Said to the first who asks. */
subject.catch(() => undefined)

const tell = (message: FromTestFrameWorker) => postMessage(message)
let newest = 0
let ready: Promise<Ready | null> = Promise.resolve(null)

addEventListener('message', ({ data }: MessageEvent<ToTestFrameWorker>) => {
  if (data.do === 'look') {
    newest = data.number
    ready = prepare(data)
  } else void judge(data)
})

/** Null when another look was asked for meanwhile, or this one cannot be had. */
async function prepare(order: LookOrder): Promise<Ready | null> {
  const { number, plan, lookId, width, height } = order
  try {
    const { rgba } = new LookPicture(await subject).draw(plan, lookId, { width, height, soloLightId: null, coarse: false })
    const picture: Bytes = { width, height, rgba }
    tell({ number, is: 'predicted', picture })
    const steps = buildTestFrameModel(plan, lookId)
    for (;;) {
      // Between two steps the mail is read.
      await new Promise((resume) => setTimeout(resume))
      if (number !== newest) return null
      const { done, value } = steps.next()
      if (done) {
        tell({ number, is: 'ready' })
        return { order, picture, model: value }
      }
      tell({ number, is: 'progress', tried: value })
    }
  } catch (error) {
    tell({ number, is: 'trouble', words: wordsOf(error) })
    return null
  }
}

async function judge({ number, photo, points }: Extract<ToTestFrameWorker, { do: 'judge' }>): Promise<void> {
  const against = await ready
  if (against === null) return
  try {
    const { order: { plan, lookId }, picture, model } = against
    const laid = align(landmarksOf(plan.looks[lookId]!), picture.width / picture.height, points, photo.height)
    if ('refused' in laid) return tell({ number, is: 'trouble', words: laid.refused })
    tell({ number, is: 'judged', verdict: judgeTestFrame(model, seenAreas(model, photo, laid.alignment, picture)) })
  } catch (error) {
    tell({ number, is: 'trouble', words: wordsOf(error) })
  }
}

function wordsOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error)
}
