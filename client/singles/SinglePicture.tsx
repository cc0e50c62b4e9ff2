import { useEffect, useMemo, useRef, type KeyboardEvent } from 'react'
import type { LightPrediction } from '../../shared-core/predict/prediction.ts'
import { colourAlone } from '../frame/colourAlone.ts'
import { FormPicture } from '../frame/FormPicture.tsx'
import { PictureCanvas } from '../frame/picture/PictureCanvas.tsx'
import { useBoard } from '../session/useBoard.ts'

/** A press shorter than this picks the light; a longer one is a hold, and sees it alone. */
const HOLD_MS = 200
const PICTURE_PIXELS = 132

/** The line that says how to see a light alone; the strip holds it once. */
export const HOW_TO_ID = 'singles-how-to'

/** The light's own picture, under its letter on tape. Press to pick it; press and hold, or hold Space, to see it alone. */
export function SinglePicture({ light }: { readonly light: LightPrediction }) {
  const areas = useBoard((board) => board.prediction.areas)
  const framing = useBoard((board) => board.prediction.framing)
  const taking = useBoard((board) => board.prediction.taking)
  const stature = useBoard((board) => board.shown.looks[board.lookId]?.subject.heightMetres ?? 1.7)
  const finish = useBoard((board) => board.shown.looks[board.lookId]?.finish)
  const alone = useBoard((board) => board.soloLightId === light.id)
  const selected = useBoard((board) => board.selection?.kind === 'light' && board.selection.id === light.id)
  const solo = useBoard((board) => board.solo)
  const select = useBoard((board) => board.select)
  const waiting = useRef<ReturnType<typeof setTimeout> | undefined>(undefined)
  const wasHeld = useRef(false)

  const colours = useMemo(() => (finish ? areas.map((area) => colourAlone(area, light.id, taking, finish)) : []), [areas, light.id, taking, finish])
  useEffect(() => () => clearTimeout(waiting.current), [])

  function press(): void {
    wasHeld.current = false
    waiting.current = setTimeout(() => {
      wasHeld.current = true
      solo(light.id)
    }, HOLD_MS)
  }

  function release(): void {
    clearTimeout(waiting.current)
    if (wasHeld.current) solo(null)
  }

  function onKeyDown(event: KeyboardEvent): void {
    if (event.key !== ' ') return
    event.preventDefault()
    if (!event.repeat) solo(light.id)
  }

  function onKeyUp(event: KeyboardEvent): void {
    if (event.key !== ' ') return
    event.preventDefault()
    solo(null)
  }

  return (
    <button
      type="button"
      className="single-picture"
      data-pin={`light:${light.id}`}
      aria-pressed={selected}
      aria-label={`Light ${light.letter}: ${light.summary}${light.on ? '' : ', lifted out'}`}
      aria-describedby={HOW_TO_ID}
      data-alone={alone}
      onPointerDown={(event) => event.button === 0 && press()}
      onPointerUp={release}
      onPointerLeave={release}
      onPointerCancel={release}
      onContextMenu={(event) => event.preventDefault()}
      onKeyDown={onKeyDown}
      onKeyUp={onKeyUp}
      onBlur={() => alone && solo(null)}
      onClick={() => {
        if (!wasHeld.current) select(selected ? null : { kind: 'light', id: light.id })
        wasHeld.current = false
      }}
    >
      <PictureCanvas
        kind="single"
        soloLightId={light.id}
        widthPixels={PICTURE_PIXELS}
        heightPixels={Math.round((PICTURE_PIXELS * framing.atSubjectHeightMetres) / framing.atSubjectWidthMetres)}
        fadeKey={light.gel.name}
        description=""
      >
        <FormPicture areas={areas} framing={framing} statureMetres={stature} colours={colours} widthPixels={PICTURE_PIXELS} description="" />
      </PictureCanvas>
      <span className="single-letter tape">{light.letter}</span>
    </button>
  )
}
