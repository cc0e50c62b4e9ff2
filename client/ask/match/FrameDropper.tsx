import { useEffect, useState, type KeyboardEvent } from 'react'
import { createPortal } from 'react-dom'
import { clipChannels } from '../../../shared-core/colour/camera.ts'
import { xyzFromChannels } from '../../../shared-core/colour/cameraMatrix.ts'
import { displayHex } from '../../../shared-core/colour/display.ts'
import type { Xyz } from '../../../shared-core/colour/triples.ts'
import { middleOfSquare } from '../../../shared-core/picture/middleOfSquare.ts'
import { shownFrame } from '../../frame/picture/shownFrame.ts'
import type { Place } from './ReferencePicture.tsx'

/** A colour read off the Frame: before stray light and finish, and as the display shows it. */
export interface FrameSample {
  readonly xyz: Xyz
  readonly hex: string
}

/** What the picture on the page holds around a place; null while there is none. */
export function sampleFrame({ x, y }: Place): FrameSample | null {
  const shown = shownFrame()
  const look = shown?.plan.looks[shown.lookId]
  if (!shown || !look) return null
  const { width, height, linear } = shown
  const channels = middleOfSquare({ width, height, values: linear, stride: 3 }, Math.floor(x * width), Math.floor(y * height), 1)
  const xyz = xyzFromChannels(clipChannels(channels), look.camera.whiteBalanceKelvin)
  return { xyz, hex: displayHex(xyz, look.finish).hex }
}

interface FrameDropperProps {
  readonly onTaken: (sample: FrameSample) => void
  readonly onLeave: () => void
}

const ARROWS: Readonly<Record<string, readonly [x: number, y: number]>> = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }

/** Lies over the Frame while a colour is taken from it: press where it is, or arrows and Enter; Escape leaves it. */
export function FrameDropper({ onTaken, onLeave }: FrameDropperProps) {
  const [print] = useState(() => document.querySelector('.frame-print'))
  const [place, setPlace] = useState<Place>({ x: 0.5, y: 0.4 })
  useEffect(() => {
    if (print === null) onLeave()
  }, [print, onLeave])
  if (print === null) return null

  function take(at: Place): void {
    const sample = sampleFrame(at)
    if (sample) onTaken(sample)
    onLeave()
  }

  function onKeyDown(event: KeyboardEvent): void {
    const arrow = ARROWS[event.key]
    if (event.key === 'Escape') onLeave()
    else if (arrow) {
      const step = event.shiftKey ? 0.05 : 0.01
      setPlace({ x: inside(place.x + step * arrow[0]), y: inside(place.y + step * arrow[1]) })
    } else return
    event.preventDefault()
    event.stopPropagation()
  }

  return createPortal(
    <button
      type="button"
      className="frame-dropper"
      aria-label="Take a colour from the Frame: press where it is, or move with the arrows and take it with Enter"
      ref={(element) => element?.focus()}
      onKeyDown={onKeyDown}
      onPointerMove={(event) => setPlace(placeOf(event.currentTarget, event))}
      onPointerDown={(event) => event.stopPropagation()}
      onClick={(event) => {
        event.stopPropagation()
        // A press by keyboard has no place of its own.
        take(event.detail === 0 ? place : placeOf(event.currentTarget, event))
      }}
    >
      <span className="frame-dropper-mark" style={{ left: `${place.x * 100}%`, top: `${place.y * 100}%` }} />
    </button>,
    print,
  )
}

function placeOf(element: Element, { clientX, clientY }: { readonly clientX: number; readonly clientY: number }): Place {
  const box = element.getBoundingClientRect()
  return { x: inside((clientX - box.x) / box.width), y: inside((clientY - box.y) / box.height) }
}

const inside = (share: number): number => Math.min(0.9999, Math.max(0, share))
