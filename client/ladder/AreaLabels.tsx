import { memo, useRef, type KeyboardEvent } from 'react'
import type { AreaPrediction } from '../../shared-core/predict/prediction.ts'
import { useBoard } from '../session/useBoard.ts'
import { signedStops } from './areaNames.ts'
import { feedsInWords, type Feed, type Touched } from './feeds.ts'
import type { Hung, AreaRow, LadderColumns, LadderLayout } from './ladderLayout.ts'

interface AreaLabelsProps {
  readonly layout: LadderLayout
  readonly feeds: readonly Feed[]
  readonly touched: Touched
  readonly touch: (touched: Touched) => void
  readonly forThumbs: boolean
}

/** The areas, brightest first for those who go through them with the arrow keys. One stop of the Tab key. */
export function AreaLabels({ layout, feeds, touched, touch, forThumbs }: AreaLabelsProps) {
  const prediction = useBoard((board) => board.prediction)
  const select = useBoard((board) => board.select)
  const selection = useBoard((board) => board.selection)
  const list = useRef<SVGGElement>(null)
  const downwards = [...layout.areas].sort((a, b) => a.labelPixels - b.labelPixels)
  const touchedId = touched?.kind === 'area' ? touched.id : null
  const tabStop = (downwards.find(({ thing }) => thing.area.id === touchedId) ?? downwards[0])?.thing.area.id

  function onKeyDown(event: KeyboardEvent, index: number): void {
    const to = event.key === 'ArrowDown' ? index + 1 : event.key === 'ArrowUp' ? index - 1 : event.key === 'Home' ? 0 : event.key === 'End' ? downwards.length - 1 : null
    if (to !== null) {
      event.preventDefault()
      list.current?.querySelectorAll<SVGGElement>('[role="button"]')[to]?.focus()
    } else if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault()
      choose(downwards[index]?.thing.area)
    }
  }

  function choose(area: AreaPrediction | undefined): void {
    if (!area) return
    const isSelected = (selection?.kind === 'area' || selection?.kind === 'point') && selection.id === area.id
    select(isSelected ? null : { kind: area.material === 'point' ? 'point' : 'area', id: area.id })
  }

  return (
    <g ref={list} role="list" aria-label="Areas, brightest first">
      {downwards.map((hung, index) => {
        const { area } = hung.thing
        const involved = touched === null || area.id === touchedId || feeds.some((feed) => feed.areaId === area.id)
        return (
          <g key={area.id} role="listitem">
            <g
              role="button"
              className="ladder-area"
              data-involved={involved}
              tabIndex={area.id === tabStop ? 0 : -1}
              aria-pressed={selection !== null && 'id' in selection && selection.id === area.id}
              aria-label={`${seenWords(hung)}: ${area.label}, ${area.colour.words}; lit by ${feedsInWords(prediction, area.id)}`}
              onPointerEnter={(event) => event.pointerType === 'mouse' && touch({ kind: 'area', id: area.id })}
              onPointerLeave={() => touch(null)}
              onFocus={() => touch({ kind: 'area', id: area.id })}
              onBlur={() => touch(null)}
              onClick={() => choose(area)}
              onKeyDown={(event) => onKeyDown(event, index)}
            >
              <AreaLabel hung={hung} columns={layout.columns} targetPixels={forThumbs ? 48 : 19} />
            </g>
          </g>
        )
      })}
    </g>
  )
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
