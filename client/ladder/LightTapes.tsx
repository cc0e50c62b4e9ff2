import { useEffect, useRef, type KeyboardEvent, type PointerEvent } from 'react'
import type { LightPrediction } from '../../shared-core/predict/prediction.ts'
import { useBoard } from '../session/useBoard.ts'
import { signedStops } from './areaNames.ts'
import type { Feed, Touched } from './feeds.ts'
import { LightTape } from './LightTape.tsx'
import type { LadderLayout } from './ladderLayout.ts'
import { powerKey } from './powerKeys.ts'
import { stopsOfMove } from './scale.ts'
import type { PowerHand } from './usePowerHand.ts'

interface LightTapesProps {
  readonly layout: LadderLayout
  readonly feeds: readonly Feed[]
  readonly touched: Touched
  readonly touch: (touched: Touched) => void
  readonly hand: PowerHand
  readonly forThumbs: boolean
}

/** A hand that moved less than this has pressed, not dragged. */
const PRESS_PIXELS = 4
/** A wheel that rests this long is done. */
const WHEEL_RESTS_MS = 350

/** The lights on their tapes. Dragging one, or the arrow keys, sets its power. */
export function LightTapes({ layout, feeds, touched, touch, hand, forThumbs }: LightTapesProps) {
  const mayEdit = useBoard((board) => board.mayEdit)
  const because = useBoard((board) => board.mayNotBecause)
  const selection = useBoard((board) => board.selection)
  const select = useBoard((board) => board.select)
  const grip = useRef<{ readonly lightId: string; readonly fromPixels: number; dragged: boolean } | null>(null)
  const tapes = useRef<SVGGElement>(null)
  useWheelPower(tapes, hand, mayEdit)

  function onPointerDown(event: PointerEvent<SVGGElement>, lightId: string): void {
    if (event.button !== 0) return
    event.currentTarget.setPointerCapture(event.pointerId)
    grip.current = { lightId, fromPixels: event.clientY, dragged: false }
  }

  function onPointerMove(event: PointerEvent): void {
    const held = grip.current
    if (!held) return
    const pixels = event.clientY - held.fromPixels
    held.dragged ||= Math.abs(pixels) >= PRESS_PIXELS
    if (held.dragged && mayEdit) hand.pull(held.lightId, stopsOfMove(layout.scale, pixels))
  }

  function onPointerUp(): void {
    const held = grip.current
    grip.current = null
    if (held?.dragged) hand.done()
    else if (held) select(selection?.kind === 'light' && selection.id === held.lightId ? null : { kind: 'light', id: held.lightId })
  }

  function onKeyDown(event: KeyboardEvent, light: LightPrediction): void {
    if (event.key === 'Enter') return select({ kind: 'light', id: light.id })
    if (event.key === 'Escape') {
      grip.current = null
      return hand.cancel()
    }
    const turn = powerKey(event)
    if (turn === null) return
    event.preventDefault()
    if (turn === 'full') hand.toFull(light.id)
    else if (turn === 'lowest') hand.toLowest(light.id)
    else hand.nudge(light.id, turn)
  }

  return (
    <g ref={tapes} role="group" aria-label="Lights, by level">
      {layout.lights.map((hung) => {
        const light = hung.thing
        const isTouched = touched?.kind === 'light' && touched.id === light.id
        const { level } = light
        return (
          <g
            key={light.id}
            role="slider"
            className="ladder-light"
            data-light={light.id}
            data-involved={touched === null || isTouched || feeds.some((feed) => feed.lightId === light.id)}
            data-held={hand.inHand?.lightId === light.id}
            tabIndex={0}
            aria-orientation="vertical"
            aria-label={`Light ${light.letter}, ${light.summary}: power`}
            aria-valuemin={round((level.stops ?? 0) - light.stopsAboveLowest)}
            aria-valuemax={round((level.stops ?? 0) + light.stopsInHand)}
            aria-valuenow={round(level.stops ?? 0)}
            aria-valuetext={`${light.on ? `${signedStops(level.stops)} stops` : 'switched off'}, power ${light.powerText}${light.wantedStops === null ? '' : `, wanted ${signedStops(light.wantedStops)}`}`}
            aria-disabled={!mayEdit}
            aria-description={mayEdit ? undefined : (because ?? undefined)}
            onPointerEnter={(event) => event.pointerType === 'mouse' && touch({ kind: 'light', id: light.id })}
            onPointerLeave={() => touch(null)}
            onFocus={() => touch({ kind: 'light', id: light.id })}
            onBlur={() => {
              touch(null)
              hand.done()
            }}
            onPointerDown={(event) => onPointerDown(event, light.id)}
            onPointerMove={onPointerMove}
            onPointerUp={onPointerUp}
            onPointerCancel={() => {
              grip.current = null
              hand.cancel()
            }}
            onKeyDown={(event) => onKeyDown(event, light)}
            onKeyUp={(event) => powerKey(event) !== null && hand.done()}
          >
            <LightTape
              hung={hung}
              columns={layout.columns}
              scale={layout.scale}
              rangeShown={isTouched}
              pastRangeStops={hand.inHand?.lightId === light.id ? hand.inHand.pastRangeStops : 0}
              forThumbs={forThumbs}
            />
          </g>
        )
      })}
    </g>
  )
}

function round(stops: number): number {
  return Math.round(stops * 10) / 10
}

/** Scrolling over a tape is a fine change. By hand, since React's wheel listeners cannot keep the page from scrolling. */
function useWheelPower(tapes: { readonly current: SVGGElement | null }, hand: PowerHand, mayEdit: boolean): void {
  const latest = useRef(hand)
  useEffect(() => {
    latest.current = hand
  })
  useEffect(() => {
    const element = tapes.current
    if (!element || !mayEdit) return
    let rest: ReturnType<typeof setTimeout> | undefined
    const onWheel = (event: WheelEvent) => {
      const lightId = (event.target as Element).closest<SVGGElement>('[data-light]')?.dataset.light
      if (lightId === undefined || event.deltaY === 0) return
      event.preventDefault()
      latest.current.nudge(lightId, event.deltaY < 0 ? 0.1 : -0.1)
      clearTimeout(rest)
      rest = setTimeout(() => latest.current.done(), WHEEL_RESTS_MS)
    }
    element.addEventListener('wheel', onWheel, { passive: false })
    return () => {
      clearTimeout(rest)
      element.removeEventListener('wheel', onWheel)
    }
  }, [tapes, mayEdit])
}
