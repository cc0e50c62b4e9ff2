import { useEffect, useState } from 'react'
import { askDesk } from '../ask/pageDesk.ts'
import { useBoardStore } from '../session/useBoard.ts'
import { startExplainer, type ToldEdits } from './explainer.ts'

/** What the edits since the page was opened did, latest first; worked out beside the page when no hand is on it. */
export function useToldEdits(): ToldEdits {
  const store = useBoardStore()
  const [told, setTold] = useState<ToldEdits>([])
  useEffect(() => {
    const explainer = startExplainer({
      onPlanChange: store.onPlanChange,
      lookId: () => store.getState().lookId,
      explain({ number, before, plan, lookId }, answered) {
        // A line that cannot be had is no trouble worth words: the edit itself is done.
        askDesk().order<'explain'>({ slot: `explain-${number}`, kind: 'explain', before, plan, lookId }, { answered, failed: () => undefined })
      },
      after(delayMs, run) {
        const timer = setTimeout(run, delayMs)
        return () => clearTimeout(timer)
      },
      nowMs: () => Date.now(),
    })
    const stopFollowing = explainer.told.subscribe(setTold)
    return () => {
      stopFollowing()
      explainer.stop()
    }
  }, [store])
  return told
}
