import type { Place } from '../../shared-core/plan/schema/quantities.ts'
import type { MakeEdit } from '../session/usePlanEdit.ts'
import { LengthField } from './planFields.tsx'

interface PlaceFieldsProps {
  readonly title: string
  readonly place: Place
  /** Left out where the height has a field of its own. */
  readonly heightHidden?: boolean
  readonly change: (place: Partial<Place>) => MakeEdit
}

/** A place from the T on the floor: across to camera right, back towards the backdrop, up. */
export function PlaceFields({ title, place, heightHidden = false, change }: PlaceFieldsProps) {
  return (
    <fieldset className="panel-place">
      <legend>{title}</legend>
      <div className="panel-grid">
        <LengthField label="To camera right" value={place.xMetres} change={(xMetres) => change({ xMetres })} />
        <LengthField label="Towards the backdrop" value={place.yMetres} change={(yMetres) => change({ yMetres })} />
        {!heightHidden && <LengthField label="Up" value={place.zMetres} change={(zMetres) => change({ zMetres })} />}
      </div>
    </fieldset>
  )
}
