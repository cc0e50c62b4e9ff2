import { Camera, Check, ChevronDown } from 'lucide-react'
import { useId, useState } from 'react'
import { shotWords } from '../../shared-core/notebook/asShot.ts'
import { formatFNumber } from '../../shared-core/plan/entry/aperture.ts'
import { formatLength, parseLength } from '../../shared-core/plan/entry/length.ts'
import { parseMeterReading } from '../../shared-core/plan/entry/meterReading.ts'
import { formatPower, parsePower } from '../../shared-core/plan/entry/power.ts'
import type { Stand } from '../../shared-core/stands/stand.ts'
import { plannedNumbers, shotAsPlanned } from '../../shared-core/notebook/asShot.ts'
import { NumberField } from '../controls/NumberField.tsx'
import { useBoard } from '../session/useBoard.ts'
import type { AsShotNow } from './useAsShot.ts'
import type { StandPhotos } from './useStandPhotos.ts'

interface ShotStandProps {
  readonly stand: Stand
  readonly now: AsShotNow
  readonly photos: StandPhotos
}

/** One stand at wrap: as planned in one press, or its numbers, and its photographs. */
export function ShotStand({ stand, now, photos }: ShotStandProps) {
  const plan = useBoard((board) => board.plan)
  const units = useBoard((board) => board.units)
  const mayEdit = useBoard((board) => board.mayEdit)
  const [isOpen, setOpen] = useState(false)
  const fields = useId()
  const entry = now.entryOf(stand.id)
  const words = entry === undefined ? null : shotWords(entry, stand, plan, units)
  return (
    <li className="page-panel shot-card shot-stand">
      <div className="shot-head">
        <span className="tape shot-letter">{stand.name}</span>
        <div className="shot-words">
          {words === null ? <p className="page-soft">Not recorded</p>
            : words.length === 0 ? <p><Check size={16} aria-hidden /> As planned</p>
              : <ul>{words.map((one) => <li key={one}>{one}</li>)}</ul>}
          {entry !== undefined && <p className="page-soft">{entry.by.name}, {new Date(entry.by.atMs).toLocaleTimeString([], { hour: '2-digit', minute: '2-digit' })}</p>}
        </div>
      </div>
      <div className="shot-actions">
        {entry === undefined
          ? <button type="button" className="button button-lined" aria-disabled={!mayEdit} aria-label={`${stand.name} as planned`} onClick={() => now.record(stand, {})}>As planned</button>
          : <button type="button" className="button button-lined" aria-disabled={!mayEdit} aria-label={`Take back ${stand.name}`} onClick={() => now.forget(stand.id)}>Take back</button>}
        <button type="button" className="button button-lined" aria-expanded={isOpen} aria-controls={fields} aria-label={`Correct ${stand.name}`} onClick={() => setOpen(!isOpen)}>
          Correct <ChevronDown size={16} aria-hidden className="shot-chevron" data-open={isOpen} />
        </button>
        <label className="button button-lined shot-photo" aria-disabled={!mayEdit}>
          <Camera size={18} aria-hidden /> Photo
          <input
            type="file" accept="image/*" capture="environment" className="heard" aria-label={`Photograph ${stand.name}`} disabled={!mayEdit}
            onChange={({ target }) => { const [file] = target.files ?? []; target.value = ''; if (file !== undefined) photos.add(stand.id, file) }}
          />
        </label>
      </div>
      {photos.of(stand.id).length > 0 && (
        <ul className="shot-photos">
          {photos.of(stand.id).map(({ id, address, isWaiting }) => (
            <li key={id}><img src={address} alt={`${stand.name} at wrap`} />{isWaiting && <span className="page-soft">waits</span>}</li>
          ))}
        </ul>
      )}
      <div id={fields} hidden={!isOpen}>{isOpen && <Numbers stand={stand} now={now} />}</div>
    </li>
  )
}

/** What was planned stands beside what is typed. */
function Numbers({ stand, now }: Omit<ShotStandProps, 'photos'>) {
  const units = useBoard((board) => board.units)
  const mayEdit = useBoard((board) => board.mayEdit)
  const planned = plannedNumbers(stand)
  const shot = now.entryOf(stand.id)?.shot ?? shotAsPlanned(stand)
  const length = { format: (metres: number) => formatLength(metres, units), parse: (typed: string) => parseLength(typed, units), disabled: !mayEdit }
  const [one, other] = stand.taped.from
  return (
    <dl className="shot-numbers">
      {[one, other].map(({ mark }, i) => (
        <Row key={mark.id} label={`From ${mark.words}`} planned={length.format(planned.tapesMetres[i]!)}>
          <NumberField label={`From ${mark.words}, as shot`} labelHidden value={shot.tapesMetres[i]!} {...length} onDone={(metres) => now.record(stand, { tapesMetres: i === 0 ? [metres, shot.tapesMetres[1]] : [shot.tapesMetres[0], metres] })} />
        </Row>
      ))}
      <Row label="Height" planned={length.format(planned.heightMetres)}>
        <NumberField label="Height, as shot" labelHidden value={shot.heightMetres} {...length} onDone={(heightMetres) => now.record(stand, { heightMetres })} />
      </Row>
      {stand.kind === 'light' && (
        <>
          {planned.frontToMetres !== null && (
            <Row label={`Front to the ${stand.frontTo}`} planned={length.format(planned.frontToMetres)}>
              <NumberField label={`Front to the ${stand.frontTo}, as shot`} labelHidden value={shot.frontToMetres ?? planned.frontToMetres} {...length} onDone={(frontToMetres) => now.record(stand, { frontToMetres })} />
            </Row>
          )}
          {stand.head !== null && (
            <Row label="Power" planned={formatPower(stand.light.energyJoules, stand.head)}>
              <NumberField
                label="Power, as shot" labelHidden value={shot.energyJoules ?? stand.light.energyJoules} disabled={!mayEdit}
                format={(joules) => formatPower(joules, stand.head!)} parse={(typed) => parsePower(typed, stand.head!)} onDone={(energyJoules) => now.record(stand, { energyJoules })}
              />
            </Row>
          )}
          <GelRow stand={stand} now={now} gelIds={shot.gelIds} mayEdit={mayEdit} />
          <Row label={`Reading at the ${stand.frontTo}`} planned={planned.readingFNumber === null ? '–' : formatFNumber(planned.readingFNumber)}>
            <NumberField
              label="Reading, as shot" labelHidden value={shot.readingFNumber} placeholder="not read" format={formatFNumber} parse={(typed) => parseMeterReading(typed, now.fNumber)} disabled={!mayEdit}
              onDone={(readingFNumber) => now.record(stand, { readingFNumber })} onClear={() => now.record(stand, { readingFNumber: null })}
            />
          </Row>
        </>
      )}
    </dl>
  )
}

function GelRow({ stand, now, gelIds, mayEdit }: { readonly stand: Extract<Stand, { kind: 'light' }>; readonly now: AsShotNow; readonly gelIds: readonly string[]; readonly mayEdit: boolean }) {
  const gels = useBoard((board) => board.plan.gels)
  const named = (ids: readonly string[]): string => (ids.length === 0 ? 'Clear' : ids.map((id) => gels[id]?.name ?? id).join(' + '))
  const stacks = [[], ...Object.keys(gels).map((id) => [id]), stand.light.gelIds, gelIds]
  const options = new Map(stacks.map((ids) => [ids.join(' '), named(ids)]))
  return (
    <Row label="Gel" planned={named(stand.light.gelIds)}>
      <select aria-label="Gel, as shot" value={gelIds.join(' ')} disabled={!mayEdit} onChange={({ target }) => now.record(stand, { gelIds: target.value.split(' ').filter(Boolean) })}>
        {[...options].map(([ids, words]) => <option key={ids} value={ids}>{words}</option>)}
      </select>
    </Row>
  )
}

function Row({ label, planned, children }: { readonly label: string; readonly planned: string; readonly children: React.ReactNode }) {
  return (
    <div className="shot-row">
      <dt>{label}<span className="page-soft">planned {planned}</span></dt>
      <dd>{children}</dd>
    </div>
  )
}
