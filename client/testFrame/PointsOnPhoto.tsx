import { useEffect, useRef, useState, type KeyboardEvent, type PointerEvent } from 'react'
import type { PicturePoint } from '../../shared-core/testFrame/align.ts'
import type { Landmark } from '../../shared-core/testFrame/landmarks.ts'
import type { Bytes } from '../../shared-core/testFrame/sample.ts'
import { Predicted } from './Drawn.tsx'
import { penOf, type Photograph } from './photograph.ts'
import type { ThreePoints } from './testFrameOrders.ts'
import './pointsOnPhoto.css'

interface PointsOnPhotoProps {
  readonly photo: Photograph
  readonly picture: Bytes | null
  readonly landmarks: readonly [Landmark, Landmark, Landmark]
  readonly points: ThreePoints
  readonly onPoints: (points: ThreePoints) => void
}

const ARROWS: Readonly<Record<string, readonly [number, number]>> = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }

/** Three marks to drag onto the photograph's face, one in hand seen large beside where the prediction has it. */
export function PointsOnPhoto({ photo, picture, landmarks, points, onPoints }: PointsOnPhotoProps) {
  const [active, setActive] = useState(0)
  const sheet = useRef<HTMLDivElement>(null)
  /** From the finger to the mark, so that it is not covered and does not jump. */
  const grip = useRef({ x: 0, y: 0 })
  const { width, height } = photo.bytes

  const move = (place: number, to: PicturePoint) => onPoints(points.map((point, i) => (i === place
    ? { x: Math.min(width, Math.max(0, to.x)), y: Math.min(height, Math.max(0, to.y)) } : point)) as unknown as ThreePoints)

  function inPhoto({ clientX, clientY }: PointerEvent): PicturePoint {
    const box = sheet.current!.getBoundingClientRect()
    return { x: ((clientX - box.left) * width) / box.width, y: ((clientY - box.top) * height) / box.height }
  }

  function onKey(event: KeyboardEvent, place: number): void {
    const arrow = ARROWS[event.key]
    if (arrow === undefined) return
    event.preventDefault()
    const step = event.shiftKey ? 10 : 1
    move(place, { x: points[place]!.x + step * arrow[0], y: points[place]!.y + step * arrow[1] })
  }

  return (
    <div className="tf-points">
      <div className="tf-loupes">
        <figure><Loupe photo={photo} at={points[active]!} /><figcaption>photograph</figcaption></figure>
        {picture && <figure>
          <div className="tf-loupe tf-loupe-predicted">
            <div style={{ transform: `translate(${-100 * landmarks[active]!.frameX}%, ${-100 * landmarks[active]!.frameY}%)` }}><Predicted picture={picture} /></div>
          </div>
          <figcaption>prediction</figcaption>
        </figure>}
        <p className="tf-which"><b>{active + 1}</b> {landmarks[active]!.label}</p>
      </div>
      <div className="tf-sheet" ref={sheet} style={{ aspectRatio: `${width} / ${height}`, maxWidth: `calc(var(--tf-tall) * ${width / height})` }}>
        <PhotoCanvas photo={photo} />
        {landmarks.map((landmark, i) => (
          <button
            key={landmark.id} type="button" className="tf-mark" data-active={i === active}
            aria-label={`${i + 1}, ${landmark.label}: arrow keys move it, with shift further`}
            style={{ left: `${(100 * points[i]!.x) / width}%`, top: `${(100 * points[i]!.y) / height}%` }}
            onFocus={() => setActive(i)}
            onKeyDown={(event) => onKey(event, i)}
            onPointerDown={(event) => {
              event.currentTarget.setPointerCapture(event.pointerId)
              setActive(i)
              const { x, y } = inPhoto(event)
              grip.current = { x: points[i]!.x - x, y: points[i]!.y - y }
            }}
            onPointerMove={(event) => {
              if (!event.currentTarget.hasPointerCapture(event.pointerId)) return
              const { x, y } = inPhoto(event)
              move(i, { x: x + grip.current.x, y: y + grip.current.y })
            }}
          >
            <span>{i + 1}</span>
          </button>
        ))}
      </div>
    </div>
  )
}

function PhotoCanvas({ photo }: { readonly photo: Photograph }) {
  const canvas = useRef<HTMLCanvasElement>(null)
  useEffect(() => {
    if (canvas.current) penOf(canvas.current).drawImage(photo.canvas, 0, 0)
  }, [photo])
  return <canvas key={photo.name} ref={canvas} width={photo.bytes.width} height={photo.bytes.height} role="img" aria-label="The photograph" />
}

const LOUPE = 132

function Loupe({ photo, at }: { readonly photo: Photograph; readonly at: PicturePoint }) {
  const canvas = useRef<HTMLCanvasElement>(null)
  useEffect(() => {
    if (!canvas.current) return
    const pen = penOf(canvas.current)
    const reach = photo.bytes.height / 24
    pen.clearRect(0, 0, 2 * LOUPE, 2 * LOUPE)
    pen.drawImage(photo.canvas, at.x - reach, at.y - reach, 2 * reach, 2 * reach, 0, 0, 2 * LOUPE, 2 * LOUPE)
  }, [photo, at])
  return <div className="tf-loupe"><canvas ref={canvas} width={2 * LOUPE} height={2 * LOUPE} aria-hidden /></div>
}
