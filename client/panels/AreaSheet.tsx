import { capital } from '../../shared-core/plan/capital.ts'
import { useBoard } from '../session/useBoard.ts'
import { CareHere, SnagsHere } from './AboutThis.tsx'
import { AreaReading } from './AreaReading.tsx'
import { PanelHead } from './PanelHead.tsx'

/** One area of the picture: what it reads, what colour it takes, who lights it and who dilutes it. */
export function AreaSheet({ areaId }: { readonly areaId: string }) {
  const label = useBoard((board) => board.prediction.areas.find(({ id }) => id === areaId)?.label)
  const spills = useBoard((board) => board.prediction.spills)
  const lights = useBoard((board) => board.prediction.lights)
  if (label === undefined) return null
  const letterOf = (lightId: string) => lights.find(({ id }) => id === lightId)?.letter ?? '?'
  const here = spills.filter((spill) => spill.areaId === areaId)
  return (
    <div className="panel">
      <PanelHead title={capital(label)} />
      <SnagsHere id={areaId} />
      <AreaReading areaId={areaId} />
      <CareHere id={areaId} />
      {here.map((spill) => (
        <p key={`${spill.ownerLightId} ${spill.diluterLightId}`} className="panel-words">
          {letterOf(spill.diluterLightId)} lies {spill.stopsUnder.toFixed(1)} stops under {letterOf(spill.ownerLightId)} here; {spill.thresholdStops.toFixed(1)} keeps the colour clean.
        </p>
      ))}
    </div>
  )
}
