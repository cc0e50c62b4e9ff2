import type { AnswerTo, AskOrder, FromWorker, QuestionKind, ToWorker } from './askOrders.ts'

/** The part of a Worker the desk needs. */
export interface AskWorker {
  postMessage(message: ToWorker): void
  onmessage: ((event: MessageEvent<FromWorker>) => void) | null
  onerror: ((event: ErrorEvent) => void) | null
}

/** Whoever waits for an answer. After a newer order of the same slot, or `cancel`, an older one is told nothing more. */
export interface Waiting<Kind extends QuestionKind> {
  readonly answered: (answer: AnswerTo[Kind]) => void
  /** @param share 0-1 @param soFar what is found until now, of questions that are answered in parts */
  readonly progress?: (share: number, soFar: AnswerTo[Kind] | null) => void
  /** Why there is no answer, in words. */
  readonly failed: (words: string) => void
}

interface Open {
  readonly slot: string
  readonly waiting: Waiting<QuestionKind>
}

const NO_WORKER = 'This browser cannot look for answers beside the page. Everything else works as before.'

/** Hands questions to the worker, which starts with the first of them, and answers back to whoever asked last. */
export class AskDesk {
  private readonly open = new Map<number, Open>()
  /** By slot, what was asked while a hand was on the page and can wait: neither worker nor mail then take from the hand. */
  private readonly held = new Map<string, ToWorker>()
  private worker: AskWorker | null = null
  private isBroken = false
  private lastNumber = 0
  private isHandOnPage = false

  /** @param start may throw where workers cannot run */
  constructor(private readonly start: () => AskWorker) {}

  /** Asks; the newest order of a slot stops what older ones were at. */
  order<Kind extends QuestionKind>(order: AskOrder<Kind>, waiting: Waiting<Kind>): void {
    this.drop(order.slot)
    const number = ++this.lastNumber
    const take: ToWorker = { do: 'take', number, order: order as unknown as AskOrder }
    // An order's answer is of its own kind: the worker's number ties the two.
    this.open.set(number, { slot: order.slot, waiting: waiting as unknown as Waiting<QuestionKind> })
    if (this.isHandOnPage && !order.isUnderHand) this.held.set(order.slot, take)
    else this.send(take)
  }

  /** Nobody waits for this slot any more. */
  cancel(slot: string): void {
    if (this.drop(slot)) this.worker?.postMessage({ do: 'forget', slot })
  }

  /** Answers what it has by now. */
  stop(slot: string): void {
    this.worker?.postMessage({ do: 'stop', slot })
  }

  /** While a hand is on the page, only what is asked under it is worked on. */
  hand(isOnPage: boolean): void {
    if (isOnPage === this.isHandOnPage) return
    this.isHandOnPage = isOnPage
    this.worker?.postMessage({ do: 'hand', isOnPage })
    if (isOnPage) return
    const waited = [...this.held.values()]
    this.held.clear()
    for (const take of waited) this.send(take)
  }

  private send(take: ToWorker): void {
    const worker = this.started()
    if (worker === null) this.broken()
    else worker.postMessage(take)
  }

  private started(): AskWorker | null {
    if (this.worker !== null || this.isBroken) return this.isBroken ? null : this.worker
    try {
      this.worker = this.start()
    } catch {
      this.isBroken = true
      return null
    }
    this.worker.onmessage = ({ data }) => this.hear(data)
    this.worker.onerror = () => this.broken()
    if (this.isHandOnPage) this.worker.postMessage({ do: 'hand', isOnPage: true })
    return this.worker
  }

  private hear(message: FromWorker): void {
    const waiting = this.open.get(message.number)?.waiting
    if (!waiting) return
    if (message.is === 'progress') return waiting.progress?.(message.share, message.soFar)
    this.open.delete(message.number)
    if (message.is === 'answer') waiting.answered(message.answer)
    else waiting.failed(message.words)
  }

  private drop(slot: string): boolean {
    this.held.delete(slot)
    const numbers = [...this.open].filter(([, each]) => each.slot === slot).map(([number]) => number)
    return numbers.filter((number) => this.open.delete(number)).length > 0
  }

  private broken(): void {
    const left = [...this.open.values()]
    this.isBroken = true
    this.open.clear()
    this.held.clear()
    for (const { waiting } of left) waiting.failed(NO_WORKER)
  }
}
