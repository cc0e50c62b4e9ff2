import { changeCamera } from '../../../shared-core/plan/edits/look.ts'
import type { Camera } from '../../../shared-core/plan/schema/look.ts'
import { NumberField, type NumberFieldProps } from '../../controls/NumberField.tsx'
import { useBoard } from '../../session/useBoard.ts'
import { usePerform } from '../../session/usePerform.ts'
import { cameraEntries } from '../../panels/camera/cameraEntries.ts'
import './CameraLine.css'

/** Aperture, shutter, ISO and white balance, each to type over; the look hangs on all four. */
export function CameraLine() {
  const plan = useBoard((board) => board.plan)
  const lookId = useBoard((board) => board.lookId)
  const camera = useBoard((board) => board.shown.looks[board.lookId]?.camera)
  const mayEdit = useBoard((board) => board.mayEdit)
  const because = useBoard((board) => board.mayNotBecause)
  const hold = useBoard((board) => board.hold)
  const perform = usePerform()
  if (camera === undefined) return null

  function field(key: keyof typeof cameraEntries): NumberFieldProps {
    const change = (value: number) => changeCamera(plan, lookId, { [key]: value } satisfies Partial<Camera>)
    return {
      ...cameraEntries[key],
      labelHidden: true,
      value: camera?.[key] ?? 0,
      disabled: !mayEdit,
      because,
      className: 'camera-line-field',
      onDone: (value) => perform(change(value)),
      onHold: (value) => {
        const held = value === null ? null : change(value)
        hold(held?.ok === true ? held.edit : null)
      },
    }
  }

  return (
    <div className="camera-line" role="group" aria-label="Camera">
      <NumberField {...field('fNumber')} />
      <NumberField {...field('shutterSeconds')} />
      <NumberField {...field('isoSpeed')} />
      <NumberField {...field('whiteBalanceKelvin')} />
    </div>
  )
}
