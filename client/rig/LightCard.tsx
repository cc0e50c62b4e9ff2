import { gridWords } from '../../shared-core/ask/lightChangeWords.ts'
import { driftWords } from '../../shared-core/ask/whatMatters.ts'
import { formatLength } from '../../shared-core/plan/entry/length.ts'
import { formatSize } from '../../shared-core/plan/entry/size.ts'
import { setPower } from '../../shared-core/plan/edits/lights.ts'
import type { LightStand } from '../../shared-core/stands/stand.ts'
import { aimWords, airGapWords, cutWords, frontName } from '../../shared-core/stands/standWords.ts'
import { useLookAnswer } from '../ask/useLookAnswer.ts'
import { Stepper } from '../controls/Stepper.tsx'
import { powerOf } from '../panels/quantities.ts'
import { useBoard } from '../session/useBoard.ts'
import { usePlanEdit } from '../session/usePlanEdit.ts'
import { BigNumber, StandStep, TapeNumbers } from './StandSections.tsx'
import { TriggerFields } from './TriggerFields.tsx'

/** One light, in the order in which a hand builds it. */
export function LightCard({ stand }: { readonly stand: LightStand }) {
  const units = useBoard((board) => board.units)
  const { light, modifier, predicted, cautions, frontToMetres } = stand
  return (
    <div className="rig-card">
      <StandStep title={`${capital(light.support.replace('-', ' '))}`} cautions={cautions} kinds={['tall-stand', 'boom', 'large-modifier']}>
        <TapeNumbers taped={stand.taped} what="the middle of the front" />
        <BigNumber value={formatLength(stand.heightMetres, units)} words="floor to the centre of the front" />
        {frontToMetres !== null && (
          <BigNumber value={formatLength(frontToMetres, units)} words={<>front of the {frontName(stand)} to the <b>{stand.frontTo}</b></>} />
        )}
        <p className="rig-words">{aimWords(stand.aimed, units)}</p>
        <MattersMost lightId={stand.id} />
        {(light.sandbag || light.safetyCable) && (
          <p className="rig-words">{[light.sandbag ? 'Sandbag on the leg under the load' : '', light.safetyCable ? 'safety cable' : ''].filter(Boolean).join(', ')}.</p>
        )}
      </StandStep>
      <StandStep title="Modifier">
        <p className="rig-say">
          {modifier?.name ?? 'No modifier'} {light.grid.kind === 'none' ? 'without a grid' : gridWords(light.grid)}
        </p>
        <p className="rig-words">
          {modifier !== null && `${formatSize(modifier.widthMetres, modifier.heightMetres, units)}. `}
          On {stand.head?.name ?? 'a head that is not in the kit'}.
          {Math.abs(light.rollDegrees) >= 1 && ` Rolled ${Math.round(light.rollDegrees)}°.`}
        </p>
      </StandStep>
      <StandStep title="Gel" cautions={cautions} kinds={['hot-gel']}>
        {stand.gels.length === 0 ? <p className="rig-say">Clear: no gel</p> : (
          <>
            {stand.gels.map((one, i) => (
              <p key={i} className="rig-say">{one.gel.name}<span className="rig-cut">{cutWords(one, units)}</span></p>
            ))}
            <p className="rig-words">{light.gelPlace === 'at-the-head' ? 'At the head, all of the tube covered.' : 'Over the whole front.'} {airGapWords(units)}</p>
          </>
        )}
      </StandStep>
      <StandStep title="Power" cautions={cautions} kinds={['circuit', 'capacitor']}>
        <PowerSteps stand={stand} />
        <TriggerFields letter={stand.name} />
        <p className="rig-words">
          {stand.head?.supply === 'battery' ? 'On its battery.' : `Plug: ${stand.circuit ?? 'no circuit chosen yet; ask the photographer'}.`}
        </p>
      </StandStep>
      {predicted !== null && predicted.level.fullFNumber !== null && (
        <StandStep title="Alone, it should read" cautions={cautions} kinds={['flash-near-eyes']}>
          <BigNumber
            value={`${predicted.level.fullFNumber} and ${predicted.level.tenths}`}
            words={<>dome at the <b>{stand.frontTo}</b>, pointed at {stand.name}, ± {predicted.plusMinusStops.toFixed(1)} stop</>}
          />
        </StandStep>
      )}
    </div>
  )
}

/** The power, and a step up or down for a thumb in a glove: it changes the plan for everybody. */
function PowerSteps({ stand: { id, name, head, light, predicted } }: { readonly stand: LightStand }) {
  const mayEdit = useBoard((board) => board.mayEdit)
  const edit = usePlanEdit()
  if (head === null) return <p className="rig-say">{Math.round(light.energyJoules)} Ws</p>
  const { format, step } = powerOf(head)
  return (
    <Stepper
      label={`Power of ${name}`}
      stepWords="a step"
      disabled={!mayEdit}
      atLowest={light.energyJoules <= head.lowestEnergyJoules * 1.001}
      atHighest={light.energyJoules >= head.fullEnergyJoules * 0.999}
      onStep={(direction) => edit((plan, lookId) => setPower(plan, lookId, id, step(light.energyJoules, direction, 'plain')))}
    >
      <span className="rig-power">
        <span className="rig-number-value">{predicted?.powerText ?? format(light.energyJoules)}</span>
        <span className="rig-number-words">{light.energyJoules >= 100 ? Math.round(light.energyJoules) : light.energyJoules.toPrecision(2)} Ws</span>
      </span>
    </Stepper>
  )
}

/** What must be exact and what need not be, the most delicate first. */
function MattersMost({ lightId }: { readonly lightId: string }) {
  const units = useBoard((board) => board.units)
  const { answer } = useLookAnswer('what-matters')
  const found = answer?.find(({ thing, id }) => thing === 'light' && id === lightId)
  if (found === undefined) return null
  const [first, ...rest] = found.drifts.map((drift) => driftWords(drift, units))
  return <p className="rig-matters"><b>What matters: {first}.</b> {rest.slice(0, 3).join(', ')}.</p>
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1)
}
