import { useEffect, type RefObject } from 'react'
import { useBoardStore } from '../../session/useBoard.ts'

/** Tells the others where in the Frame this person points, while the pointer is over it. */
export function useFramePointer(frame: RefObject<HTMLElement | null>): void {
  const board = useBoardStore()
  useEffect(() => {
    const element = frame.current
    if (element === null) return
    const within = (share: number) => Math.min(1, Math.max(0, share))
    const move = (event: PointerEvent) => {
      const box = element.getBoundingClientRect()
      board.getState().pointInFrame({ frameX: within((event.clientX - box.left) / box.width), frameY: within((event.clientY - box.top) / box.height) })
    }
    const leave = () => board.getState().pointInFrame(null)
    // A finger that has gone points nowhere; whoever captured it may have kept the browser from saying that it left.
    const lift = (event: PointerEvent) => event.pointerType !== 'mouse' && leave()
    element.addEventListener('pointerup', lift)
    element.addEventListener('pointermove', move)
    for (const end of ['pointerleave', 'pointercancel'] as const) element.addEventListener(end, leave)
    return () => {
      leave()
      element.removeEventListener('pointerup', lift)
      element.removeEventListener('pointermove', move)
      for (const end of ['pointerleave', 'pointercancel'] as const) element.removeEventListener(end, leave)
    }
  }, [board, frame])
}
