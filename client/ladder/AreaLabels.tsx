import { memo, useRef, type KeyboardEvent, type SVGProps } from 'react'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import type { AreaPrediction } from '../../shared-core/predict/prediction.ts'
import { useBoard, useBoardStore } from '../session/useBoard.ts'
import { areaKey } from './areaKeys.ts'
import { signedStops } from './areaNames.ts'
import type { PulledArea } from './areaPull.ts'
import { feedsInWords, type Feed, type Touched } from './feeds.ts'
import type { Hung, AreaRow, LadderColumns, LadderLayout } from './ladderLayout.ts'
import { BOTTOM_STOPS, TOP_STOPS } from './scale.ts'
import type { AreaHand } from './useAreaHand.ts'
import { useMarkerGestures } from './useMarkerGestures.ts'

interface AreaLabelsProps {
  readonly layout: LadderLayout
  readonly feeds: readonly Feed[]
  readonly touched: Touched
  readonly touch: (touched: Touched) => void
  readonly hand: AreaHand
  /** Opens a field at the area's marker. @param start the key it was begun with */
  readonly onType: (areaId: string, start?: string) => void
  readonly forThumbs: boolean
}

/**
 * The areas, brightest first for those who go through them with the arrow keys. One stop of the Tab key. Whoever may
 * change the plan pulls a marker to the level wanted, by hand or with the keys; for all others it is a button that picks.
 */
export function AreaLabels({ layout, feeds, touched, touch, hand, onType, forThumbs }: AreaLabelsProps) {
  const store = useBoardStore()
  const mayEdit = useBoard((board) => board.mayEdit)
  const prediction = useBoard((board) => board.prediction)
  const select = useBoard((board) => board.select)
  const selection = useBoard((board) => board.selection)
  const list = useRef<SVGGElement>(null)
  const gestures = useMarkerGestures(list, hand, layout.scale, onType)
  const downwards = [...layout.areas].sort((a, b) => a.labelPixels - b.labelPixels)
  const touchedId = touched?.kind === 'area' ? touched.id : null
  const tabStop = (downwards.find(({ thing }) => thing.area.id === touchedId) ?? downwards[0])?.thing.area.id

  function onKeyDown(event: KeyboardEvent, area: AreaPrediction): void {
    const pressed = areaKey(event, headStepAt(area, store.getState().plan, store.getState().lookId), mayEdit)
    if (pressed === null) return
    event.preventDefault()
    switch (pressed.does) {
      case 'raise': return hand.nudge(area.id, pressed.stops)
      case 'go': return goTo(area.id, pressed.to)
      case 'type': return onType(area.id, pressed.start)
      case 'enter': return void (hand.done() || choose(area))
      case 'pick': return choose(area)
    }
  }

  /** From the marker the key was pressed on: pulled, it may hang at another place by now. */
  function goTo(areaId: string, to: 'next' | 'previous' | 'first' | 'last'): void {
    const from = downwards.findIndex(({ thing }) => thing.area.id === areaId)
    const index = to === 'first' ? 0 : to === 'last' ? downwards.length - 1 : from + (to === 'next' ? 1 : -1)
    const next = downwards[index]?.thing.area.id
    if (next !== undefined) list.current?.querySelector<SVGGElement>(`[data-area="${CSS.escape(next)}"]`)?.focus()
  }

  function choose(area: AreaPrediction): void {
    const isSelected = (selection?.kind === 'area' || selection?.kind === 'point') && selection.id === area.id
    select(isSelected ? null : { kind: area.material === 'point' ? 'point' : 'area', id: area.id })
  }

  return (
    <g ref={list} role="list" aria-label="Areas, brightest first">
      {downwards.map((hung) => {
        const { area } = hung.thing
        const involved = touched === null || area.id === touchedId || feeds.some((feed) => feed.areaId === area.id)
        const isSelected = selection !== null && 'id' in selection && selection.id === area.id
        return (
          <g key={area.id} role="listitem">
            <g
              {...(mayEdit ? sliderOf(area, hand.pulled) : { role: 'button', 'aria-pressed': isSelected })}
              className="ladder-area"
              data-area={area.id}
              data-picked={isSelected}
              data-involved={involved}
              data-held={hand.pulled?.areaId === area.id}
              tabIndex={area.id === tabStop ? 0 : -1}
              aria-label={`${seenWords(hung)}: ${area.label}, ${area.colour.words}; lit by ${feedsInWords(prediction, area.id)}`}
              onPointerEnter={(event) => event.pointerType === 'mouse' && touch({ kind: 'area', id: area.id })}
              onPointerLeave={() => touch(null)}
              onFocus={() => touch({ kind: 'area', id: area.id })}
              onBlur={() => {
                touch(null)
                hand.cancel()
              }}
              onPointerDown={(event) => gestures.onPointerDown(event, area.id)}
              onPointerMove={gestures.onPointerMove}
              onPointerUp={gestures.onPointerUp}
              onPointerCancel={gestures.onPointerCancel}
              onClick={() => gestures.wasNoPress() || choose(area)}
              onDoubleClick={() => mayEdit && onType(area.id)}
              onKeyDown={(event) => onKeyDown(event, area)}
            >
              <AreaLabel hung={hung} columns={layout.columns} targetPixels={forThumbs ? 48 : 19} />
            </g>
          </g>
        )
      })}
    </g>
  )
}

/** What a screen reader is told of a marker that can be pulled. */
function sliderOf(area: AreaPrediction, pulled: PulledArea | null): SVGProps<SVGGElement> {
  const own = pulled?.areaId === area.id ? pulled : null
  const now = `${signedStops(own?.nowStops ?? area.meter.stops)} stops`
  return {
    role: 'slider',
    'aria-orientation': 'vertical',
    'aria-valuemin': BOTTOM_STOPS,
    'aria-valuemax': TOP_STOPS,
    'aria-valuenow': Math.min(TOP_STOPS, Math.max(BOTTOM_STOPS, Math.round((own?.wantedStops ?? area.meter.stops ?? BOTTOM_STOPS) * 10) / 10)),
    'aria-valuetext': own ? `${signedStops(own.wantedStops)} wanted, now ${now}. Enter asks` : now,
    'aria-description': 'Up and down, or a number, say the level wanted; Enter asks for it, Escape leaves',
  }
}

/** The step of the head that lights an area most; a tenth where none does. */
function headStepAt({ byLight }: AreaPrediction, plan: Plan, lookId: string): number {
  const strongest = byLight.reduce<AreaPrediction['byLight'][number] | null>((most, each) => (each.share > (most?.share ?? 0) ? each : most), null)
  const light = strongest && plan.looks[lookId]?.lights[strongest.lightId]
  return Math.max(0.1, (light && plan.heads[light.headId]?.stepStops) ?? 0.1)
}

function seenStops({ thing, pinned }: Hung<AreaRow>): string {
  const { stops } = thing.area.meter
  const arrow = pinned === 'above' ? '↑' : pinned === 'below' && stops !== null ? '↓' : ''
  return `${arrow}${signedStops(stops)}`
}

/** What the eye reads there: a spoken command may use the same words. */
function seenWords(hung: Hung<AreaRow>): string {
  return `${seenStops(hung)} ${hung.thing.name}`
}

interface AreaLabelProps {
  readonly hung: Hung<AreaRow>
  readonly columns: LadderColumns
  readonly targetPixels: number
}

const AreaLabel = memo(function AreaLabel({ hung, columns, targetPixels }: AreaLabelProps) {
  const { thing, truePixels, labelPixels } = hung
  const { rulerLeft, patchRight } = columns
  const patch = patchRight - 12
  return (
    <>
      <rect x={2} y={labelPixels - targetPixels / 2} width={patchRight} height={targetPixels} rx={3} className="ladder-target" />
      <rect x={patch - 40} y={labelPixels - targetPixels / 2} width={54} height={targetPixels} className="ladder-target ladder-grip" />
      <path d={`M${patchRight + 2} ${labelPixels}L${rulerLeft - 3} ${truePixels}h3`} className="ladder-leader" />
      <rect x={patch} y={labelPixels - 6} width={12} height={12} rx={1} style={{ fill: thing.area.colour.display }} className="ladder-patch" />
      <text x={patch - 6} y={labelPixels} className="ladder-area-stops">
        {seenStops(hung)}
      </text>{' '}
      <text x={patch - 40} y={labelPixels} className="ladder-area-name">
        {thing.name}
      </text>
    </>
  )
})
