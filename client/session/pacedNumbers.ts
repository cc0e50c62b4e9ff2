import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import type { Prediction } from '../../shared-core/predict/prediction.ts'
import type { Clock } from './latestOnly.ts'

/** While a hand moves, numbers may take one part in so many of the time: drawing needs the rest. */
const PARTS_FOR_NUMBERS = 8
/** Nobody reads numbers that change faster. */
const READ_MS = 33

export interface PacedNumbersParts {
  readonly predict: (plan: Plan, lookId: string) => Prediction
  readonly clock: Clock
  /** What is shown when numbers that had to wait are worked out. */
  readonly now: () => { readonly shown: Plan, readonly lookId: string }
  /** Shown at once; its numbers follow. */
  readonly moved: (shown: Plan) => void
  readonly predicted: (shown: Plan, prediction: Prediction) => void
  readonly failed: (error: unknown) => void
}

export interface PacedNumbers {
  /** Shows a plan. What is in a hand moves at once; its numbers come as fast as they can be worked out beside it. */
  show(shown: Plan, lookId: string, how: { readonly isInHand: boolean }): void
}

export function createPacedNumbers({ predict, clock, now, moved, predicted, failed }: PacedNumbersParts): PacedNumbers {
  let last: { readonly shown: Plan, readonly lookId: string } | null = null
  let againMs = Number.NEGATIVE_INFINITY
  let isWaiting = false

  function workOut(shown: Plan, lookId: string): void {
    const startedMs = clock.nowMs()
    try {
      const prediction = predict(shown, lookId)
      againMs = startedMs + Math.max(READ_MS, PARTS_FOR_NUMBERS * (clock.nowMs() - startedMs))
      last = { shown, lookId }
      predicted(shown, prediction)
    } catch (error) {
      failed(error)
    }
  }

  return {
    show(shown, lookId, { isInHand }) {
      if (!isInHand || lookId !== last?.lookId || clock.nowMs() >= againMs) return workOut(shown, lookId)
      moved(shown)
      if (isWaiting) return
      isWaiting = true
      clock.after(againMs - clock.nowMs(), () => {
        isWaiting = false
        const latest = now()
        if (latest.shown !== last?.shown) workOut(latest.shown, latest.lookId)
      })
    },
  }
}
