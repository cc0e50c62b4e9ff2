import { useState } from 'react'
import type { Snag } from '../../shared-core/predict/snag.ts'
import { useWithLooked } from '../ask/spill/lookedSnag.ts'
import { useBoard } from '../session/useBoard.ts'
import { newestFirst, seenAtFirst, seenNext } from './newestFirst.ts'

/** The look's snags in the order of the list; remembers which came up when, for as long as the list is on the screen. */
export function useNewestFirst(): readonly Snag[] {
  const snags = useWithLooked(useBoard((board) => board.prediction.snags))
  const lookId = useBoard((board) => board.prediction.lookId)
  const [seen, setSeen] = useState(() => seenAtFirst(lookId, snags))
  if (seen.snags === snags && seen.lookId === lookId) return newestFirst(seen)
  const next = seenNext(seen, lookId, snags)
  setSeen(next)
  return newestFirst(next)
}
