import { useEffect, useRef } from 'react'
import { useBoardStore } from '../session/useBoard.ts'
import type { Placing } from './gestures/placing.ts'

interface PlacingWordsProps {
  readonly placing: Placing
  readonly onMiddle: () => void
  readonly onLeave: () => void
}

/** What to do next while something waits to be set down; the keyboard comes here, so that Enter sets it in the middle. */
export function PlacingWords({ placing, onMiddle, onLeave }: PlacingWordsProps) {
  const store = useBoardStore()
  const middle = useRef<HTMLButtonElement>(null)
  useEffect(() => middle.current?.focus(), [placing])

  function leave(): void {
    store.getState().hold(null)
    onLeave()
  }

  return (
    <div className="floor-placing" role="group" aria-label={`Placing ${placing.name}`}>
      <span>{placing.name}: press where it stands</span>
      <button ref={middle} type="button" className="button button-lined" onClick={onMiddle}>In the middle</button>
      <button type="button" className="button" onClick={leave}>Not now</button>
    </div>
  )
}
