import { capital } from '../../shared-core/plan/capital.ts'
import { MatchHere } from '../ask/match/MatchHere.tsx'
import { SpillsHere } from '../ask/spill/SpillsHere.tsx'
import { useBoard } from '../session/useBoard.ts'
import { CareHere, SnagsHere } from './AboutThis.tsx'
import { AreaReading } from './AreaReading.tsx'
import { PanelHead } from './PanelHead.tsx'
import { TrueColourHere } from './TrueColourHere.tsx'

/** One area of the picture: what it reads, what colour it takes, who lights it and who dilutes it. */
export function AreaSheet({ areaId }: { readonly areaId: string }) {
  const label = useBoard((board) => board.prediction.areas.find(({ id }) => id === areaId)?.label)
  if (label === undefined) return null
  return (
    <div className="panel">
      <PanelHead title={capital(label)} />
      <SnagsHere id={areaId} />
      <AreaReading areaId={areaId} />
      <SpillsHere areaId={areaId} />
      <MatchHere areaId={areaId} />
      <TrueColourHere areaId={areaId} />
      <CareHere id={areaId} />
    </div>
  )
}
