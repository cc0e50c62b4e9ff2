import { changeFinish } from '../../../shared-core/plan/edits/look.ts'
import type { Finish } from '../../../shared-core/plan/schema/look.ts'
import { Slider } from '../../controls/Slider.tsx'
import { formatStops } from '../../../shared-core/plan/entry/stops.ts'
import { useBoard } from '../../session/useBoard.ts'
import { usePlanEdit } from '../../session/usePlanEdit.ts'

interface FinishRange {
  readonly key: keyof Finish
  readonly label: string
  readonly min: number
  readonly max: number
  readonly step: number
  readonly format: (value: number) => string
}

const ranges: readonly FinishRange[] = [
  { key: 'exposureStops', label: 'Exposure', min: -3, max: 3, step: 0.05, format: (value) => formatStops(value) },
  { key: 'contrast', label: 'Contrast', min: -0.5, max: 0.5, step: 0.01, format: (value) => (value === 0 ? 'as shot' : signedPercent(value)) },
  { key: 'whitePointStops', label: 'White point pulled by', min: 0, max: 2, step: 0.05, format: (value) => `${value.toFixed(2)} stop` },
  { key: 'blackPoint', label: 'Black point', min: 0, max: 0.1, step: 0.002, format: (value) => `${(value * 100).toFixed(1)} %` },
]

/** How the picture is finished after capture, with what the background still wants from it. */
export function FinishFields({ finish }: { readonly finish: Finish }) {
  const pull = useBoard((board) => board.prediction.background.whitePointPullStops)
  const verdict = useBoard((board) => board.prediction.background.verdict)
  const mayEdit = useBoard((board) => board.mayEdit)
  const edit = usePlanEdit()
  return (
    <>
      <div className="panel-grid panel-sliders">
        {ranges.map(({ key, ...range }) => (
          <Slider
            key={key}
            {...range}
            value={finish[key]}
            disabled={!mayEdit}
            onHold={(value) => edit.hold((plan, lookId) => changeFinish(plan, lookId, { [key]: value }))}
            onDone={(value) => edit((plan, lookId) => changeFinish(plan, lookId, { [key]: value }))}
          />
        ))}
      </div>
      {verdict !== 'white' && pull !== null && (
        <p className="panel-words">A white point pull of {pull.toFixed(2)} stop would clear the background; past about 0.7 it eats skin.</p>
      )}
    </>
  )
}

function signedPercent(value: number): string {
  return `${value > 0 ? '+' : '−'}${Math.round(Math.abs(value) * 100)} %`
}
