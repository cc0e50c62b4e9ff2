import { useMemo, useState } from 'react'
import { addGel } from '../../shared-core/plan/edits/kit.ts'
import type { GelSource } from '../../shared-core/plan/schema/kit.ts'
import { Choice } from '../controls/Choice.tsx'
import { usePlanEdit } from '../session/usePlanEdit.ts'
import { gelEffect, type GelViewing } from './gelEffect.ts'
import { OwnSheetFields } from './OwnSheetFields.tsx'
import { startSources, usualName } from './ownSheetStart.ts'

const kinds = [
  { value: 'family', label: 'Hue' },
  { value: 'mired', label: 'Warm or cool' },
  { value: 'neutral', label: 'Neutral' },
  { value: 'rows', label: 'Measured' },
  { value: 'declared', label: 'Declared' },
] as const satisfies readonly { readonly value: GelSource['from']; readonly label: string }[]

interface OwnSheetProps {
  readonly viewing: GelViewing
  readonly onDone: () => void
}

/** A sheet of one's own: from a hue family, a shift, a loss, a measurement, or a colour somebody declares. */
export function OwnSheet({ viewing, onDone }: OwnSheetProps) {
  const edit = usePlanEdit()
  const [source, setSource] = useState<GelSource | null>(startSources.family)
  const [kind, setKind] = useState<GelSource['from']>('family')
  const [name, setName] = useState('')
  const given = name.trim() === '' && source ? usualName(source) : name.trim()
  const effect = useMemo(() => (source ? gelEffect([{ name: given, source }], viewing) : null), [source, given, viewing])

  function choose(next: GelSource['from']): void {
    setKind(next)
    setSource(startSources[next])
  }

  function put(): void {
    if (source && edit((plan) => addGel(plan, { name: given, source, sheets: 1 }))) onDone()
  }

  return (
    <section className="own-sheet" aria-label="Make a sheet">
      <Choice label="From" labelHidden value={kind} options={kinds} onChoose={choose} />
      <OwnSheetFields key={kind} kind={kind} source={source} onSource={setSource} />
      {effect && (
        <p className="own-sheet-effect">
          <span className="gel-card-patches" aria-hidden>
            <span style={{ background: effect.onWhite }} />
            <span style={{ background: effect.onSkin }} />
          </span>
          <span>
            {effect.words} · meter −{effect.meterLossStops.toFixed(1)} · white-out {effect.whiteOutStops.toFixed(1)}
          </span>
        </p>
      )}
      <div className="own-sheet-put">
        <label className="number-field">
          <span className="number-field-label">Name on the sheet</span>
          <input className="number-field-input" maxLength={120} value={name} placeholder={source ? usualName(source) : ''} onChange={(event) => setName(event.currentTarget.value)} />
        </label>
        <button type="button" className="button button-main" disabled={!source} onClick={put}>
          Put it in the drawer
        </button>
      </div>
    </section>
  )
}
