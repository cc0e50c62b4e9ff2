import { Worker } from 'node:worker_threads'
import type { DrawingOrder, LockPictures } from './lockPictures.ts'

const THREAD = new URL('./drawingThread.mjs', import.meta.url)

/** More than that waiting is more than anybody will wait for. */
const MOST_WAITING = 6

/** Draws the pictures of locks in a thread beside the relay's own, one order at a time, so that live edits do not wait for them. */
export class DrawingRoom {
  readonly #patienceMs: number
  #last: Promise<unknown> = Promise.resolve()
  #waiting = 0
  #thread: Worker | null = null
  #isClosed = false

  constructor(patienceMs: number) {
    this.#patienceMs = patienceMs
  }

  /** @throws Error when the look could not be drawn, took too long, or too many orders wait. */
  async draw(order: DrawingOrder): Promise<LockPictures> {
    if (this.#waiting >= MOST_WAITING) throw new Error('too many pictures are waiting to be drawn')
    this.#waiting += 1
    const drawn = this.#last.then(() => this.#drawNow(order))
    this.#last = drawn.catch(() => undefined)
    try {
      return await drawn
    } finally {
      this.#waiting -= 1
    }
  }

  /** Ends what is being drawn; nothing is drawn any more. */
  async close(): Promise<void> {
    this.#isClosed = true
    await this.#thread?.terminate()
  }

  async #drawNow(order: DrawingOrder): Promise<LockPictures> {
    if (this.#isClosed) throw new Error('the relay is stopping')
    const thread = new Worker(THREAD, { workerData: order, execArgv: [], env: {} })
    this.#thread = thread
    const patience = setTimeout(() => void thread.terminate(), this.#patienceMs)
    try {
      return await new Promise<LockPictures>((resolve, reject) => {
        thread.once('message', resolve)
        thread.once('error', reject)
        thread.once('exit', (code) => reject(new Error(`the drawing ended with ${code} and no picture`)))
      })
    } finally {
      clearTimeout(patience)
      this.#thread = null
      await thread.terminate()
    }
  }
}
