import { useEffect, useId, useState } from 'react'
import type { LookEffects } from '../../../shared-core/compare/effects.ts'
import type { ComparedLooks, FromCompareWorker, ToCompareWorker } from './compareOrders.ts'

export interface FoundEffects {
  readonly effects: LookEffects | null
  /** 0-1 while it is worked out; null once it rests. */
  readonly share: number | null
  /** Why there are none, in words. */
  readonly trouble: string
}

const NOT_ASKED: FoundEffects = { effects: null, share: null, trouble: '' }
const NO_WORKER = 'This browser cannot compare looks beside the page.'

/**
 * What every change between two looks does to the picture, worked out beside the page; older answers stay until the new
 * one is there. Null asks nothing. Plans are told apart by identity: unchanged ones must be the same objects.
 */
export function useLookEffects(asked: ComparedLooks | null): FoundEffects {
  const slot = useId()
  const [found, setFound] = useState(NOT_ASKED)
  const { before, lookBefore, after, lookAfter } = asked ?? {}
  useEffect(() => {
    if (before === undefined || after === undefined || lookBefore === undefined || lookAfter === undefined) return
    return compare(slot, { before, lookBefore, after, lookAfter }, (message) => setFound((last) => {
      switch (message.is) {
        case 'progress': return { ...last, share: message.share, trouble: '' }
        case 'found': return { effects: message.effects, share: null, trouble: '' }
        case 'trouble': return { effects: null, share: null, trouble: message.words }
      }
    }))
  }, [slot, before, lookBefore, after, lookAfter])
  return asked === null ? NOT_ASKED : found
}

type Heard = (message: FromCompareWorker) => void

let worker: Worker | null | undefined
let lastNumber = 0
const waiting = new Map<number, Heard>()

/** @returns how to call it off */
function compare(slot: string, looks: ComparedLooks, heard: Heard): () => void {
  const desk = started()
  const number = ++lastNumber
  if (desk === null) {
    queueMicrotask(() => heard({ number, is: 'trouble', words: NO_WORKER }))
    return () => undefined
  }
  waiting.set(number, heard)
  desk.postMessage({ do: 'compare', slot, number, ...looks } satisfies ToCompareWorker)
  return () => {
    waiting.delete(number)
    desk.postMessage({ do: 'forget', slot } satisfies ToCompareWorker)
  }
}

/** With the first comparison: most visits make none. */
function started(): Worker | null {
  if (worker !== undefined) return worker
  try {
    worker = new Worker(new URL('./compareWorker.ts', import.meta.url), { type: 'module' })
  } catch {
    return (worker = null)
  }
  worker.onmessage = ({ data }: MessageEvent<FromCompareWorker>) => {
    waiting.get(data.number)?.(data)
    if (data.is !== 'progress') waiting.delete(data.number)
  }
  worker.onerror = () => {
    for (const [number, heard] of waiting) heard({ number, is: 'trouble', words: NO_WORKER })
    waiting.clear()
    worker = null
  }
  return worker
}
