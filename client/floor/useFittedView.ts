import { useCallback, useLayoutEffect, useMemo, useRef, useState, type RefObject } from 'react'
import type { Room } from '../../shared-core/plan/schema/room.ts'
import type { Thing } from './things.ts'
import { grow } from './view/bounds.ts'
import type { ViewKind } from './view/projection.ts'
import { roomBounds, setBounds } from './view/setBounds.ts'
import { fitTo, type PanelSize, type ViewTransform } from './view/viewTransform.ts'

/** What the view is fitted to; null once somebody has zoomed or slid it. */
export type Fitted = 'set' | 'room' | null

export interface FittedView {
  readonly panel: PanelSize
  readonly transform: ViewTransform
  readonly changeTransform: (change: (transform: ViewTransform) => ViewTransform) => void
  readonly fit: (to: 'set' | 'room') => void
  /** While steady, a change of the panel's size does not fit the view anew. */
  readonly keepSteady: (steady: boolean) => void
  readonly fitted: Fitted
}

/** Room for the bars at the bottom, and at the sides for turn handles and tapes, in pixels. */
const INSETS = { left: 36, top: 34, right: 36, bottom: 54 } as const

/**
 * The panel's size and its view of the set. Opens fitted to the set and stays fitted while the panel changes size or
 * another look or side is shown; a hand that zooms or slides takes over until fit is pressed again. Moving a light does
 * not move the view.
 */
export function useFittedView(element: RefObject<HTMLElement | null>, view: ViewKind, room: Room, things: readonly Thing[], lookId: string): FittedView {
  const [panel, setPanel] = useState<PanelSize>({ width: 0, height: 0 })
  const [fitted, setFitted] = useState<Fitted>('set')
  const [own, setOwn] = useState<ViewTransform | null>(null)
  // The set as it was when the look or side came up: what is moved since does not pull the view along.
  const [frozen, setFrozen] = useState({ view, lookId, room, things })
  if (frozen.view !== view || frozen.lookId !== lookId) {
    setFitted('set')
    setOwn(null)
  }
  if (frozen.view !== view || frozen.lookId !== lookId || frozen.room !== room) setFrozen({ view, lookId, room, things })

  useLayoutEffect(() => {
    const panelElement = element.current
    if (panelElement === null) return
    const measure = () => setPanel({ width: panelElement.clientWidth, height: panelElement.clientHeight })
    measure()
    const observer = new ResizeObserver(measure)
    observer.observe(panelElement)
    return () => observer.disconnect()
  }, [element])

  const fittedTransform = useMemo(() => {
    const bounds = fitted === 'room' ? grow(roomBounds(frozen.room, frozen.view), 0.15) : setBounds(frozen.things, frozen.view)
    return fitTo(bounds, panel, INSETS)
  }, [fitted, frozen, panel])
  const [steady, setSteady] = useState<ViewTransform | null>(null)
  const transform = own ?? steady ?? fittedTransform
  // Read by handlers that outlive many pictures.
  const latest = useRef(transform)
  useLayoutEffect(() => {
    latest.current = transform
  }, [transform])

  const changeTransform = useCallback((change: (transform: ViewTransform) => ViewTransform) => {
    setOwn((before) => change(before ?? latest.current))
    setFitted(null)
  }, [])
  const keepSteady = useCallback((isSteady: boolean) => setSteady(isSteady ? latest.current : null), [])
  const fit = useCallback(
    (to: 'set' | 'room') => {
      setFrozen({ view, lookId, room, things })
      setFitted(to)
      setOwn(null)
    },
    [view, lookId, room, things],
  )
  return { panel, transform, changeTransform, fit, fitted, keepSteady }
}
