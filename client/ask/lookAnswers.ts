import { createStore, type StoreApi } from 'zustand/vanilla'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { askDesk } from './pageDesk.ts'
import type { AnswerTo, AskOrder } from './askOrders.ts'

/** Questions about a look that need nothing but the look: everybody on the page shares their answers. */
export type LookQuestion = 'white-behind' | 'spill-cures' | 'what-matters'

/** An answer, and the look it is about. */
export interface LookAnswer<Kind extends LookQuestion> {
  readonly plan: Plan | null
  readonly lookId: string
  readonly answer: AnswerTo[Kind] | null
  /** 0-1 while it is worked on; null once it rests. */
  readonly share: number | null
  /** Why there is none, in words. */
  readonly trouble: string
}

/** How long a plan rests before the question is asked of it: what is looked at now, soon; what can wait, when all is idle. */
const REST_MS: Readonly<Record<LookQuestion, number>> = { 'white-behind': 120, 'spill-cures': 120, 'what-matters': 700 }

const stores = new Map<LookQuestion, StoreApi<LookAnswer<LookQuestion>>>()
const timers = new Map<LookQuestion, ReturnType<typeof setTimeout>>()

export function lookAnswers<Kind extends LookQuestion>(kind: Kind): StoreApi<LookAnswer<Kind>> {
  let store = stores.get(kind)
  if (!store) stores.set(kind, (store = createStore<LookAnswer<LookQuestion>>()(() => ({ plan: null, lookId: '', answer: null, share: null, trouble: '' }))))
  return store as unknown as StoreApi<LookAnswer<Kind>>
}

/** Asks once the plan has rested, unless it is answered already, or is being answered. An older answer stays until then. */
export function askOfLook(kind: LookQuestion, plan: Plan, lookId: string): void {
  const store = lookAnswers(kind)
  const now = store.getState()
  clearTimeout(timers.get(kind))
  if (now.plan !== null && isSameLook(now.plan, now.lookId, plan, lookId)) return
  if (now.lookId !== lookId) store.setState({ plan: null, lookId, answer: null, share: null, trouble: '' })
  timers.set(kind, setTimeout(() => {
    store.setState({ plan, lookId, share: 0, trouble: '' })
    const order = { slot: kind, kind, plan, lookId } as AskOrder<typeof kind>
    askDesk().order(order, {
      progress: (share, soFar) => store.setState(soFar === null ? { share } : { share, answer: soFar }),
      answered: (answer) => store.setState({ answer, share: null }),
      failed: (trouble) => store.setState({ trouble, share: null }),
    })
  }, REST_MS[kind]))
}

/** Whether nothing changed that a prediction of the look is made from. Unchanged branches of a plan are shared. */
export function isSameLook(plan: Plan, lookId: string, other: Plan, otherLookId: string): boolean {
  return lookId === otherLookId && plan.looks[lookId] === other.looks[lookId] && plan.room === other.room
    && plan.heads === other.heads && plan.modifiers === other.modifiers && plan.gels === other.gels
}
