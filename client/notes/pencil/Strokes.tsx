import type { FramePlace } from './framePlace.ts'
import './Strokes.css'
import type { FrameStroke } from './useFrameMarks.ts'

interface StrokesProps {
  readonly strokes: readonly FrameStroke[]
  readonly widthPixels: number
  readonly heightPixels: number
}

/** The drawn lines as grease pencil lies on a print: pale, waxy, with a thin dark edge. */
export function Strokes({ strokes, widthPixels, heightPixels }: StrokesProps) {
  if (strokes.length === 0) return null
  return (
    <svg className="strokes" viewBox={`0 0 ${widthPixels} ${heightPixels}`} role="img" aria-label={strokeWords(strokes)}>
      {strokes.map(({ id, stroke, pieces }) => {
        const width = Math.max(2.2, stroke.widthShare * heightPixels)
        const path = pieces.map((piece) => pathOf(piece, widthPixels, heightPixels)).join('')
        return (
          <g key={id} data-stroke={id}>
            <path d={path} className="strokes-edge" strokeWidth={width + 1.8} />
            <path d={path} className="strokes-wax" stroke={stroke.colour} strokeWidth={width} />
          </g>
        )
      })}
    </svg>
  )
}

/** Through the middles between points, so that a hand's corners are round. */
function pathOf(piece: readonly FramePlace[], width: number, height: number): string {
  const points = piece.map(({ frameX, frameY }) => [frameX * width, frameY * height] as const)
  const [first, ...more] = points
  if (first === undefined) return ''
  let path = `M${text(first)}`
  if (more.length === 0) return `${path}l0.01 0`
  more.forEach((point, i) => {
    const next = more[i + 1]
    path += next === undefined ? `L${text(point)}` : `Q${text(point)} ${text([(point[0] + next[0]) / 2, (point[1] + next[1]) / 2])}`
  })
  return path
}

function text([x, y]: readonly [number, number]): string {
  return `${x.toFixed(1)} ${y.toFixed(1)}`
}

function strokeWords(strokes: readonly FrameStroke[]): string {
  const names = [...new Set(strokes.map(({ stroke }) => stroke.by.name))].join(', ')
  return strokes.length === 1 ? `A pencil stroke by ${names}` : `${strokes.length} pencil strokes by ${names}`
}
