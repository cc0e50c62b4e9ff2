import { useEffect, useRef, useState, type KeyboardEvent, type PointerEvent } from 'react'
import { pannedBy, WHOLE, zoomedAt, type Zoom } from './zoom.ts'

const KEY_STEP = 0.08
const KEY_TIMES = 1.25
const WHEEL_PER_TIMES = 300

export interface ZoomHand {
  readonly zoom: Zoom
  readonly reset: () => void
  readonly closer: (by: number) => void
  readonly onKeyDown: (event: KeyboardEvent) => void
  readonly onPointerDown: (event: PointerEvent<HTMLElement>) => void
  readonly onPointerMove: (event: PointerEvent<HTMLElement>) => void
  readonly onPointerUp: (event: PointerEvent<HTMLElement>) => void
}

/** One zoom for all proofs inside an element, by wheel, drag, two fingers and keys; a proof is marked by `data-proof`. */
export function useZoomHand(sheet: HTMLElement | null): ZoomHand {
  const [zoom, setZoom] = useState(WHOLE)
  const fingers = useRef(new Map<number, { readonly x: number; readonly y: number }>())

  // React's own wheel listeners are passive and could not keep the page from scrolling.
  useEffect(() => {
    if (sheet === null) return
    const onWheel = (event: WheelEvent) => {
      const box = proofBox(event.target)
      if (box === null || !(event.ctrlKey || event.metaKey || event.altKey || !canScroll(sheet))) return
      event.preventDefault()
      setZoom((now) => zoomedAt(now, Math.exp(-event.deltaY / WHEEL_PER_TIMES), (event.clientX - box.left) / box.width, (event.clientY - box.top) / box.height))
    }
    sheet.addEventListener('wheel', onWheel, { passive: false })
    return () => sheet.removeEventListener('wheel', onWheel)
  }, [sheet])

  return {
    zoom,
    reset: () => setZoom(WHOLE),
    closer: (by) => setZoom((now) => zoomedAt(now, by, 0.5, 0.5)),
    onKeyDown(event) {
      const steps: Readonly<Record<string, (now: Zoom) => Zoom>> = {
        '+': (now) => zoomedAt(now, KEY_TIMES, 0.5, 0.5), '=': (now) => zoomedAt(now, KEY_TIMES, 0.5, 0.5), '-': (now) => zoomedAt(now, 1 / KEY_TIMES, 0.5, 0.5),
        '0': () => WHOLE,
        ArrowLeft: (now) => pannedBy(now, KEY_STEP, 0), ArrowRight: (now) => pannedBy(now, -KEY_STEP, 0),
        ArrowUp: (now) => pannedBy(now, 0, KEY_STEP), ArrowDown: (now) => pannedBy(now, 0, -KEY_STEP),
      }
      const step = steps[event.key]
      if (step === undefined || event.ctrlKey || event.metaKey || event.altKey) return
      event.preventDefault()
      setZoom(step)
    },
    onPointerDown(event) {
      if (proofBox(event.target) === null || (zoom.times === 1 && event.pointerType === 'mouse')) return
      fingers.current.set(event.pointerId, { x: event.clientX, y: event.clientY })
      if (zoom.times > 1 || fingers.current.size > 1) event.currentTarget.setPointerCapture(event.pointerId)
    },
    onPointerMove(event) {
      const last = fingers.current.get(event.pointerId)
      const box = proofBox(event.target) ?? proofBox(sheet?.querySelector('[data-proof]') ?? null)
      if (last === undefined || box === null) return
      const others = [...fingers.current].filter(([id]) => id !== event.pointerId).map(([, place]) => place)
      fingers.current.set(event.pointerId, { x: event.clientX, y: event.clientY })
      const other = others[0]
      if (other === undefined) {
        setZoom((now) => (now.times === 1 ? now : pannedBy(now, (event.clientX - last.x) / box.width, (event.clientY - last.y) / box.height)))
        return
      }
      const apart = (place: { readonly x: number; readonly y: number }) => Math.max(1, Math.hypot(place.x - other.x, place.y - other.y))
      const [midX, midY] = [(event.clientX + other.x) / 2, (event.clientY + other.y) / 2]
      setZoom((now) => zoomedAt(now, apart({ x: event.clientX, y: event.clientY }) / apart(last), (midX - box.left) / box.width, (midY - box.top) / box.height))
    },
    onPointerUp(event) {
      fingers.current.delete(event.pointerId)
    },
  }
}

function proofBox(target: EventTarget | null): DOMRect | null {
  return target instanceof Element ? (target.closest('[data-proof]')?.getBoundingClientRect() ?? null) : null
}

function canScroll(element: HTMLElement): boolean {
  const scroller = element.closest('.full-page-body')
  return scroller !== null && scroller.scrollHeight > scroller.clientHeight + 1
}
