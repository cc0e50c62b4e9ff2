import { useMemo } from 'react'
import { formatStops } from '../../shared-core/plan/entry/stops.ts'
import { markTrueArea, planCleanPlate, unmarkTrueArea } from '../../shared-core/plan/edits/snags.ts'
import { trueColour, type TrueColour } from '../../shared-core/predict/trueColour.ts'
import { Switch } from '../controls/Switch.tsx'
import { useBoard } from '../session/useBoard.ts'
import { usePlanEdit } from '../session/usePlanEdit.ts'
import { plateLetters } from './plateLetters.ts'
import './TrueColourHere.css'

/** Whether the product's own colour is here, how far coloured light takes it, and the clean plate planned for it. */
export function TrueColourHere({ areaId }: { readonly areaId: string }) {
  const marked = useBoard((board) => board.shown.looks[board.lookId]?.mustReadTrue[areaId])
  const lights = useBoard((board) => board.prediction.lights)
  const mayEdit = useBoard((board) => board.mayEdit)
  const edit = usePlanEdit()
  return (
    <section className="true-colour" aria-label="Product colour">
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
      {marked && <TrueColourReading areaId={areaId} />}
      {marked && <p className="true-colour-plate">{marked.cleanPlatePlanned ? 'Clean plate: ' : 'A clean plate would be: '}{plateLetters(lights)}</p>}
    </section>
  )
}

/** The two patches, the shift of each channel and the difference in visible steps. */
export function TrueColourReading({ areaId }: { readonly areaId: string }) {
  const found = useTrueColour(areaId)
  if (found === null) return null
  if (found.byClearLight === null) return <p className="true-colour-words">No clear light reaches it: only a clean plate shows its own colour</p>
  return (
    <p className="true-colour-words">
      <span className="true-colour-patches" aria-hidden>
        <span style={{ background: found.shown }} />
        <span style={{ background: found.byClearLight }} />
      </span>
      <span>
        As lit, and by clear light: {found.difference!.toFixed(1)} visible steps apart. Red {formatStops(found.shiftStops![0])},
        green {formatStops(found.shiftStops![1])}, blue {formatStops(found.shiftStops![2])}
      </span>
    </p>
  )
}

function useTrueColour(areaId: string): TrueColour | null {
  const area = useBoard((board) => board.prediction.areas.find(({ id }) => id === areaId))
  const lights = useBoard((board) => board.prediction.lights)
  const taking = useBoard((board) => board.prediction.taking)
  const finish = useBoard((board) => board.shown.looks[board.lookId]?.finish)
  return useMemo(() => (area && finish ? trueColour(area, lights, taking, finish) : null), [area, lights, taking, finish])
}
