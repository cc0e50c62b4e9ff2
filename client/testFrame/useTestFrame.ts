import { useCallback, useEffect, useRef, useState } from 'react'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import type { TestFrameVerdict } from '../../shared-core/testFrame/judge.ts'
import type { Bytes } from '../../shared-core/testFrame/sample.ts'
import type { FromTestFrameWorker, ThreePoints, ToTestFrameWorker } from './testFrameOrders.ts'

export interface TestFrameState {
  /** The look's whole Frame; null until it is drawn. */
  readonly picture: Bytes | null
  /** How many slips have been tried; null once all are. */
  readonly tried: number | null
  readonly verdict: TestFrameVerdict | null
  readonly isJudging: boolean
  /** Why there is no verdict, in words. */
  readonly trouble: string
}

const FRAME_HEIGHT = 600
const BEGUN: TestFrameState = { picture: null, tried: 0, verdict: null, isJudging: false, trouble: '' }

/** A look's prediction and every slip of it, worked out beside the page, and photographs held against them. */
export function useTestFrame(plan: Plan, lookId: string): TestFrameState & {
  readonly judge: (photo: Bytes, points: ThreePoints) => void
  readonly forget: () => void
} {
  const [state, setState] = useState(BEGUN)
  const worker = useRef<Worker | null>(null)
  const lastNumber = useRef(0)

  useEffect(() => {
    const camera = plan.looks[lookId]?.camera
    if (camera === undefined) return
    const desk = new Worker(new URL('./testFrameWorker.ts', import.meta.url), { type: 'module' })
    worker.current = desk
    desk.onmessage = ({ data }: MessageEvent<FromTestFrameWorker>) => setState((last) => {
      switch (data.is) {
        case 'predicted': return { ...last, picture: data.picture }
        case 'progress': return { ...last, tried: data.tried }
        case 'ready': return { ...last, tried: null }
        case 'judged': return data.number === lastNumber.current ? { ...last, verdict: data.verdict, isJudging: false, trouble: '' } : last
        case 'trouble': return { ...last, verdict: null, isJudging: false, trouble: data.words }
      }
    })
    desk.onerror = () => setState((last) => ({ ...last, isJudging: false, trouble: 'This browser cannot work it out beside the page.' }))
    const width = Math.round((FRAME_HEIGHT * camera.sensorWidthMillimetres) / camera.sensorHeightMillimetres)
    desk.postMessage({ do: 'look', number: ++lastNumber.current, plan, lookId, width, height: FRAME_HEIGHT } satisfies ToTestFrameWorker)
    return () => {
      desk.terminate()
      worker.current = null
      setState(BEGUN)
    }
  }, [plan, lookId])

  const judge = useCallback((photo: Bytes, points: ThreePoints) => {
    setState((last) => ({ ...last, isJudging: true, trouble: '' }))
    worker.current?.postMessage({ do: 'judge', number: ++lastNumber.current, photo, points } satisfies ToTestFrameWorker)
  }, [])
  const forget = useCallback(() => setState((last) => ({ ...last, verdict: null, isJudging: false, trouble: '' })), [])
  return { ...state, judge, forget }
}
