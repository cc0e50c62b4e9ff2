import { capital } from '../../shared-core/plan/capital.ts'
import { markTrueArea, planCleanPlate, unmarkTrueArea } from '../../shared-core/plan/edits/snags.ts'
import { MatchHere } from '../ask/match/MatchHere.tsx'
import { SpillsHere } from '../ask/spill/SpillsHere.tsx'
import { Switch } from '../controls/Switch.tsx'
import { useBoard } from '../session/useBoard.ts'
import { usePlanEdit } from '../session/usePlanEdit.ts'
import { CareHere, SnagsHere } from './AboutThis.tsx'
import { AreaReading } from './AreaReading.tsx'
import { PanelHead } from './PanelHead.tsx'

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
      <TrueColour areaId={areaId} />
      <CareHere id={areaId} />
    </div>
  )
}

/** Whether the product's own colour is here, and whether a clean plate is planned for it. */
function TrueColour({ areaId }: { readonly areaId: string }) {
  const marked = useBoard((board) => board.shown.looks[board.lookId]?.mustReadTrue[areaId])
  const mayEdit = useBoard((board) => board.mayEdit)
  const edit = usePlanEdit()
  return (
    <div className="panel-grid">
      <Switch
        label="Must read true"
        on={marked !== undefined}
        disabled={!mayEdit}
        onTurn={(on) => edit((plan, lookId) => (on ? markTrueArea : unmarkTrueArea)(plan, lookId, areaId))}
      />
      {marked && (
        <Switch
          label="Clean plate planned"
          on={marked.cleanPlatePlanned}
          disabled={!mayEdit}
          onTurn={(on) => edit((plan, lookId) => planCleanPlate(plan, lookId, areaId, on))}
        />
      )}
    </div>
  )
}
