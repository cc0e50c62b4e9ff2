import { useId, useRef, useState, type KeyboardEvent, type PointerEvent } from 'react'
import type { FramePlace } from './framePlace.ts'
import './PencilSurface.css'

export interface PressedAt {
  readonly clientX: number
  readonly clientY: number
  /** By a key, and not by a hand. */
  readonly byKeys: boolean
}

interface PencilSurfaceProps {
  /** What is written on, for those who hear it: "the Frame". */
  readonly on: string
  /** @param at pixels on the page */
  readonly onPress: (place: FramePlace, at: PressedAt) => void
  /** A line was drawn; where none can be, a drag is a press at its end. */
  readonly onDrawn?: (points: readonly FramePlace[]) => void
  /** What lies under the keyboard's cross, in words. */
  readonly wordsAt: (place: FramePlace) => string
  /** Of the line being drawn. */
  readonly tone: string
}

/** A hand that moved less has pressed, not drawn. */
const PRESS_PIXELS = 6
/** Points nearer to the last one add nothing to a line. */
const POINT_PIXELS = 2.5
/** More points a line may not have; the relay would refuse it. */
const MOST_POINTS = 400
const KEY_STEP = 0.04
const FINE_KEY_STEP = 0.005

const steps: Readonly<Record<string, readonly [x: number, y: number]>> = {
  ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1],
}

/** Lies over what is written on while the pencil is on: a press pins, a drag draws, arrow keys move a cross and Enter pins there. */
export function PencilSurface({ on, onPress, onDrawn, wordsAt, tone }: PencilSurfaceProps) {
  const hintId = useId()
  const surface = useRef<HTMLDivElement>(null)
  const from = useRef<{ readonly x: number; readonly y: number; readonly id: number } | null>(null)
  const [line, setLine] = useState<readonly FramePlace[]>([])
  const [cross, setCross] = useState<FramePlace | null>(null)

  function placeOf({ clientX, clientY }: { clientX: number; clientY: number }): FramePlace {
    const box = surface.current!.getBoundingClientRect()
    return { frameX: share((clientX - box.x) / box.width), frameY: share((clientY - box.y) / box.height) }
  }

  function onPointerDown(event: PointerEvent): void {
    // A finger that rests here writes, and does not read the picture.
    if (event.pointerType === 'touch') event.stopPropagation()
    if (event.button !== 0 || !event.isPrimary) return
    event.currentTarget.setPointerCapture(event.pointerId)
    from.current = { x: event.clientX, y: event.clientY, id: event.pointerId }
    setCross(null)
  }

  function onPointerMove(event: PointerEvent): void {
    const start = from.current
    if (start === null || start.id !== event.pointerId || !onDrawn) return
    const box = surface.current!.getBoundingClientRect()
    setLine((points) => {
      if (points.length === 0) {
        return away(event.clientX - start.x, event.clientY - start.y) < PRESS_PIXELS ? points : [placeOf({ clientX: start.x, clientY: start.y }), placeOf(event)]
      }
      const last = points.at(-1)!
      const next = placeOf(event)
      const isNear = away((next.frameX - last.frameX) * box.width, (next.frameY - last.frameY) * box.height) < POINT_PIXELS
      return isNear || points.length >= MOST_POINTS ? points : [...points, next]
    })
  }

  function onPointerUp(event: PointerEvent): void {
    const start = from.current
    from.current = null
    if (start === null || start.id !== event.pointerId) return
    if (line.length > 1 && onDrawn) onDrawn(line)
    else onPress(placeOf(event), { clientX: event.clientX, clientY: event.clientY, byKeys: false })
    setLine([])
  }

  function letGo(): void {
    from.current = null
    setLine([])
  }

  function onKeyDown(event: KeyboardEvent): void {
    const step = steps[event.key]
    const at = cross ?? { frameX: 0.5, frameY: 0.5 }
    if (step !== undefined) {
      event.preventDefault()
      const size = event.shiftKey ? FINE_KEY_STEP : KEY_STEP
      setCross({ frameX: share(at.frameX + size * step[0]), frameY: share(at.frameY + size * step[1]) })
    } else if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault()
      event.stopPropagation()
      const box = surface.current!.getBoundingClientRect()
      onPress(at, { clientX: box.x + at.frameX * box.width, clientY: box.y + at.frameY * box.height, byKeys: true })
    } else if (event.key === 'Escape' && line.length > 0) {
      event.preventDefault()
      letGo()
    }
  }

  return (
    <div
      ref={surface}
      className="pencil-surface"
      role="button"
      tabIndex={0}
      aria-label={`Pencil on ${on}${cross === null ? '' : `: ${wordsAt(cross)}`}`}
      aria-describedby={hintId}
      onFocus={(event) => event.currentTarget.matches(':focus-visible') && setCross((at) => at ?? { frameX: 0.5, frameY: 0.5 })}
      onBlur={() => setCross(null)}
      onPointerDown={onPointerDown}
      onPointerMove={onPointerMove}
      onPointerUp={onPointerUp}
      onPointerCancel={letGo}
      onKeyDown={onKeyDown}
    >
      {line.length > 1 && (
        <svg className="pencil-line" viewBox="0 0 1 1" preserveAspectRatio="none" aria-hidden>
          <polyline points={line.map(({ frameX, frameY }) => `${frameX},${frameY}`).join(' ')} className="pencil-line-edge" />
          <polyline points={line.map(({ frameX, frameY }) => `${frameX},${frameY}`).join(' ')} style={{ stroke: tone }} />
        </svg>
      )}
      {cross !== null && <span className="pencil-cross" style={{ left: `${cross.frameX * 100}%`, top: `${cross.frameY * 100}%` }} aria-hidden />}
      <span id={hintId} className="heard">Arrow keys move the pencil, with Shift finely; Enter pins a note there</span>
      <span className="heard" aria-live="polite">{cross === null ? '' : wordsAt(cross)}</span>
    </div>
  )
}

function share(value: number): number {
  return Math.min(0.9999, Math.max(0, value))
}

function away(dx: number, dy: number): number {
  return Math.sqrt(dx * dx + dy * dy)
}
