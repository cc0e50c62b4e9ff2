import { Trash2 } from 'lucide-react'
import { changePoint, movePoint, removePoint } from '../../shared-core/plan/edits/points.ts'
import { TextField } from '../controls/TextField.tsx'
import { useBoard } from '../session/useBoard.ts'
import { usePlanEdit, type MakeEdit } from '../session/usePlanEdit.ts'
import { CareHere, SnagsHere } from './AboutThis.tsx'
import { AreaReading } from './AreaReading.tsx'
import { PlanSwatch, QuantityField } from './planFields.tsx'
import { PanelHead } from './PanelHead.tsx'
import { TrueColourHere } from './TrueColourHere.tsx'
import { PlaceFields } from './PlaceFields.tsx'
import { angleQuantity } from './quantities.ts'
import { clothSwatches } from './usualSwatches.ts'

/** A place somebody wants to know about: what a meter held there would read, and why. */
export function PointSheet({ pointId }: { readonly pointId: string }) {
  const point = useBoard((board) => board.shown.looks[board.lookId]?.points[pointId])
  const mayEdit = useBoard((board) => board.mayEdit)
  const select = useBoard((board) => board.select)
  const edit = usePlanEdit()
  if (!point) return null
  const change = (patch: Parameters<typeof changePoint>[3]): MakeEdit => (plan, lookId) => changePoint(plan, lookId, pointId, patch)

  return (
    <div className="panel">
      <PanelHead title={point.label} gist="A point that is metered like the areas">
        <button type="button" className="button" onClick={() => edit((plan, lookId) => removePoint(plan, lookId, pointId)) && select(null)}>
          <Trash2 size={15} aria-hidden /> Remove
        </button>
      </PanelHead>
      <SnagsHere id={pointId} />
      <AreaReading areaId={pointId} />
      <TrueColourHere areaId={pointId} />
      <CareHere id={pointId} />
      <div className="panel-grid panel-first">
        <TextField label="Name" value={point.label} maxLength={120} disabled={!mayEdit} onDone={(label) => edit(change({ label }))} />
        <QuantityField label="Meter faces, 0 to the camera" value={point.facingDegrees} quantity={angleQuantity} change={(facingDegrees) => change({ facingDegrees })} />
        <QuantityField label="Tipped up" value={point.tiltDegrees} quantity={angleQuantity} change={(tiltDegrees) => change({ tiltDegrees })} />
      </div>
      <PlaceFields title="Place" place={point.place} change={(place) => (plan, lookId) => movePoint(plan, lookId, pointId, place)} />
      <div className="panel-grid panel-swatches">
        <PlanSwatch label="Surface there" value={point.swatch} usual={clothSwatches} change={(swatch) => change({ swatch })} />
      </div>
    </div>
  )
}
