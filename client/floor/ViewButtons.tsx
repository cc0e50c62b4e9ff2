import { Minus, Plus } from 'lucide-react'
import type { Fitted } from './useFittedView.ts'
import { zoomAbout, type PanelSize, type ViewTransform } from './view/viewTransform.ts'

interface ViewButtonsProps {
  readonly changeTransform: (change: (transform: ViewTransform) => ViewTransform) => void
  readonly panel: PanelSize
  readonly fit: (to: 'set' | 'room') => void
  readonly fitted: Fitted
}

const ZOOM_STEP = 1.3

/** Nearer, farther, the set, the room. */
export function ViewButtons({ changeTransform, panel, fit, fitted }: ViewButtonsProps) {
  const zoom = (factor: number) => changeTransform((transform) => zoomAbout(transform, [panel.width / 2, panel.height / 2], factor))
  return (
    <div className="floor-view-buttons" role="group" aria-label="View of the set">
      <button type="button" className="button" aria-pressed={fitted === 'set'} onClick={() => fit('set')}>Set</button>
      <button type="button" className="button" aria-pressed={fitted === 'room'} onClick={() => fit('room')}>Room</button>
      <button type="button" className="button button-bare" aria-label="Zoom out" onClick={() => zoom(1 / ZOOM_STEP)}><Minus size={16} aria-hidden /></button>
      <button type="button" className="button button-bare" aria-label="Zoom in" onClick={() => zoom(ZOOM_STEP)}><Plus size={16} aria-hidden /></button>
    </div>
  )
}
