import { Plus, Trash2 } from 'lucide-react'
import { addHead, changeHead, removeHead } from '../../../shared-core/plan/edits/kit.ts'
import type { Head } from '../../../shared-core/plan/schema/kit.ts'
import { Choice } from '../../controls/Choice.tsx'
import { ChoiceList } from '../../controls/ChoiceList.tsx'
import { Section } from '../../controls/Section.tsx'
import { TextField } from '../../controls/TextField.tsx'
import { useBoard } from '../../session/useBoard.ts'
import { usePlanEdit, type MakeEdit } from '../../session/usePlanEdit.ts'
import { cameraEntries } from '../camera/cameraEntries.ts'
import { QuantityField } from '../planFields.tsx'
import { millisecondsQuantity, plainQuantity, stopsQuantity } from '../quantities.ts'

const joules = plainQuantity('Ws', 10)
const count = plainQuantity('', 1)
const seconds = plainQuantity('s', 0.1, 1)

const notations = [
  { value: 'fraction', label: '1/4+0.3' },
  { value: 'stops-from-full', label: '−2.5 from full' },
  { value: 'scale-of-ten', label: '7.5 of ten' },
  { value: 'joules', label: '180 Ws' },
] as const

const steps = [
  { value: 'tenths', label: 'Tenths' },
  { value: 'thirds', label: 'Thirds' },
] as const

const lamps = [
  { value: 'none', label: 'None' },
  { value: 'led', label: 'LED' },
  { value: 'halogen', label: 'Halogen' },
] as const

/** The heads: how strong, in which steps, of which colour, how quick. */
export function KitHeads() {
  const heads = useBoard((board) => board.shown.heads)
  const mayEdit = useBoard((board) => board.mayEdit)
  const edit = usePlanEdit()
  return (
    <>
      {Object.entries(heads).map(([id, head]) => (
        <Section key={id} title={`${head.count} × ${head.name}`} gist={`${Math.round(head.fullEnergyJoules)} Ws, ${Math.log2(head.fullEnergyJoules / head.lowestEnergyJoules).toFixed(1)} stops`}>
          <HeadFields id={id} head={head} />
        </Section>
      ))}
      {mayEdit && (
        <button type="button" className="button button-lined panel-add" onClick={() => edit((plan) => addHead(plan, {}))}>
          <Plus size={15} aria-hidden /> Add a head
        </button>
      )}
    </>
  )
}

function HeadFields({ id, head }: { readonly id: string; readonly head: Head }) {
  const mayEdit = useBoard((board) => board.mayEdit)
  const edit = usePlanEdit()
  const set = <Key extends keyof Head>(key: Key) => (value: Head[Key]): MakeEdit => (plan) => changeHead(plan, id, { [key]: value })
  return (
    <div className="panel-grid">
      <TextField label="Name" value={head.name} maxLength={120} disabled={!mayEdit} onDone={(name) => edit(set('name')(name))} />
      <QuantityField label="How many" value={head.count} quantity={count} change={set('count')} />
      <QuantityField label="Full power" value={head.fullEnergyJoules} quantity={joules} change={set('fullEnergyJoules')} />
      <QuantityField label="Lowest power" value={head.lowestEnergyJoules} quantity={plainQuantity('Ws', 1, 1)} change={set('lowestEnergyJoules')} />
      <ChoiceList label="Its panel writes" value={head.powerNotation} options={notations} disabled={!mayEdit} onChoose={(notation) => edit(set('powerNotation')(notation))} />
      <Choice label="In steps of" value={head.stepStops > 0.2 ? 'thirds' : 'tenths'} options={steps} disabled={!mayEdit} onChoose={(step) => edit(set('stepStops')(step === 'thirds' ? 1 / 3 : 0.1))} />
      <QuantityField label="Light for each joule" value={head.efficacyLumenSecondsPerJoule} quantity={plainQuantity('lm s', 1)} change={set('efficacyLumenSecondsPerJoule')} />
      <QuantityField label="Learned from the meter" value={head.learnedStops} quantity={stopsQuantity} change={set('learnedStops')} />
      <QuantityField label="Colour at full" value={head.colourTemperatureKelvin} quantity={cameraEntries.whiteBalanceKelvin} change={set('colourTemperatureKelvin')} />
      <QuantityField label="Bluer at the lowest by" value={head.driftKelvinAtLowest} quantity={plainQuantity('K', 10)} change={set('driftKelvinAtLowest')} />
      <QuantityField label="t0.1 at full" value={head.t01SecondsAtFull} quantity={millisecondsQuantity} change={set('t01SecondsAtFull')} />
      <QuantityField label="Recycle at full" value={head.recycleSecondsAtFull} quantity={seconds} change={set('recycleSecondsAtFull')} />
      <Choice label="Modelling lamp" value={head.modellingLamp} options={lamps} disabled={!mayEdit} onChoose={(lamp) => edit(set('modellingLamp')(lamp))} />
      <QuantityField label="Lamp" value={head.modellingLampWatts} quantity={plainQuantity('W', 5)} change={set('modellingLampWatts')} />
      {mayEdit && (
        <button type="button" className="button panel-remove" onClick={() => edit((plan) => removeHead(plan, id))}>
          <Trash2 size={15} aria-hidden /> Remove
        </button>
      )}
    </div>
  )
}
