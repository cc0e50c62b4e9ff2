import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { createPredictor } from '../../shared-core/predict/predict.ts'
import { shareStructure } from '../../shared-core/plan/reading/shareStructure.ts'
import { answering, type Answering } from './answering.ts'
import type { AskOrder, FromWorker, QuestionKind, ToWorker } from './askOrders.ts'

interface Work {
  readonly number: number
  readonly order: AskOrder
  readonly steps: Answering
  isStopped: boolean
}

/** What somebody waits for goes before what is merely good to know. */
const FIRST_TO_LAST: readonly QuestionKind[] = ['ask', 'explain', 'stand-ins', 'fewer-heads', 'match-colour', 'white-behind', 'spill-cures', 'what-matters']

/**
 * The questions being worked on, a step at a time, so that between two steps a newer order, a stop or a hand on the page
 * is heard. Several may be open: the most pressing goes on first.
 */
export class AskBench {
  private readonly open = new Map<string, Work>()
  private readonly predictor = createPredictor()
  private lastPlan: Plan | null = null
  private isHandOnPage = false

  constructor(private readonly tell: (message: FromWorker) => void) {}

  hear(message: ToWorker): void {
    switch (message.do) {
      case 'take': return this.take(message.number, message.order)
      case 'forget': return void this.open.delete(message.slot)
      case 'stop': {
        const work = this.open.get(message.slot)
        if (work) work.isStopped = true
        return
      }
      case 'hand': this.isHandOnPage = message.isOnPage
    }
  }

  /** Goes one step on with the most pressing question; false when there is none to work on now. */
  step(): boolean {
    const work = this.next()
    if (!work) return false
    const { number, order } = work
    try {
      const step = work.steps.next(work.isStopped)
      if (!step.done) {
        this.tell({ number, is: 'progress', ...step.value })
        return true
      }
      this.open.delete(order.slot)
      this.tell({ number, is: 'answer', answer: step.value })
    } catch (error) {
      this.open.delete(order.slot)
      this.tell({ number, is: 'trouble', words: error instanceof Error ? error.message : String(error) })
    }
    return true
  }

  private take(number: number, order: AskOrder): void {
    const plan = shareStructure(this.lastPlan, order.plan)
    this.lastPlan = plan
    this.open.set(order.slot, { number, order, steps: answering(order, plan, this.predictor), isStopped: false })
  }

  private next(): Work | null {
    const rank = ({ order }: Work): number => (order.isUnderHand ? -1 : FIRST_TO_LAST.indexOf(order.kind))
    const ready = [...this.open.values()].filter(({ order }) => !this.isHandOnPage || order.isUnderHand)
    return ready.reduce<Work | null>((first, work) => (first === null || rank(work) < rank(first) ? work : first), null)
  }
}
