import { changeCamera, changeMeter } from '../../../shared-core/plan/edits/look.ts'
import type { Camera } from '../../../shared-core/plan/schema/look.ts'
import { MayDrift } from '../../ask/drift/MayDrift.tsx'
import { Choice } from '../../controls/Choice.tsx'
import { Section } from '../../controls/Section.tsx'
import { Switch } from '../../controls/Switch.tsx'
import { useBoard } from '../../session/useBoard.ts'
import { usePlanEdit, type MakeEdit } from '../../session/usePlanEdit.ts'
import { CareHere, SnagsHere } from '../AboutThis.tsx'
import { Facts } from '../Facts.tsx'
import { QuantityField } from '../planFields.tsx'
import { PanelHead } from '../PanelHead.tsx'
import { PlaceFields } from '../PlaceFields.tsx'
import { percentQuantity, plainQuantity, stopsQuantity } from '../quantities.ts'
import { cameraEntries } from './cameraEntries.ts'
import { aimedLine } from './aimedLine.ts'
import { cameraFacts } from './cameraFacts.ts'
import { FinishFields } from './FinishFields.tsx'

const receptors = [
  { value: 'dome', label: 'Dome' },
  { value: 'flat', label: 'Flat disc' },
] as const

const millimetres = plainQuantity('mm', 1)

/** The camera, the meter that is read for it, and how the picture is finished after it. */
export function CameraSheet() {
  const look = useBoard((board) => board.shown.looks[board.lookId])
  const prediction = useBoard((board) => board.prediction)
  const units = useBoard((board) => board.units)
  const mayEdit = useBoard((board) => board.mayEdit)
  const edit = usePlanEdit()
  if (!look) return null
  const { camera, meter, finish } = look
  const set = <Key extends keyof Camera>(key: Key) => (value: Camera[Key]): MakeEdit => (plan, lookId) => changeCamera(plan, lookId, { [key]: value })

  return (
    <div className="panel">
      <PanelHead title="Camera" gist={aimedLine(camera, units)} />
      <SnagsHere id="camera" />
      <Facts label="What the camera takes in" facts={cameraFacts(prediction, units)} />
      <MayDrift thing="camera" id={null} />
      <CareHere id="camera" />
      <Section title="Exposure" open>
        <div className="panel-grid">
          <QuantityField label="Aperture" value={camera.fNumber} quantity={cameraEntries.fNumber} change={set('fNumber')} />
          <QuantityField label="Shutter" value={camera.shutterSeconds} quantity={cameraEntries.shutterSeconds} change={set('shutterSeconds')} />
          <QuantityField label="Film speed" value={camera.isoSpeed} quantity={cameraEntries.isoSpeed} change={set('isoSpeed')} />
          <QuantityField label="White balance" value={camera.whiteBalanceKelvin} quantity={cameraEntries.whiteBalanceKelvin} change={set('whiteBalanceKelvin')} />
          <Switch label="White balance fixed" on={camera.whiteBalanceFixed} disabled={!mayEdit} onTurn={(on) => edit(set('whiteBalanceFixed')(on))} />
          <QuantityField label="Sync, shortest" value={camera.syncSeconds} quantity={cameraEntries.shutterSeconds} change={set('syncSeconds')} />
          <Switch label="Radio trigger" on={camera.radioTrigger} disabled={!mayEdit} onTurn={(on) => edit(set('radioTrigger')(on))} />
        </div>
      </Section>
      <Section title="Lens and place" gist={`${Math.round(camera.focalLengthMillimetres)} mm`} open>
        <div className="panel-grid">
          <QuantityField label="Focal length" value={camera.focalLengthMillimetres} quantity={millimetres} change={set('focalLengthMillimetres')} />
          <QuantityField label="Sensor wide, as held" value={camera.sensorWidthMillimetres} quantity={millimetres} change={set('sensorWidthMillimetres')} />
          <QuantityField label="Sensor high" value={camera.sensorHeightMillimetres} quantity={millimetres} change={set('sensorHeightMillimetres')} />
        </div>
        <PlaceFields title="Front of the lens" place={camera.place} change={(place) => (plan, lookId) => changeCamera(plan, lookId, { place })} />
        <PlaceFields title="Aimed at" place={camera.aim} change={(aim) => (plan, lookId) => changeCamera(plan, lookId, { aim })} />
      </Section>
      <Section title="Finish" gist="part of what is agreed">
        <FinishFields finish={finish} />
      </Section>
      <Section title="Meter and body" gist={meter.receptor === 'dome' ? 'dome' : 'flat disc'}>
        <div className="panel-grid">
          <Choice label="Areas are read with" value={meter.receptor} options={receptors} disabled={!mayEdit} onChoose={(receptor) => edit((plan, lookId) => changeMeter(plan, lookId, { receptor }))} />
          <QuantityField label="Meter’s constant, dome" value={meter.domeConstant} quantity={plainQuantity('', 1)} change={(domeConstant) => (plan, lookId) => changeMeter(plan, lookId, { domeConstant })} />
          <QuantityField label="Meter’s constant, flat" value={meter.flatConstant} quantity={plainQuantity('', 1)} change={(flatConstant) => (plan, lookId) => changeMeter(plan, lookId, { flatConstant })} />
          <QuantityField label="Clips later than rated" value={camera.headroomStops} quantity={stopsQuantity} change={set('headroomStops')} />
          <QuantityField label="Stray light in the lens" value={camera.veilingGlare} quantity={percentQuantity} change={set('veilingGlare')} />
        </div>
      </Section>
    </div>
  )
}
