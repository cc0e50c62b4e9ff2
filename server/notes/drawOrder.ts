/** Runs in a thread of its own, for one order: draws and answers. */
import { parentPort, workerData } from 'node:worker_threads'
import { lockPictures, type DrawingOrder } from './lockPictures.ts'

parentPort?.postMessage(lockPictures(workerData as DrawingOrder))
