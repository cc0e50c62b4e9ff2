import { useEffect, useState } from 'react'
import type { Plan } from '../../../shared-core/plan/schema/plan.ts'
import { useBoard, useBoardStore } from '../../session/useBoard.ts'
import { askDesk } from '../pageDesk.ts'
import type { LooksFound } from '../askOrders.ts'
import { isSameLook } from '../lookAnswers.ts'
import type { LackChoice } from './lackChoices.ts'

const SLOT = 'without'

interface Asked {
  readonly choice: LackChoice
  readonly plan: Plan
  readonly lookId: string
  readonly found: LooksFound | null
  /** 0-1 while it is worked on; null once it rests. */
  readonly share: number | null
  readonly trouble: string
  /** Called off before all was tried. */
  readonly isCutShort: boolean
}

export interface LooksLeftQuestion {
  readonly asked: Asked | null
  /** The plan has changed since. */
  readonly isPast: boolean
  ask(choice: LackChoice): void
  /** The best of what was tried by now. */
  stop(): void
  forget(): void
}

/** One question of what is left when something is missing, from asking to answer. */
export function useLooksLeft(): LooksLeftQuestion {
  const store = useBoardStore()
  const plan = useBoard((board) => board.plan)
  const lookId = useBoard((board) => board.lookId)
  const [asked, setAsked] = useState<Asked | null>(null)
  useEffect(() => () => askDesk().cancel(SLOT), [])

  function ask(choice: LackChoice): void {
    const now = store.getState()
    const change = (more: Partial<Asked>) => setAsked((before) => before && { ...before, ...more })
    setAsked({ choice, plan: now.plan, lookId: now.lookId, found: null, share: 0, trouble: '', isCutShort: false })
    askDesk().order<'fewer-heads'>({ slot: SLOT, kind: 'fewer-heads', plan: now.plan, lookId: now.lookId, lack: choice.lack }, {
      progress: (share) => change({ share }),
      answered: (found) => change({ found, share: null }),
      failed: (trouble) => change({ trouble, share: null }),
    })
  }

  return {
    asked,
    isPast: asked !== null && !isSameLook(asked.plan, asked.lookId, plan, lookId),
    ask,
    stop() {
      setAsked((before) => before && { ...before, isCutShort: true })
      askDesk().stop(SLOT)
    },
    forget() {
      askDesk().cancel(SLOT)
      setAsked(null)
    },
  }
}
