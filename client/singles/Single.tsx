import type { LightPrediction } from '../../shared-core/predict/prediction.ts'
import { switchLight } from '../../shared-core/plan/edits/lights.ts'
import { Stepper } from '../controls/Stepper.tsx'
import { energyBeside } from '../floor/tapes/tapeText.ts'
import { usePowerHand } from '../ladder/usePowerHand.ts'
import { PinnedMarks } from '../notes/pencil/PinnedMarks.tsx'
import { useBoard } from '../session/useBoard.ts'
import { usePlanEdit } from '../session/usePlanEdit.ts'
import { GelChips } from './GelChips.tsx'
import { SinglePicture } from './SinglePicture.tsx'

/** One light: what it does, what it is, and how far its power goes. */
export function Single({ light }: { readonly light: LightPrediction }) {
  const selected = useBoard((board) => board.selection?.kind === 'light' && board.selection.id === light.id)
  const mayEdit = useBoard((board) => board.mayEdit)
  const because = useBoard((board) => board.mayNotBecause)
  const gelId = useBoard((board) => board.shown.looks[board.lookId]?.lights[light.id]?.gelIds[0])
  const edit = usePlanEdit()
  const hand = usePowerHand()
  const energy = energyBeside(light)

  return (
    <li className="single" data-on={light.on} data-selected={selected}>
      <SinglePicture light={light} />
      <PinnedMarks lightId={light.id} className="pinned-marks-single" />
      <div className="single-words">
        <p className="single-what">{light.summary}</p>
        <Stepper
          label={`Power of ${light.letter}`}
          stepWords="a step"
          disabled={!mayEdit}
          atHighest={light.stopsInHand < 0.01}
          atLowest={light.stopsAboveLowest < 0.01}
          onStep={(direction) => {
            hand.nudge(light.id, direction * 0.1)
            hand.done()
          }}
        >
          <output className="single-power">
            {light.powerText}
            {energy !== null && <span className="single-energy">{energy}</span>}
          </output>
        </Stepper>
        <GelChips gel={light.gel} pin={gelId === undefined ? null : `gel:${gelId}:${light.id}`} />
        <p className="single-hand">
          {inHandWords(light)}
          <button
            type="button"
            className="single-lift"
            aria-pressed={!light.on}
            aria-disabled={!mayEdit}
            aria-description={mayEdit ? undefined : (because ?? undefined)}
            aria-label={light.on ? `Lift out ${light.letter}: the Frame without it` : `Put back ${light.letter} into the Frame`}
            onClick={() => edit((plan, lookId) => switchLight(plan, lookId, light.id, !light.on))}
          >
            {light.on ? 'Lift out' : 'Put back'}
          </button>
        </p>
      </div>
    </li>
  )
}

/** Stops up to full power, or what the head cannot give. */
function inHandWords(light: LightPrediction): string {
  if (!light.on) return 'Lifted out'
  if (light.stopsInHand < -0.01) return `▲ ${(-light.stopsInHand).toFixed(1)} over full`
  if (light.stopsAboveLowest < -0.01) return `▼ ${(-light.stopsAboveLowest).toFixed(1)} too strong`
  return `${Math.abs(light.stopsInHand).toFixed(1)} in hand`
}
