/// <reference lib="webworker" />
import { rebuild } from '../../shared-core/notebook/rebuild.ts'
import { createPredictor } from '../../shared-core/predict/predict.ts'
import type { FromRebuildWorker, ToRebuildWorker } from './rebuildOrders.ts'

const predictor = createPredictor()

addEventListener('message', ({ data: { plan, lookId, where } }: MessageEvent<ToRebuildWorker>) => {
  const tell = (message: FromRebuildWorker) => postMessage(message)
  try {
    tell({ is: 'rebuilt', rebuilt: rebuild(plan, lookId, where, predictor) })
  } catch (error) {
    tell({ is: 'trouble', words: error instanceof Error ? error.message : String(error) })
  }
})
