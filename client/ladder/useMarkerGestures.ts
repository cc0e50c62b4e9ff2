import { useEffect, useRef, type PointerEvent } from 'react'
import { useBoard } from '../session/useBoard.ts'
import { stopsOfMove, type LadderScale } from './scale.ts'
import type { AreaHand } from './useAreaHand.ts'

/** A hand that moved less than this has pressed, not dragged. */
const PRESS_PIXELS = 4
/** A thumb that rests this long means to type. */
const LONG_PRESS_MS = 550

interface Grip {
  readonly areaId: string
  readonly fromPixels: number
  /** A thumb beside the marker scrolls the page; on it, it pulls. */
  readonly canPull: boolean
  isPulled: boolean
}

export interface MarkerGestures {
  onPointerDown(event: PointerEvent<SVGGElement>, areaId: string): void
  onPointerMove(event: PointerEvent): void
  onPointerUp(): void
  onPointerCancel(): void
  /** Whether the press that just ended was none: it pulled, or rested until it meant to type. */
  wasNoPress(): boolean
}

/**
 * Pointers on the areas' markers: a drag pulls, a thumb that rests types.
 * @param list the element that holds the markers
 */
export function useMarkerGestures(
  list: { readonly current: SVGGElement | null }, hand: AreaHand, scale: LadderScale, onType: (areaId: string) => void,
): MarkerGestures {
  const mayEdit = useBoard((board) => board.mayEdit)
  const grip = useRef<Grip | null>(null)
  const rest = useRef<ReturnType<typeof setTimeout>>(undefined)
  const isNoPress = useRef(false)

  function letGo(): Grip | null {
    clearTimeout(rest.current)
    const held = grip.current
    grip.current = null
    return held
  }

  useEffect(() => () => clearTimeout(rest.current), [])
  // A thumb that pulls must not scroll the ladder under itself. By hand: `touch-action` on parts of a drawing is not
  // heeded in every browser, and React's touch listeners cannot keep a page from scrolling.
  useEffect(() => {
    const element = list.current
    const onTouchMove = (event: TouchEvent) => {
      if (grip.current?.canPull) event.preventDefault()
    }
    element?.addEventListener('touchmove', onTouchMove, { passive: false })
    return () => element?.removeEventListener('touchmove', onTouchMove)
  }, [list])

  return {
    onPointerDown(event, areaId) {
      isNoPress.current = false
      if (event.button !== 0 || !mayEdit) return
      const isThumb = event.pointerType === 'touch'
      const canPull = !isThumb || (event.target as Element).closest('.ladder-grip') !== null
      if (canPull) event.currentTarget.setPointerCapture(event.pointerId)
      grip.current = { areaId, fromPixels: event.clientY, canPull, isPulled: false }
      if (!isThumb) return
      rest.current = setTimeout(() => {
        letGo()
        isNoPress.current = true
        onType(areaId)
      }, LONG_PRESS_MS)
    },
    onPointerMove(event) {
      const held = grip.current
      if (!held) return
      const pixels = event.clientY - held.fromPixels
      if (!held.isPulled && Math.abs(pixels) < PRESS_PIXELS) return
      clearTimeout(rest.current)
      if (!held.canPull) return
      held.isPulled = true
      isNoPress.current = true
      hand.pull(held.areaId, stopsOfMove(scale, pixels))
    },
    onPointerUp() {
      if (letGo()?.isPulled) hand.done()
    },
    onPointerCancel() {
      if (letGo()?.isPulled) hand.cancel()
    },
    wasNoPress: () => isNoPress.current,
  }
}
