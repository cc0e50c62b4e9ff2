import { createStore, type StoreApi } from 'zustand/vanilla'
import type { Explained } from '../ask/askOrders.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import type { PlanSeenChange } from '../session/planSeenChange.ts'

/** What one edit did, as it is read. */
export interface ToldEdit {
  readonly number: number
  readonly lookId: string
  /** Null for oneself. */
  readonly who: string | null
  /** "A 40 cm nearer: +0.9 on the camera-left cheek, softer" */
  readonly line: string
  readonly atMs: number
}

/** Latest first. */
export type ToldEdits = readonly ToldEdit[]

export interface ExplainerParts {
  /** Edits as they reach the plan; returns how to stop. */
  readonly onPlanChange: (listener: (change: PlanSeenChange) => void) => () => void
  readonly lookId: () => string
  /** Works a line out beside the page, and calls back once. */
  readonly explain: (question: { readonly number: number; readonly before: Plan; readonly plan: Plan; readonly lookId: string }, told: (found: Explained) => void) => void
  /** Calls back after so many milliseconds; returns how to call it off. */
  readonly after: (delayMs: number, run: () => void) => () => void
  readonly nowMs: () => number
}

/** So long without another edit of the same hand, and what it did is one thing: keys pressed in a row are. */
const REST_MS = 350
const MOST_KEPT = 40
const SOMEBODY = 'Somebody'

interface Pending {
  readonly before: Plan
  readonly after: Plan
  readonly lookId: string
  readonly who: string | null
}

/**
 * One line for each edit of the look that is looked at. Edits of one hand in quick succession leave one line together,
 * and what no light or lens knows of leaves none.
 */
export function startExplainer(parts: ExplainerParts): { readonly told: StoreApi<ToldEdits>; stop(): void } {
  const told = createStore<ToldEdits>()(() => [])
  let pending: Pending | null = null
  let callOff = (): void => undefined
  let lastNumber = 0

  function flush(): void {
    callOff()
    if (pending === null) return
    const { before, after, lookId, who } = pending
    pending = null
    if (before === after) return
    const number = ++lastNumber
    const atMs = parts.nowMs()
    parts.explain({ number, before, plan: after, lookId }, ({ line }) => {
      if (line === null) return
      const all = [{ number, lookId, who, line, atMs }, ...told.getState()]
      told.setState(all.sort((a, b) => b.number - a.number).slice(0, MOST_KEPT), true)
    })
  }

  function changed({ before, after, isOwn, names }: PlanSeenChange): void {
    const lookId = parts.lookId()
    const who = isOwn ? null : names.join(' and ') || SOMEBODY
    if (pending !== null && (pending.who !== who || pending.lookId !== lookId)) flush()
    callOff()
    pending = { before: pending?.before ?? before, after, lookId, who }
    callOff = parts.after(REST_MS, flush)
  }

  const stopListening = parts.onPlanChange(changed)
  return {
    told,
    stop() {
      stopListening()
      callOff()
      pending = null
    },
  }
}
