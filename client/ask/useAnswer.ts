import { useCallback, useEffect } from 'react'
import { useStore } from 'zustand'
import { createStore } from 'zustand/vanilla'
import type { Want } from '../../shared-core/ask/want.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { useBoard, useBoardStore } from '../session/useBoard.ts'
import type { AnswerFound } from './askOrders.ts'
import { isSameLook } from './lookAnswers.ts'
import { askDesk } from './pageDesk.ts'

const SLOT = 'ask-panel'

/** The question of the panel: what was asked, how far it is, and what was found. */
export interface Asked {
  /** The plan it was asked of: an answer stands for that look, and for no other. */
  readonly plan: Plan
  readonly lookId: string
  readonly wants: readonly Want[]
  /** 0-1 while it is worked on; null once it rests. */
  readonly share: number | null
  readonly found: AnswerFound | null
  /** Why there is no answer, in words. */
  readonly trouble: string
}

export interface AnswerHere {
  /** Null while nothing is wanted. */
  readonly asked: Asked | null
  /** The look has changed since: what was found may no longer do what it says. */
  readonly isPast: boolean
  again(): void
  /** Answers with what was found by now. */
  stop(): void
}

/** The panel's one question; outside React, since answers come in from the worker. */
const question = createStore<{ readonly asked: Asked | null }>()(() => ({ asked: null }))

function ask(plan: Plan, lookId: string, wants: readonly Want[]): void {
  if (wants.length === 0) return forget()
  const set = (news: Partial<Asked>) => question.setState({ asked: { plan, lookId, wants, share: null, found: null, trouble: '', ...news } })
  set({ share: 0 })
  askDesk().order<'ask'>({ slot: SLOT, kind: 'ask', plan, lookId, wants, isPowersOnly: false }, {
    progress: (share) => set({ share }),
    answered: (found) => set({ found }),
    failed: (trouble) => set({ trouble }),
  })
}

function forget(): void {
  askDesk().cancel(SLOT)
  question.setState({ asked: null })
}

/** Asks for what is wanted, whenever that changes; not by itself when the look does, since somebody may be reading. */
export function useAnswer(wants: readonly Want[]): AnswerHere {
  const store = useBoardStore()
  const plan = useBoard((board) => board.plan)
  const lookId = useBoard((board) => board.lookId)
  const asked = useStore(question, (state) => state.asked)

  const again = useCallback(() => ask(store.getState().plan, lookId, wants), [store, lookId, wants])
  useEffect(again, [again])
  useEffect(() => forget, [])

  const own = asked?.wants === wants && asked.lookId === lookId ? asked : null
  return {
    asked: own,
    isPast: own !== null && !isSameLook(own.plan, own.lookId, plan, lookId),
    again,
    stop: () => askDesk().stop(SLOT),
  }
}
