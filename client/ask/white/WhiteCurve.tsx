import { useRef, type KeyboardEvent, type PointerEvent } from 'react'
import type { WhitePoint } from '../../../shared-core/ask/whitePoint.ts'
import { useElementSize } from '../../frame/useElementSize.ts'
import { signedStops } from '../../ladder/areaNames.ts'
import { useBoard } from '../../session/useBoard.ts'
import { burnsFrom, pushNow, stopsInSight, tradeAt, type TradeLine } from './curveShape.ts'
import { pushInWords } from './curveWords.ts'
import { useWhiteHand } from './useWhiteHand.ts'

const HEIGHT = 208
const TOP = 34
const BOTTOM = 24
const LEFT = 30
const RIGHT = 66
const lines: readonly { readonly line: TradeLine; readonly name: string }[] = [
  { line: 'rim', name: 'rim' }, { line: 'missing', name: 'to white' }, { line: 'black', name: 'black' },
]
const KEYS: Readonly<Record<string, 1 | -1>> = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1 }

/**
 * The trade of a white background as a curve to drag along: the push from just white to the right, stops upward. Arrows
 * step a tenth (with shift a third, with alt a whole stop), Home goes to just white, Enter keeps, Escape leaves it.
 */
export function WhiteCurve({ curve }: { readonly curve: readonly WhitePoint[] }) {
  const mayEdit = useBoard((board) => board.mayEdit)
  const box = useRef<HTMLDivElement>(null)
  const width = useElementSize(box)?.widthPixels ?? 0
  const hand = useWhiteHand(curve)
  const [first, last] = [curve[0]!.stopsFromWhite!, curve.at(-1)!.stopsFromWhite!]
  const [lowest, highest] = stopsInSight(curve)
  const now = pushNow(curve)!
  const push = hand.inHand ?? now
  const burns = burnsFrom(curve)

  const x = (at: number) => LEFT + ((at - first) / (last - first)) * (width - LEFT - RIGHT)
  const y = (stops: number) => TOP + ((highest - stops) / (highest - lowest)) * (HEIGHT - TOP - BOTTOM)
  const inSight = Math.min(Math.max(push, first), last)
  const pushAt = (event: PointerEvent) => {
    const left = box.current!.getBoundingClientRect().left
    return Math.min(last, Math.max(first, first + ((event.clientX - left - LEFT) / (width - LEFT - RIGHT)) * (last - first)))
  }

  function onKeyDown(event: KeyboardEvent): void {
    const way = KEYS[event.key]
    if (event.key === 'Enter') hand.done()
    else if (event.key === 'Escape' && hand.inHand !== null) hand.cancel()
    else if (event.key === 'Home') hand.moveTo(0)
    else if (way !== undefined) hand.moveTo(push + way * (event.altKey ? 1 : event.shiftKey ? 1 / 3 : 0.1))
    else return
    event.preventDefault()
    event.stopPropagation()
  }

  const path = (line: TradeLine) => curve
    .flatMap((point) => {
      const value = tradeAt(curve, line, point.stopsFromWhite!)
      return value === null ? [] : [`${x(point.stopsFromWhite!).toFixed(1)},${y(value).toFixed(1)}`]
    })
    .join(' ')
  const ends = spread(lines.flatMap(({ line, name }) => {
    const value = tradeAt(curve, line, last)
    return value === null ? [] : [{ name, line, y: y(value) }]
  }))

  return (
    <div
      ref={box}
      className="white-curve"
      role="slider"
      tabIndex={0}
      aria-label="Push of the lights behind, from just white"
      aria-valuemin={first}
      aria-valuemax={last}
      aria-valuenow={Math.round(inSight * 10) / 10}
      aria-valuetext={`${signedStops(push)}: ${pushInWords(curve, inSight)}`}
      aria-disabled={!mayEdit}
      onKeyDown={onKeyDown}
      onBlur={hand.done}
      onPointerDown={(event) => {
        if (!mayEdit || event.button !== 0) return
        event.currentTarget.setPointerCapture(event.pointerId)
        hand.moveTo(pushAt(event))
      }}
      onPointerMove={(event) => event.currentTarget.hasPointerCapture(event.pointerId) && hand.inHand !== null && hand.moveTo(pushAt(event))}
      onPointerUp={hand.done}
      onPointerCancel={hand.cancel}
    >
      {width > LEFT + RIGHT && (
        <svg width={width} height={HEIGHT} aria-hidden>
          {burns !== null && burns < last && (
            <rect className="white-curve-burnt" x={x(Math.max(first, burns))} y={TOP} width={x(last) - x(Math.max(first, burns))} height={HEIGHT - TOP - BOTTOM} />
          )}
          {range(lowest, highest).map((stops) => (
            <g key={stops} className="white-curve-grid" data-aperture={stops === 0}>
              <line x1={LEFT} x2={x(last)} y1={y(stops)} y2={y(stops)} />
              {stops % 2 === 0 && <text x={LEFT - 6} y={y(stops) + 4} textAnchor="end">{signedStops(stops).replace('.0', '')}</text>}
            </g>
          ))}
          <Mark at={x(0)} words="every corner white" side="right" row={0} limit={width} />
          {burns !== null && burns > first && burns < last && <Mark at={x(burns)} words="an edge burns" side={burns < 0 ? 'left' : 'right'} row={1} limit={width} />}
          {lines.map(({ line }) => <polyline key={line} className="white-curve-line" data-line={line} points={path(line)} />)}
          {ends.map((end) => <text key={end.line} className="white-curve-name" data-line={end.line} x={x(last) + 7} y={end.y + 4}>{end.name}</text>)}
          <g className="white-curve-hand" data-held={hand.inHand !== null}>
            <line x1={x(inSight)} x2={x(inSight)} y1={TOP - 4} y2={HEIGHT - BOTTOM} />
            {lines.map(({ line }) => {
              const value = tradeAt(curve, line, inSight)
              return value !== null && <circle key={line} cx={x(inSight)} cy={y(value)} r={4} />
            })}
            <rect x={x(inSight) - 22} y={HEIGHT - BOTTOM} width={44} height={20} rx={2} />
            <text x={x(inSight)} y={HEIGHT - BOTTOM + 14} textAnchor="middle">{signedStops(push)}</text>
          </g>
        </svg>
      )}
      <p className="white-curve-words">{pushInWords(curve, inSight)}</p>
    </div>
  )
}

function Mark({ at, words, side, row, limit }: { readonly at: number; readonly words: string; readonly side: 'left' | 'right'; readonly row: number; readonly limit: number }) {
  const isLeft = side === 'left' || at > limit - 120
  return (
    <g className="white-curve-mark">
      <line x1={at} x2={at} y1={8 + 14 * row} y2={HEIGHT - BOTTOM} />
      <text x={isLeft ? at - 5 : at + 5} y={14 + 14 * row} textAnchor={isLeft ? 'end' : 'start'}>{words}</text>
    </g>
  )
}

const NAME_PIXELS = 14

/** Names at the ends of their lines, from the top, none on another. */
function spread<Name extends { readonly y: number }>(names: readonly Name[]): readonly Name[] {
  const sorted = [...names].sort((a, b) => a.y - b.y)
  for (let i = 1; i < sorted.length; i++) sorted[i] = { ...sorted[i]!, y: Math.max(sorted[i]!.y, sorted[i - 1]!.y + NAME_PIXELS) }
  return sorted
}

const range = (from: number, to: number): readonly number[] => Array.from({ length: to - from + 1 }, (_, i) => from + i)
