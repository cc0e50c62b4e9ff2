import { useEffect, useRef, type KeyboardEvent, type PointerEvent } from 'react'
import type { Reference } from './reference.ts'

export interface Place {
  /** 0-1 from the left and the top. */
  readonly x: number
  readonly y: number
}

interface ReferencePictureProps {
  readonly reference: Reference
  readonly place: Place
  /** Of the colour that is under the eye-dropper, in words. */
  readonly words: string
  readonly hex: string
  readonly onPlace: (place: Place) => void
}

const ARROWS: Readonly<Record<string, readonly [x: number, y: number]>> = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }
const STEP = 0.005

/** The reference with its eye-dropper: press or drag, or arrows (with shift in longer steps). */
export function ReferencePicture({ reference, place, words, hex, onPlace }: ReferencePictureProps) {
  const canvas = useRef<HTMLCanvasElement>(null)
  const { width, height } = reference.pixels
  useEffect(() => canvas.current?.getContext('2d')?.putImageData(reference.pixels, 0, 0), [reference])

  function take(event: PointerEvent<HTMLElement>): void {
    const box = canvas.current!.getBoundingClientRect()
    onPlace({ x: inside((event.clientX - box.x) / box.width), y: inside((event.clientY - box.y) / box.height) })
  }

  function onKeyDown(event: KeyboardEvent): void {
    const arrow = ARROWS[event.key]
    if (!arrow) return
    event.preventDefault()
    event.stopPropagation()
    const step = STEP * (event.shiftKey ? 8 : 1)
    onPlace({ x: inside(place.x + step * arrow[0]), y: inside(place.y + step * arrow[1]) })
  }

  return (
    <div
      className="reference"
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId)
        take(event)
      }}
      onPointerMove={(event) => event.currentTarget.hasPointerCapture(event.pointerId) && take(event)}
    >
      <canvas ref={canvas} className="reference-canvas" width={width} height={height} role="img" aria-label={`Reference: ${reference.name}`} />
      <button
        type="button"
        className="reference-dropper"
        style={{ left: `${place.x * 100}%`, top: `${place.y * 100}%`, background: hex }}
        aria-label={`Eye-dropper at ${Math.round(place.x * 100)} % from the left, ${Math.round(place.y * 100)} % from the top: ${words}. Arrows move it.`}
        onKeyDown={onKeyDown}
      />
    </div>
  )
}

const inside = (share: number): number => Math.min(0.9999, Math.max(0, share))
