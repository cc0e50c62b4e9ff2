import { useEffect, useRef, type KeyboardEvent, type MouseEvent, type PointerEvent, type RefObject } from 'react'
import type { ReadingHand, ReadingPlace } from './useReading.ts'

/** A finger that stays this long reads; a shorter touch picks, and one that moves scrolls. */
const HOLD_MS = 350
const STILL_PIXELS = 10
/** The reading is taken above the finger, where it can be seen. */
const ABOVE_FINGER_PIXELS = 52
const KEY_STEP = 0.02

const steps: Readonly<Record<string, readonly [x: number, y: number]>> = {
  ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1],
}

/** How pointer, finger and keys on the Frame take its reading. */
export function useReadingHand(frame: RefObject<HTMLElement | null>, { taken, readAt }: Pick<ReadingHand, 'taken' | 'readAt'>) {
  const hold = useRef<{ timer: ReturnType<typeof setTimeout>, x: number, y: number } | null>(null)
  const isReading = useRef(false)
  const wasHeld = useRef(false)

  useEffect(() => {
    const element = frame.current
    // Once a finger reads, it moves the reading and no longer the page.
    const keepStill = (event: TouchEvent): void => { if (isReading.current) event.preventDefault() }
    element?.addEventListener('touchmove', keepStill, { passive: false })
    return () => {
      element?.removeEventListener('touchmove', keepStill)
      clearTimeout(hold.current?.timer)
    }
  }, [frame])

  const stays = taken !== null && taken.place.by !== 'pointer'
  useEffect(() => {
    if (!stays) return
    const letGo = (event: globalThis.PointerEvent): void => {
      if (!(event.target instanceof Node && frame.current?.contains(event.target))) readAt(null)
    }
    addEventListener('pointerdown', letGo)
    return () => removeEventListener('pointerdown', letGo)
  }, [stays, frame, readAt])

  function placeOf(clientX: number, clientY: number, by: ReadingPlace['by']): ReadingPlace | null {
    const box = frame.current?.getBoundingClientRect()
    if (box === undefined) return null
    const [frameX, frameY] = [(clientX - box.x) / box.width, (clientY - box.y) / box.height]
    return by === 'pointer' ? { frameX, frameY, by } : { frameX: insideFrame(frameX), frameY: insideFrame(frameY), by }
  }

  function letGoOfHold(): void {
    clearTimeout(hold.current?.timer)
    hold.current = null
  }

  return {
    onPointerDown: ({ pointerType, clientX, clientY }: PointerEvent) => {
      wasHeld.current = false
      if (pointerType !== 'touch') return
      readAt(null)
      letGoOfHold()
      const timer = setTimeout(() => {
        isReading.current = true
        wasHeld.current = true
        readAt(placeOf(clientX, clientY - ABOVE_FINGER_PIXELS, 'finger'))
      }, HOLD_MS)
      hold.current = { timer, x: clientX, y: clientY }
    },
    onPointerMove: ({ pointerType, clientX, clientY }: PointerEvent) => {
      if (pointerType !== 'touch') return readAt(placeOf(clientX, clientY, 'pointer'))
      if (isReading.current) return readAt(placeOf(clientX, clientY - ABOVE_FINGER_PIXELS, 'finger'))
      const from = hold.current
      if (from !== null && Math.max(Math.abs(clientX - from.x), Math.abs(clientY - from.y)) > STILL_PIXELS) letGoOfHold()
    },
    onPointerUp: () => {
      letGoOfHold()
      isReading.current = false
    },
    onPointerCancel: () => {
      letGoOfHold()
      isReading.current = false
    },
    onPointerLeave: ({ pointerType }: PointerEvent) => {
      if (pointerType !== 'touch') readAt(null)
    },
    onContextMenu: (event: MouseEvent) => {
      if (wasHeld.current) event.preventDefault()
    },
    // The touch that ends a hold is not also a press on the mark under it.
    onClickCapture: (event: MouseEvent) => {
      if (!wasHeld.current) return
      wasHeld.current = false
      event.preventDefault()
      event.stopPropagation()
    },
    onKeyDown: (event: KeyboardEvent) => {
      const step = steps[event.key]
      if (event.key === 'Escape' && stays) {
        event.preventDefault()
        return readAt(null)
      }
      if (!event.shiftKey || step === undefined) return
      event.preventDefault()
      const from = taken?.place ?? { frameX: 0.5, frameY: 0.5 }
      readAt({ frameX: insideFrame(from.frameX + KEY_STEP * step[0]), frameY: insideFrame(from.frameY + KEY_STEP * step[1]), by: 'keys' })
    },
  }
}

/** The last row and column are still pixels of it. */
function insideFrame(share: number): number {
  return Math.min(0.9999, Math.max(0, share))
}
