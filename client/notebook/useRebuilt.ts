import { useEffect, useState } from 'react'
import type { RebuildIn, Rebuilt } from '../../shared-core/notebook/rebuild.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import type { FromRebuildWorker, ToRebuildWorker } from './rebuildOrders.ts'

interface Found {
  readonly rebuilt: Rebuilt | null
  readonly isAtWork: boolean
  readonly trouble: string
}

/** A look rebuilt beside the page; anew when it is asked otherwise. What is asked must be the same objects while it is the same. */
export function useRebuilt(plan: Plan, lookId: string, where: RebuildIn): Found {
  const [found, setFound] = useState<{ readonly where: RebuildIn; readonly answer: FromRebuildWorker } | null>(null)
  useEffect(() => {
    const worker = startWorker()
    const tell = (answer: FromRebuildWorker) => setFound({ where, answer })
    if (worker === null) {
      queueMicrotask(() => tell({ is: 'trouble', words: 'This browser cannot work it out beside the page.' }))
      return
    }
    worker.onmessage = ({ data }: MessageEvent<FromRebuildWorker>) => tell(data)
    worker.onerror = () => tell({ is: 'trouble', words: 'It could not be worked out.' })
    worker.postMessage({ plan, lookId, where } satisfies ToRebuildWorker)
    return () => worker.terminate()
  }, [plan, lookId, where])
  if (found === null) return { rebuilt: null, isAtWork: true, trouble: '' }
  const { answer } = found
  return {
    rebuilt: answer.is === 'rebuilt' ? answer.rebuilt : null,
    isAtWork: found.where !== where,
    trouble: answer.is === 'trouble' ? answer.words : '',
  }
}

function startWorker(): Worker | null {
  try {
    return new Worker(new URL('./rebuildWorker.ts', import.meta.url), { type: 'module' })
  } catch {
    return null
  }
}
