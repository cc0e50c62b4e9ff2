import { changeSubject } from '../../../shared-core/plan/edits/look.ts'
import type { Subject } from '../../../shared-core/plan/schema/look.ts'
import { MayDrift } from '../../ask/drift/MayDrift.tsx'
import { Choice } from '../../controls/Choice.tsx'
import { Section } from '../../controls/Section.tsx'
import { TextField } from '../../controls/TextField.tsx'
import { useBoard } from '../../session/useBoard.ts'
import { usePlanEdit, type MakeEdit } from '../../session/usePlanEdit.ts'
import { CareHere, SnagsHere } from '../AboutThis.tsx'
import { LengthField, PlanSwatch, QuantityField } from '../planFields.tsx'
import { PanelHead } from '../PanelHead.tsx'
import { angleQuantity } from '../quantities.ts'
import { clothSwatches, hairSwatches, lipSwatches } from '../usualSwatches.ts'
import { SkinFields } from './SkinFields.tsx'
import { TrueColours } from './TrueColours.tsx'
import { skinWords } from './skinWords.ts'

const postures = [
  { value: 'standing', label: 'Standing' },
  { value: 'sitting', label: 'Sitting' },
] as const

/** Who is in the picture: how they stand, and what their skin, hair, lips and cloth do with light. */
export function SubjectSheet() {
  const subject = useBoard((board) => board.shown.looks[board.lookId]?.subject)
  const mayEdit = useBoard((board) => board.mayEdit)
  const edit = usePlanEdit()
  if (!subject) return null
  const set = <Key extends keyof Subject>(key: Key) => (value: Subject[Key]): MakeEdit => (plan, lookId) => changeSubject(plan, lookId, { [key]: value })

  return (
    <div className="panel">
      <PanelHead title={subject.name === '' ? 'Subject' : subject.name} gist={`${skinWords(subject.skinItaDegrees)} skin`} />
      <SnagsHere id="subject" />
      <MayDrift thing="subject" id={null} />
      <CareHere id="subject" />
      <Section title="Skin" gist={skinWords(subject.skinItaDegrees)} open>
        <SkinFields subject={subject} />
      </Section>
      <Section title="Hair, lips, cloth" open>
        <div className="panel-grid panel-swatches">
          <PlanSwatch label="Hair" value={subject.hair} usual={hairSwatches} change={set('hair')} />
          <PlanSwatch label="Lips" value={subject.lips} usual={lipSwatches} change={set('lips')} />
          <PlanSwatch label="Cloth" value={subject.cloth} usual={clothSwatches} change={set('cloth')} />
        </div>
      </Section>
      <Section title="Must read true" open>
        <TrueColours />
      </Section>
      <Section title="Stand and turn" open>
        <div className="panel-grid">
          <TextField label="Name" value={subject.name} maxLength={120} disabled={!mayEdit} onDone={(name) => edit(set('name')(name))} />
          <Choice label="Posture" value={subject.posture} options={postures} disabled={!mayEdit} onChoose={(posture) => edit(set('posture')(posture))} />
          <LengthField label="Height" value={subject.heightMetres} change={set('heightMetres')} />
          <QuantityField label="Body turned, left is minus" value={subject.turnDegrees} quantity={angleQuantity} change={set('turnDegrees')} />
          <QuantityField label="Head turned besides" value={subject.headTurnDegrees} quantity={angleQuantity} change={set('headTurnDegrees')} />
          <QuantityField label="Chin up" value={subject.headTiltDegrees} quantity={angleQuantity} change={set('headTiltDegrees')} />
          <LengthField label="Off the T, to camera right" value={subject.xMetres} change={set('xMetres')} />
          <LengthField label="Off the T, to the backdrop" value={subject.yMetres} change={set('yMetres')} />
        </div>
      </Section>
    </div>
  )
}
