import { useMemo, useRef, useState, type KeyboardEvent, type MouseEvent } from 'react'
import type { AreaPrediction } from '../../shared-core/predict/prediction.ts'
import { shortAreaName, signedStops } from '../ladder/areaNames.ts'
import { spreadLabels } from '../ladder/spreadLabels.ts'
import { useBoard } from '../session/useBoard.ts'
import { areasBehindSubject } from './behindSubject.ts'
import { clippedInLetters, clippedInWords } from './clipping.ts'
import './AreaMarks.css'
import { areaNearestTo, nextAreaTowards } from './nextArea.ts'
import { useElementSize } from './useElementSize.ts'

const LABEL_PIXELS = 20
/** So far from the midline, as a share of the Frame's width, a label stands outwards of its mark, off the face; beyond it, inwards. */
const OUTWARDS_WITHIN = 0.2

interface AreaMarksProps {
  readonly allShown: boolean
  /** The keyboard has come to an area. */
  readonly onReached: (area: AreaPrediction) => void
}

/**
 * The areas on the picture: a mark at each, its name and stops when touched or when all are shown, and which channels
 * clip there. One stop of the Tab key; arrows go to the nearest area that way. Of the background behind the subject the
 * marks are dotted, and a press means what is in front of them.
 */
export function AreaMarks({ allShown, onReached }: AreaMarksProps) {
  const areas = useBoard((board) => board.prediction.areas)
  const behind = useBoard((board) => board.prediction.background.behind)
  const selection = useBoard((board) => board.selection)
  const select = useBoard((board) => board.select)
  const layer = useRef<HTMLDivElement>(null)
  const size = useElementSize(layer)
  const [reached, setReached] = useState<string | null>(null)

  const shown = useMemo(() => areas.filter((area) => area.inFrame), [areas])
  const framing = useBoard((board) => board.prediction.framing)
  const stature = useBoard((board) => board.shown.looks[board.lookId]?.subject.heightMetres ?? 1.7)
  const hidden = useMemo(() => areasBehindSubject(areas, framing, stature), [areas, framing, stature])
  const selectedId = selection?.kind === 'area' || selection?.kind === 'point' ? selection.id : null
  const tabStop = shown.find((area) => area.id === (reached ?? selectedId))?.id ?? shown[0]?.id
  const heights = useMemo(() => labelHeights(shown, size?.heightPixels ?? 0), [shown, size])

  function onKeyDown(event: KeyboardEvent, from: AreaPrediction): void {
    // With Shift the keys move the reading and not the focus.
    if (event.shiftKey) return
    const to = nextAreaTowards(shown, from, event.key)
    if (!to) return
    event.preventDefault()
    setReached(to.id)
    layer.current?.querySelector<HTMLElement>(`[data-area="${CSS.escape(to.id)}"]`)?.focus()
  }

  /** A key means the mark it is on, a finger the nearest. */
  function meant(event: MouseEvent, pressed: AreaPrediction): AreaPrediction {
    const box = layer.current?.getBoundingClientRect()
    if (event.detail === 0 || !box) return pressed
    const [frameX, frameY] = [(event.clientX - box.left) / box.width, (event.clientY - box.top) / box.height]
    return areaNearestTo(shown.filter(({ id }) => !hidden.has(id)), frameX, frameY, box.width / box.height) ?? pressed
  }

  function pick({ id, material }: AreaPrediction): void {
    setReached(id)
    select(id === selectedId ? null : { kind: material === 'point' ? 'point' : 'area', id })
  }

  return (
    <div ref={layer} className="area-marks" role="group" aria-label="Areas in the Frame" data-all={allShown}>
      {shown.map((area) => {
        const side = sideOf(shown, area)
        const clipped = clippedInLetters(area.colour.clipped)
        const labelTop = allShown ? `${heights.get(area.id) ?? 0}px` : `${area.frameY * 100}%`
        return (
          <div key={area.id} className="area-mark-of" data-behind={hidden.has(area.id)}>
            <button
              type="button"
              className="area-mark"
              data-area={area.id}
              style={{ left: `${area.frameX * 100}%`, top: `${area.frameY * 100}%` }}
              tabIndex={area.id === tabStop ? 0 : -1}
              aria-pressed={area.id === selectedId}
              aria-label={`${area.label}, ${signedStops(area.meter.stops)} stops, ${area.colour.words}${clippedInWords(area.colour.clipped)}`}
              onFocus={(event) => {
                setReached(area.id)
                if (event.currentTarget.matches(':focus-visible')) onReached(area)
              }}
              onKeyDown={(event) => onKeyDown(event, area)}
              onClick={(event) => pick(meant(event, area))}
            >
              <span className="area-mark-ring" aria-hidden />
              {clipped !== '' && !hidden.has(area.id) && <span className="area-mark-clip" aria-hidden>{clipped}</span>}
            </button>
            {allShown && size && (
              <svg className="area-mark-lead" aria-hidden>
                <line
                  x1={side === 'left' ? 96 : size.widthPixels - 96}
                  x2={area.frameX * size.widthPixels}
                  y1={heights.get(area.id) ?? 0}
                  y2={area.frameY * size.heightPixels}
                />
              </svg>
            )}
            <span
              className={`area-mark-label area-mark-label-${side}`}
              data-outwards={Math.abs(area.frameX - 0.5) < OUTWARDS_WITHIN}
              style={allShown ? { top: labelTop } : { top: labelTop, left: `${area.frameX * 100}%` }}
              aria-hidden
            >
              {shortAreaName(area, behind)} <b>{signedStops(area.meter.stops)}</b>
            </span>
          </div>
        )
      })}
    </div>
  )
}

/** Heights of the labels when all are shown: stacked at the edge their area is nearer to, none over another. */
function labelHeights(areas: readonly AreaPrediction[], frameHeightPixels: number): ReadonlyMap<string, number> {
  const heights = new Map<string, number>()
  for (const side of ['left', 'right']) {
    const onSide = areas.filter((area) => sideOf(areas, area) === side)
    const labels = onSide.map((area) => ({ wantedPixels: area.frameY * frameHeightPixels, heightPixels: LABEL_PIXELS }))
    spreadLabels(labels, 4, frameHeightPixels - 4).forEach((height, i) => {
      const area = onSide[i]
      if (area) heights.set(area.id, height)
    })
  }
  return heights
}

/** The edge an area's label stands at: the nearer one; those on the midline take turns. */
function sideOf(areas: readonly AreaPrediction[], area: AreaPrediction): 'left' | 'right' {
  if (Math.abs(area.frameX - 0.5) > 0.06) return area.frameX < 0.5 ? 'left' : 'right'
  const onMidline = areas.filter((one) => Math.abs(one.frameX - 0.5) <= 0.06).sort((a, b) => a.frameY - b.frameY)
  return onMidline.indexOf(area) % 2 === 0 ? 'right' : 'left'
}
