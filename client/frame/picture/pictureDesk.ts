import type { DrawnPicture, PictureOrder } from './pictureOrders.ts'

type OnDrawn = (drawn: DrawnPicture) => void

/** The part of a Worker the desk needs. */
export interface PictureMaker {
  postMessage(order: PictureOrder): void
  onmessage: ((event: MessageEvent<DrawnPicture>) => void) | null
}

/**
 * Hands orders to the worker one at a time. Of each slot only the newest order waits; the Frame goes before the Singles,
 * so that a hand on a light sees the big picture follow first.
 */
export class PictureDesk {
  private readonly waiting = new Map<string, { readonly order: PictureOrder; readonly onDrawn: OnDrawn }>()
  private atWork: { readonly slot: string; readonly onDrawn: OnDrawn } | null = null

  constructor(private readonly maker: PictureMaker) {
    maker.onmessage = ({ data }) => this.finished(data)
  }

  order(order: PictureOrder, onDrawn: OnDrawn): void {
    this.waiting.set(order.slot, { order, onDrawn })
    this.next()
  }

  /** Nobody looks at a slot any more. */
  forget(slot: string): void {
    this.waiting.delete(slot)
  }

  private next(): void {
    if (this.atWork !== null) return
    const orders = [...this.waiting.values()]
    const chosen = orders.find(({ order }) => order.kind === 'frame' || order.kind === 'hand') ?? orders[0]
    if (chosen === undefined) return
    this.waiting.delete(chosen.order.slot)
    this.atWork = { slot: chosen.order.slot, onDrawn: chosen.onDrawn }
    this.maker.postMessage(chosen.order)
  }

  private finished(drawn: DrawnPicture): void {
    const done = this.atWork
    this.atWork = null
    this.next()
    if (done !== null && done.slot === drawn.slot) done.onDrawn(drawn)
  }
}

let shared: PictureDesk | null | undefined

/** The page's one desk; null where workers cannot run, and the plain form has to do. */
export function pictureDesk(): PictureDesk | null {
  if (shared === undefined) {
    try {
      shared = new PictureDesk(new Worker(new URL('./pictureWorker.ts', import.meta.url), { type: 'module' }))
    } catch {
      shared = null
    }
  }
  return shared
}
