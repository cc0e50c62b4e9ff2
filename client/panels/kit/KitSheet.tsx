import { Without } from '../../ask/without/Without.tsx'
import { Choice } from '../../controls/Choice.tsx'
import { GelDrawer } from '../../gels/GelDrawer.tsx'
import { PanelHead } from '../PanelHead.tsx'
import { KitHeads } from './KitHeads.tsx'
import { KitModifiers } from './KitModifiers.tsx'
import { showKitDrawer, useKitDrawer, type KitDrawer } from './kitDrawer.ts'

const drawers = [
  { value: 'heads', label: 'Heads' },
  { value: 'modifiers', label: 'Modifiers' },
  { value: 'gels', label: 'Gel Drawer' },
  { value: 'without', label: 'Do without…' },
] as const satisfies readonly { readonly value: KitDrawer; readonly label: string }[]

/** What there is to light with. */
export function KitSheet() {
  const drawer = useKitDrawer()
  return (
    <div className="panel">
      <PanelHead title="Kit" />
      <div className="panel-first">
        <Choice label="Drawer" labelHidden value={drawer} options={drawers} onChoose={showKitDrawer} />
      </div>
      {drawer === 'heads' && <KitHeads />}
      {drawer === 'modifiers' && <KitModifiers />}
      {drawer === 'gels' && <GelDrawer lightId={null} />}
      {drawer === 'without' && <Without what={{ kind: 'anything' }} />}
    </div>
  )
}
