/// <reference lib="webworker" />
import { compareLooks } from '../../../shared-core/compare/changes.ts'
import { effectsOf, type LookEffects } from '../../../shared-core/compare/effects.ts'
import { decodeSubject } from '../../../shared-core/subject/asset/decode.ts'
import subjectUrl from '../../../shared-core/subject/asset/subject.bin?url'
import type { FromCompareWorker, ToCompareWorker } from './compareOrders.ts'

interface Work {
  readonly number: number
  readonly steps: Generator<number, LookEffects>
}

const subject = fetch(subjectUrl).then(async (answer) => {
  if (!answer.ok) throw new Error(`The subject could not be loaded (${answer.status}).`)
  return decodeSubject(new Uint8Array(await answer.arrayBuffer()))
})
/** Said to the first who asks. */
subject.catch(() => undefined)

/** By slot, the newest that was asked; the oldest slot goes on first. Between two steps the mail is read. */
const open = new Map<string, Work>()
const again = new MessageChannel()
let isAtWork = false
const tell = (message: FromCompareWorker) => postMessage(message)

again.port1.onmessage = () => {
  const [next] = open
  isAtWork = next !== undefined
  if (next === undefined) return
  step(...next)
  again.port2.postMessage(null)
}

addEventListener('message', ({ data }: MessageEvent<ToCompareWorker>) => {
  open.delete(data.slot)
  if (data.do === 'compare') void take(data)
})

async function take({ slot, number, before, lookBefore, after, lookAfter }: Extract<ToCompareWorker, { do: 'compare' }>): Promise<void> {
  try {
    const asset = await subject
    open.set(slot, { number, steps: effectsOf(compareLooks(before, lookBefore, after, lookAfter), asset) })
  } catch (error) {
    return tell({ number, is: 'trouble', words: wordsOf(error) })
  }
  if (isAtWork) return
  isAtWork = true
  again.port2.postMessage(null)
}

function step(slot: string, { number, steps }: Work): void {
  try {
    const { done, value } = steps.next()
    if (!done) return tell({ number, is: 'progress', share: value })
    open.delete(slot)
    tell({ number, is: 'found', effects: value })
  } catch (error) {
    open.delete(slot)
    tell({ number, is: 'trouble', words: wordsOf(error) })
  }
}

function wordsOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error)
}
