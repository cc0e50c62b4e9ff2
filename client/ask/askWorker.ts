/// <reference lib="webworker" />
import { AskBench } from './askBench.ts'
import type { ToWorker } from './askOrders.ts'

/** Answers the page's questions beside it. Between two steps it goes back to its mail. */
const bench = new AskBench((message) => postMessage(message))
/** A message to oneself comes after those that already wait, and without a timer's delay. */
const again = new MessageChannel()
let isAtWork = false

again.port1.onmessage = () => {
  isAtWork = bench.step()
  if (isAtWork) again.port2.postMessage(null)
}

addEventListener('message', ({ data }: MessageEvent<ToWorker>) => {
  bench.hear(data)
  if (isAtWork) return
  isAtWork = true
  again.port2.postMessage(null)
})
