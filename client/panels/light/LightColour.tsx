import { ArrowUp, X } from 'lucide-react'
import { changeLight, setGels } from '../../../shared-core/plan/edits/lights.ts'
import type { Light } from '../../../shared-core/plan/schema/look.ts'
import type { LightPrediction } from '../../../shared-core/predict/prediction.ts'
import { Choice } from '../../controls/Choice.tsx'
import { GelDrawerButton } from '../../gels/GelDrawerButton.tsx'
import { useBoard } from '../../session/useBoard.ts'
import { usePlanEdit } from '../../session/usePlanEdit.ts'

const gelPlaces = [
  { value: 'at-the-head', label: 'At the head' },
  { value: 'over-the-front', label: 'Over the front' },
] as const

interface LightColourProps {
  readonly lightId: string
  readonly light: Light
  readonly predicted: LightPrediction
}

/** The sheets from tube to subject, and what they do together to white, to this skin, to the meter and to the camera. */
export function LightColour({ lightId, light, predicted }: LightColourProps) {
  const gels = useBoard((board) => board.shown.gels)
  const mayEdit = useBoard((board) => board.mayEdit)
  const edit = usePlanEdit()
  const { gel } = predicted
  const put = (gelIds: readonly string[]) => edit((plan, lookId) => setGels(plan, lookId, lightId, gelIds))

  return (
    <>
      <div className="light-gels">
        <figure className="light-gels-patches">
          <span style={{ background: gel.onWhite }} />
          <span style={{ background: gel.onSkin }} />
          <figcaption>
            <b>{gel.words}</b>: on white, and on this skin
          </figcaption>
        </figure>
        <ol className="light-gels-stack" aria-label="Sheets from tube to subject">
          {light.gelIds.map((gelId, index) => (
            <li key={`${gelId} ${index}`}>
              <span>{gels[gelId]?.name ?? 'a sheet no longer in the drawer'}</span>
              {mayEdit && (
                <>
                  {index > 0 && (
                    <button type="button" className="button button-bare" aria-label={`${gels[gelId]?.name ?? 'Sheet'}: one nearer to the tube`} onClick={() => put(swapped(light.gelIds, index))}>
                      <ArrowUp size={14} aria-hidden />
                    </button>
                  )}
                  <button type="button" className="button button-bare" aria-label={`Take ${gels[gelId]?.name ?? 'the sheet'} off`} onClick={() => put(light.gelIds.filter((_, i) => i !== index))}>
                    <X size={14} aria-hidden />
                  </button>
                </>
              )}
            </li>
          ))}
          {light.gelIds.length === 0 && <li className="light-gels-clear">Clear: no sheet</li>}
          {mayEdit && light.gelIds.length < 4 && (
            <li>
              <GelDrawerButton lightId={lightId} />
            </li>
          )}
        </ol>
      </div>
      {!gel.clear && (
        <p className="panel-words">
          Meter −{gel.meterLossStops.toFixed(1)} · strongest channel −{gel.strongestChannelLossStops.toFixed(1)} · reads white {gel.whiteOutStops.toFixed(1)} past clear
        </p>
      )}
      <Choice
        label="Where the sheet goes"
        value={light.gelPlace}
        options={gelPlaces}
        disabled={!mayEdit}
        onChoose={(gelPlace) => edit((plan, lookId) => changeLight(plan, lookId, lightId, { gelPlace }))}
      />
    </>
  )
}

/** The list with the sheet at `index` put before the one it follows. */
function swapped(gelIds: readonly string[], index: number): readonly string[] {
  const next = [...gelIds]
  const [sheet] = next.splice(index, 1)
  if (sheet !== undefined) next.splice(index - 1, 0, sheet)
  return next
}
