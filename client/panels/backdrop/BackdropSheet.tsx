import { changeBackdrop } from '../../../shared-core/plan/edits/look.ts'
import type { Backdrop } from '../../../shared-core/plan/schema/look.ts'
import { WhiteBehindHere } from '../../ask/white/WhiteBehindHere.tsx'
import { Choice } from '../../controls/Choice.tsx'
import { backgroundInWords } from '../../frame/backgroundWords.ts'
import { useBoard } from '../../session/useBoard.ts'
import { usePlanEdit, type MakeEdit } from '../../session/usePlanEdit.ts'
import { CareHere, SnagsHere } from '../AboutThis.tsx'
import { LengthField, PlanSwatch } from '../planFields.tsx'
import { PanelHead } from '../PanelHead.tsx'
import { paperSwatches } from '../usualSwatches.ts'
import { BackgroundSpots } from './BackgroundSpots.tsx'

const kinds = [
  { value: 'paper', label: 'Paper' },
  { value: 'none', label: 'None: the wall' },
] as const

const intents = [
  { value: 'clean-white', label: 'Clean white' },
  { value: 'even-colour', label: 'Even colour' },
  { value: 'glow', label: 'Glow' },
  { value: 'free', label: 'Free' },
] as const

/** What hangs behind, what it should become, and whether it does. */
export function BackdropSheet() {
  const backdrop = useBoard((board) => board.shown.looks[board.lookId]?.backdrop)
  const background = useBoard((board) => board.prediction.background)
  const areas = useBoard((board) => board.prediction.areas)
  const mayEdit = useBoard((board) => board.mayEdit)
  const edit = usePlanEdit()
  if (!backdrop) return null
  const set = <Key extends keyof Backdrop>(key: Key) => (value: Backdrop[Key]): MakeEdit => (plan, lookId) => changeBackdrop(plan, lookId, { [key]: value })

  return (
    <div className="panel">
      <PanelHead title="Backdrop" gist={backgroundInWords({ background, areas }, backdrop.intent)} />
      <SnagsHere id="backdrop" />
      <WhiteBehindHere />
      <BackgroundSpots background={background} />
      <CareHere id="backdrop" />
      <div className="panel-grid panel-first">
        <Choice label="It should be" value={backdrop.intent} options={intents} disabled={!mayEdit} onChoose={(intent) => edit(set('intent')(intent))} />
        <Choice label="Hung up" value={backdrop.kind} options={kinds} disabled={!mayEdit} onChoose={(kind) => edit(set('kind')(kind))} />
        <LengthField label="Behind the T" value={backdrop.yMetres} change={set('yMetres')} />
        <LengthField label="Width" value={backdrop.widthMetres} change={set('widthMetres')} />
        <LengthField label="Centre, to camera right" value={backdrop.centreXMetres} change={set('centreXMetres')} />
        <LengthField label="Top" value={backdrop.topMetres} change={set('topMetres')} />
        <PlanSwatch label="Colour" value={backdrop.swatch} usual={paperSwatches} change={set('swatch')} />
      </div>
    </div>
  )
}
