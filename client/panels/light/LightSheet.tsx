import { Copy, Trash2 } from 'lucide-react'
import { changeLight, duplicateLight, removeLight, switchLight } from '../../../shared-core/plan/edits/lights.ts'
import { MayDrift } from '../../ask/drift/MayDrift.tsx'
import { WithoutHere } from '../../ask/without/WithoutHere.tsx'
import { Section } from '../../controls/Section.tsx'
import { Switch } from '../../controls/Switch.tsx'
import { TextField } from '../../controls/TextField.tsx'
import { useBoard } from '../../session/useBoard.ts'
import { usePlanEdit } from '../../session/usePlanEdit.ts'
import { CareHere, SnagsHere } from '../AboutThis.tsx'
import { Facts } from '../Facts.tsx'
import { PanelHead } from '../PanelHead.tsx'
import { LightColour } from './LightColour.tsx'
import { lightFacts } from './lightFacts.ts'
import { LightPlace } from './LightPlace.tsx'
import { LightPower } from './LightPower.tsx'
import { LightShape } from './LightShape.tsx'
import { LightTask } from './LightTask.tsx'

/** Everything about one light: what it gives now, and what gives it. */
export function LightSheet({ lightId }: { readonly lightId: string }) {
  const light = useBoard((board) => board.shown.looks[board.lookId]?.lights[lightId])
  // Of the plan itself: a look at the set without it must not take away what it is looked at from.
  const isBurning = useBoard((board) => board.plan.looks[board.lookId]?.lights[lightId]?.on)
  const predicted = useBoard((board) => board.prediction.lights.find(({ id }) => id === lightId))
  const units = useBoard((board) => board.units)
  const mayEdit = useBoard((board) => board.mayEdit)
  const select = useBoard((board) => board.select)
  const edit = usePlanEdit()
  if (!light || !predicted) return null

  function duplicate(): void {
    let copyId: string | null = null
    const written = edit((plan, lookId) => {
      const made = duplicateLight(plan, lookId, lightId)
      if (made.ok) copyId = made.lightId
      return made
    })
    if (written && copyId !== null) select({ kind: 'light', id: copyId })
  }

  return (
    <div className="panel">
      <PanelHead letter={light.letter} title={predicted.summary}>
        <Switch label="In the Frame" on={light.on} disabled={!mayEdit} onTurn={(on) => edit((plan, lookId) => switchLight(plan, lookId, lightId, on))} />
        <button type="button" className="button" onClick={duplicate}>
          <Copy size={15} aria-hidden /> Duplicate
        </button>
        <button type="button" className="button" onClick={() => edit((plan, lookId) => removeLight(plan, lookId, lightId)) && select(null)}>
          <Trash2 size={15} aria-hidden /> Remove
        </button>
      </PanelHead>
      <SnagsHere id={lightId} />
      <Facts label={`What ${light.letter} gives`} facts={lightFacts(predicted, units)} />
      <MayDrift thing="light" id={lightId} />
      {isBurning && <WithoutHere what={{ kind: 'light', id: lightId }} words="Do without it" />}
      <CareHere id={lightId} />
      <Section title="Power" gist={predicted.powerText} open>
        <LightPower lightId={lightId} light={light} />
      </Section>
      <Section title="Colour" gist={predicted.gel.name} open>
        <LightColour lightId={lightId} light={light} predicted={predicted} />
      </Section>
      <Section title="Shape" gist={light.grid.kind === 'none' ? 'no grid' : `${light.grid.kind} grid`}>
        <LightShape lightId={lightId} light={light} />
      </Section>
      <Section title="Place and aim">
        <LightPlace lightId={lightId} light={light} predicted={predicted} />
      </Section>
      <Section title="Task" gist={light.plane.replace('-', ' ')}>
        <LightTask lightId={lightId} light={light} />
        <TextField
          label="Note"
          value={light.note}
          maxLength={120}
          disabled={!mayEdit}
          onDone={(note) => edit((plan, lookId) => changeLight(plan, lookId, lightId, { note }))}
        />
      </Section>
    </div>
  )
}
