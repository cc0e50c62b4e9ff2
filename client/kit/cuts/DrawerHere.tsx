import { Plus, Trash2 } from 'lucide-react'
import { ROLL_LENGTH_MILLIMETRES, ROLL_WIDTH_MILLIMETRES } from '../../../shared-core/kit/gelStock.ts'
import { newId } from '../../../shared-core/plan/newId.ts'
import type { Gel } from '../../../shared-core/plan/schema/kit.ts'
import type { RigEdit } from '../../../shared-core/rig/rig.ts'
import type { GelSheet } from '../../../shared-core/rig/sheets.ts'
import { NumberField } from '../../controls/NumberField.tsx'
import { Section } from '../../controls/Section.tsx'
import { TextField } from '../../controls/TextField.tsx'
import { lengthIn, plainQuantity } from '../../panels/quantities.ts'
import { useRig, useRigStore } from '../../rig/useRig.ts'
import { useBoard } from '../../session/useBoard.ts'

interface DrawerHereProps {
  readonly gelId: string
  readonly gel: Gel
}

/** The real sheets and rolls of one gel: what is left of each, from which batch, how long it has been in use. */
export function DrawerHere({ gelId, gel }: DrawerHereProps) {
  const sheets = useRig(({ rig }) => rig.sheets)
  const mayEdit = useBoard((board) => board.mayEdit)
  const rig = useRigStore()
  const own = Object.entries(sheets).filter(([, sheet]) => sheet.gelId === gelId).sort(([a], [b]) => (a < b ? -1 : 1))
  const whole: GelSheet = {
    gelId, form: 'sheet', widthMetres: gel.sheetWidthMetres, heightMetres: gel.sheetHeightMetres, batch: gel.batch, hoursUsed: 0,
  }
  const add = (...entries: readonly GelSheet[]) =>
    rig.getState().write(entries.map((entry): RigEdit => ({ kind: 'sheets', key: newId(), entry })))
  const counted = Array.from({ length: gel.sheets }, () => whole)
  return (
    <Section title="In the drawer" gist={own.length > 0 ? `${own.length} ${own.length === 1 ? 'piece' : 'pieces'}` : `${gel.sheets} whole, as the plan counts`}>
      {own.map(([id, sheet]) => <SheetFields key={id} id={id} sheet={sheet} />)}
      {own.length === 0 && (
        <p className="page-soft">Entered one by one, each keeps its size, batch and hours; until then the plan’s count stands.</p>
      )}
      {mayEdit && (
        <div className="kit-row">
          {own.length === 0 && gel.sheets > 0 && (
            <button type="button" className="button button-lined" onClick={() => add(...counted)}>Enter the {gel.sheets}</button>
          )}
          <button type="button" className="button button-lined" onClick={() => add(...(own.length === 0 ? counted : []), whole)}>
            <Plus size={15} aria-hidden /> Sheet
          </button>
          <button
            type="button" className="button button-lined"
            onClick={() => add(...(own.length === 0 ? counted : []),
              { ...whole, form: 'roll', widthMetres: ROLL_WIDTH_MILLIMETRES / 1_000, heightMetres: ROLL_LENGTH_MILLIMETRES / 1_000 })}
          >
            <Plus size={15} aria-hidden /> Roll
          </button>
        </div>
      )}
    </Section>
  )
}

const hours = plainQuantity('h', 0.5, 1)

function SheetFields({ id, sheet }: { readonly id: string; readonly sheet: GelSheet }) {
  const units = useBoard((board) => board.units)
  const mayEdit = useBoard((board) => board.mayEdit)
  const rig = useRigStore()
  const length = lengthIn(units)
  const set = (patch: Partial<GelSheet>) => rig.getState().write([{ kind: 'sheets', key: id, entry: { ...sheet, ...patch } }])
  const size = (metres: number) => Math.min(30, Math.max(0.01, metres))
  const common = { disabled: !mayEdit, format: length.format, parse: length.parse, step: length.step }
  return (
    <div className="drawer-sheet" role="group" aria-label={sheet.form === 'roll' ? 'Roll' : 'Sheet'}>
      <NumberField {...common} label={sheet.form === 'roll' ? 'Roll, wide' : 'Sheet, wide'} value={sheet.widthMetres} onDone={(metres) => set({ widthMetres: size(metres) })} />
      <NumberField {...common} label={sheet.form === 'roll' ? 'Left on it' : 'High'} value={sheet.heightMetres} onDone={(metres) => set({ heightMetres: size(metres) })} />
      <TextField label="Batch" value={sheet.batch} maxLength={120} disabled={!mayEdit} onDone={(batch) => set({ batch })} />
      <NumberField
        label="In use" value={sheet.hoursUsed} format={hours.format} parse={hours.parse} step={hours.step} disabled={!mayEdit}
        onDone={(value) => set({ hoursUsed: Math.min(10_000, Math.max(0, value)) })}
      />
      {mayEdit && (
        <button type="button" className="button button-bare" aria-label="Take it out of the drawer" onClick={() => rig.getState().write([{ kind: 'sheets', key: id, entry: null }])}>
          <Trash2 size={16} aria-hidden />
        </button>
      )}
    </div>
  )
}
