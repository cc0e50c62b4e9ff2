import { Plus, Trash2 } from 'lucide-react'
import { capital } from '../../../shared-core/plan/capital.ts'
import { addModifier, changeModifier, removeModifier } from '../../../shared-core/plan/edits/kit.ts'
import { formatSize } from '../../../shared-core/plan/entry/size.ts'
import { modifierKinds, type Modifier } from '../../../shared-core/plan/schema/kit.ts'
import { WithoutHere } from '../../ask/without/WithoutHere.tsx'
import { Choice } from '../../controls/Choice.tsx'
import { ChoiceList } from '../../controls/ChoiceList.tsx'
import { Section } from '../../controls/Section.tsx'
import { TextField } from '../../controls/TextField.tsx'
import { useBoard } from '../../session/useBoard.ts'
import { usePlanEdit, type MakeEdit } from '../../session/usePlanEdit.ts'
import { LengthField, QuantityField } from '../planFields.tsx'
import { plainQuantity } from '../quantities.ts'

const kindOptions = modifierKinds.map((kind) => ({ value: kind, label: kindInWords(kind) }))

const diffusers = [
  { value: '0', label: 'None' },
  { value: '1', label: 'One' },
  { value: '2', label: 'Two' },
] as const

/** What shapes the light: kind, size of the front, depth for fit, layers of diffusion. */
export function KitModifiers() {
  const modifiers = useBoard((board) => board.shown.modifiers)
  const units = useBoard((board) => board.units)
  const mayEdit = useBoard((board) => board.mayEdit)
  const edit = usePlanEdit()
  return (
    <>
      {Object.entries(modifiers).map(([id, modifier]) => (
        <Section key={id} title={`${modifier.count} × ${modifier.name}`} gist={`${kindInWords(modifier.kind)}, ${formatSize(modifier.widthMetres, modifier.heightMetres, units)}`}>
          <ModifierFields id={id} modifier={modifier} />
        </Section>
      ))}
      {mayEdit && (
        <button type="button" className="button button-lined panel-add" onClick={() => edit((plan) => addModifier(plan, {}))}>
          <Plus size={15} aria-hidden /> Add a modifier
        </button>
      )}
    </>
  )
}

function ModifierFields({ id, modifier }: { readonly id: string; readonly modifier: Modifier }) {
  const mayEdit = useBoard((board) => board.mayEdit)
  const isCarried = useBoard(({ plan, lookId }) => Object.values(plan.looks[lookId]?.lights ?? {}).some((light) => light.on && light.modifierId === id))
  const edit = usePlanEdit()
  const set = <Key extends keyof Modifier>(key: Key) => (value: Modifier[Key]): MakeEdit => (plan) => changeModifier(plan, id, { [key]: value })
  return (
    <div className="panel-grid">
      <TextField label="Name" value={modifier.name} maxLength={120} disabled={!mayEdit} onDone={(name) => edit(set('name')(name))} />
      <QuantityField label="How many" value={modifier.count} quantity={plainQuantity('', 1)} change={set('count')} />
      <ChoiceList label="Kind" value={modifier.kind} options={kindOptions} disabled={!mayEdit} onChoose={(kind) => edit(set('kind')(kind))} />
      <LengthField label="Front, across" value={modifier.widthMetres} change={set('widthMetres')} />
      <LengthField label="Front, high" value={modifier.heightMetres} change={set('heightMetres')} />
      <LengthField label="Depth behind it" value={modifier.depthMetres} change={set('depthMetres')} />
      <Choice
        label="Diffusers"
        value={diffusers[modifier.diffusers]?.value ?? '0'}
        options={diffusers}
        disabled={!mayEdit}
        onChoose={(layers) => edit(set('diffusers')(Number(layers)))}
      />
      {isCarried && <WithoutHere what={{ kind: 'modifier', id }} words="Do without it" />}
      {mayEdit && (
        <button type="button" className="button panel-remove" onClick={() => edit((plan) => removeModifier(plan, id))}>
          <Trash2 size={15} aria-hidden /> Remove
        </button>
      )}
    </div>
  )
}

function kindInWords(kind: string): string {
  return capital(kind.replace('umbrella-shoot-through', 'shoot-through umbrella').replace(/^umbrella-(.+)$/, '$1 umbrella').replaceAll('-', ' '))
}
