import type { Plan } from '../../../shared-core/plan/schema/plan.ts'
import { packPlan } from './planParcel.ts'
import type { DrawnPicture, FoundPlaces, FoundShares, HandNear, PictureOrder, PlacesOrder, SentOrder, SharesOrder, WorkerAnswer, WorkerOrder } from './pictureOrders.ts'

/** The part of a Worker the desk needs. */
export interface PictureMaker {
  postMessage(message: WorkerOrder | HandNear): void
  onmessage: ((event: MessageEvent<WorkerAnswer>) => void) | null
  onerror: ((event: ErrorEvent) => void) | null
}

interface Task {
  readonly order: WorkerOrder
  /** Told the worker's answer, or null where there is none to come. */
  readonly answered: (answer: WorkerAnswer | null) => void
}

/** A hand on a light sees the big picture follow first; a pointer on it is answered before anything small. */
const FIRST_TO_LAST: readonly WorkerOrder['kind'][] = ['hand', 'places', 'frame', 'shares', 'saved', 'proof', 'eyes', 'single']

/** What only goes with the Frame, and is no use before it. */
const BESIDE_FRAME: ReadonlySet<WorkerOrder['kind']> = new Set<WorkerOrder['kind']>(['single', 'eyes'])
/** A hand is kept waiting for its picture no longer than this: the Floor follows it even where the picture cannot. */
const HAND_WAITS_MS = 50
/** Where so long no Frame comes, none is looked at. */
const FRAME_COMES_MS = 1_500

/**
 * Hands orders to the worker one at a time; under a hand one more lies ready there, so that the worker need not wait for
 * a busy page. Of each slot only the newest order waits. A worker that breaks is not asked again: every order is then
 * answered with no picture.
 */
export class PictureDesk {
  private readonly waiting = new Map<string, Task>()
  /** In the order in which the worker takes and answers them. */
  private atWork: Task[] = []
  private isBroken = false
  private waitingForRoom: (() => void)[] = []

  /** @param isFrameAwaited while nothing is on the page yet: what goes with the Frame then waits for its first picture */
  constructor(private readonly maker: PictureMaker, private isFrameAwaited = false) {
    maker.onmessage = ({ data }) => this.finished(data)
    maker.onerror = () => this.broken()
  }

  order(order: PictureOrder, onDrawn: (drawn: DrawnPicture) => void): void {
    const { slot, width, height } = order
    const noPicture: DrawnPicture = { slot, width, height, rgba: null, linear: null, letters: [], trouble: 'This browser cannot draw the picture.' }
    this.take({ order, answered: (answer) => onDrawn(answer !== null && 'rgba' in answer ? answer : noPicture) })
  }

  /** Who lights a place of the Frame that was last drawn; nobody where no picture is. */
  askShares(order: SharesOrder, onFound: (shares: FoundShares['shares']) => void): void {
    this.take({ order, answered: (answer) => onFound(answer !== null && 'shares' in answer ? answer.shares : []) })
  }

  /** What of the subject lies where in the Frame; null where no worker runs. */
  askPlaces(order: PlacesOrder, onFound: (found: FoundPlaces | null) => void): void {
    this.take({ order, answered: (answer) => onFound(answer !== null && 'under' in answer ? answer : null) })
  }

  /** Somebody is about to move a light: while nothing else is asked for, the worker makes itself ready for it. */
  handIsNear(): void {
    if (!this.isBroken) this.maker.postMessage({ kind: 'hand near' })
  }

  /**
   * Runs once a hand's next picture would not lie behind one that still waits: a move that is drawn on the Floor and then
   * left out of the Frame costs the time of one that is not. At once, or with the next answer, or when a hand waited long.
   */
  whenRoomForHand(run: () => void): void {
    if (![...this.waiting.values()].some(({ order }) => order.kind === 'hand')) return run()
    let isOver = false
    const once = () => {
      if (!isOver) run()
      isOver = true
    }
    this.waitingForRoom.push(once)
    setTimeout(once, HAND_WAITS_MS)
  }

  /** Nobody looks at a slot any more. */
  forget(slot: string): void {
    this.waiting.delete(slot)
  }

  private take(task: Task): void {
    if (this.isBroken) return task.answered(null)
    this.waiting.set(task.order.slot, task)
    this.next()
    if (this.isFrameAwaited && this.waiting.has(task.order.slot) && this.atWork.length === 0) setTimeout(() => this.awaitNoFrame(), FRAME_COMES_MS)
  }

  private next(): void {
    const rank = ({ order }: Task): number => FIRST_TO_LAST.indexOf(order.kind)
    const ready = [...this.waiting.values()].filter(({ order }) => !this.isFrameAwaited || !BESIDE_FRAME.has(order.kind))
    if (ready.length === 0) return
    const chosen = ready.reduce((first, task) => (rank(task) < rank(first) ? task : first))
    if (!this.hasRoomFor(chosen)) return
    this.waiting.delete(chosen.order.slot)
    this.atWork.push(chosen)
    this.maker.postMessage(chosen.order)
  }

  private finished(answer: WorkerAnswer): void {
    const done = this.atWork.shift()
    if (done?.order.kind === 'frame') this.isFrameAwaited = false
    this.next()
    if (done !== undefined && done.order.slot === answer.slot) done.answered(answer)
    this.tellOfRoom()
  }

  private hasRoomFor(task: Task): boolean {
    const [first, ...more] = this.atWork
    return first === undefined || (more.length === 0 && first.order.kind === 'hand' && task.order.kind === 'hand')
  }

  private tellOfRoom(): void {
    const told = this.waitingForRoom
    this.waitingForRoom = []
    for (const run of told) run()
  }

  private awaitNoFrame(): void {
    this.isFrameAwaited = false
    this.next()
  }

  private broken(): void {
    const left = [...this.atWork, ...this.waiting.values()]
    this.isBroken = true
    this.atWork = []
    this.waiting.clear()
    for (const task of left) task.answered(null)
    this.tellOfRoom()
  }
}

/** Of a plan only what is new goes to the worker: a whole one would be copied on both sides with every move of a hand. */
function sendingPlansInParts(worker: Worker): PictureMaker {
  let last: Plan | null = null
  const maker: PictureMaker = {
    onmessage: null,
    onerror: null,
    postMessage(order) {
      if (!('plan' in order)) return worker.postMessage(order)
      worker.postMessage({ ...order, plan: packPlan(last, order.plan) } satisfies SentOrder)
      last = order.plan
    },
  }
  worker.onmessage = (event: MessageEvent<WorkerAnswer>) => maker.onmessage?.(event)
  worker.onerror = (event) => maker.onerror?.(event)
  return maker
}

let shared: PictureDesk | null | undefined

/** The page's one desk; null where workers cannot run, and the plain form has to do. */
export function pictureDesk(): PictureDesk | null {
  if (shared === undefined) {
    try {
      shared = new PictureDesk(sendingPlansInParts(new Worker(new URL('./pictureWorker.ts', import.meta.url), { type: 'module' })), true)
    } catch {
      shared = null
    }
  }
  return shared
}
