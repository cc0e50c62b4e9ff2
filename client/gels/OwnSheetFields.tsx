import { capital } from '../../shared-core/plan/capital.ts'
import { gelFamilies, type GelSource } from '../../shared-core/plan/schema/kit.ts'
import { declaredGel } from '../../shared-core/spectra/gel/declared.ts'
import { ChoiceList } from '../controls/ChoiceList.tsx'
import { Slider } from '../controls/Slider.tsx'
import { SwatchField } from '../controls/SwatchField.tsx'
import { MeasuredRows } from './MeasuredRows.tsx'

interface OwnSheetFieldsProps {
  readonly kind: GelSource['from']
  readonly source: GelSource | null
  readonly onSource: (source: GelSource | null) => void
}

const families = gelFamilies.map((family) => ({ value: family, label: capital(family) }))

/** What has to be said for each kind of sheet. */
export function OwnSheetFields({ kind, source, onSource }: OwnSheetFieldsProps) {
  if (kind === 'rows') return <MeasuredRows rows={source?.from === 'rows' ? source.rows.length : 0} onRows={(rows) => onSource(rows && { from: 'rows', rows: rows.map(([nm, share]) => [nm, share]) })} />
  switch (source?.from) {
    case 'family':
      return (
        <div className="own-sheet-fields">
          <ChoiceList label="Hue" value={source.family} options={families} onChoose={(family) => onSource({ ...source, family })} />
          <NumberSlider label="Density" value={source.density} min={0.2} max={3} step={0.1} format={(value) => `${value.toFixed(1)} × the usual sheet`} onChange={(density) => onSource({ ...source, density })} />
        </div>
      )
    case 'mired':
      return <NumberSlider label="Shift, warmer to the right" value={source.shiftMired} min={-250} max={250} step={5} format={(value) => `${value > 0 ? '+' : value < 0 ? '−' : ''}${Math.abs(value)} mired`} onChange={(shiftMired) => onSource({ ...source, shiftMired })} />
    case 'neutral':
      return <NumberSlider label="Loss" value={source.lossStops} min={0} max={6} step={0.1} format={(value) => `${value.toFixed(1)} stops`} onChange={(lossStops) => onSource({ ...source, lossStops })} />
    case 'declared': {
      const made = declaredGel(source)
      return (
        <div className="own-sheet-fields">
          <SwatchField label="Seen through it, on white" value={source.colour} onHold={(colour) => colour !== null && onSource({ ...source, colour })} onDone={(colour) => onSource({ ...source, colour })} />
          <NumberSlider label="The meter loses" value={source.lossStops} min={0} max={8} step={0.1} format={(value) => `${value.toFixed(1)} stops`} onChange={(lossStops) => onSource({ ...source, lossStops })} />
          {!made.reached && <p className="own-sheet-words">No sheet of that colour can lose so little: the nearest loses {made.lossStops.toFixed(1)}.</p>}
        </div>
      )
    }
    default:
      return null
  }
}

interface NumberSliderProps {
  readonly label: string
  readonly value: number
  readonly min: number
  readonly max: number
  readonly step: number
  readonly format: (value: number) => string
  readonly onChange: (value: number) => void
}

function NumberSlider({ onChange, ...rest }: NumberSliderProps) {
  const rounded = (value: number) => onChange(Math.round(value * 100) / 100)
  return <Slider {...rest} onHold={rounded} onDone={rounded} />
}
