import { Download } from 'lucide-react'
import { cutsCsv } from '../../../shared-core/kit/kitCsv.ts'
import { FullPage } from '../../controls/FullPage.tsx'
import { useBoard } from '../../session/useBoard.ts'
import { LookChips } from '../LookChips.tsx'
import { saveCsv } from '../saveCsv.ts'
import { useLayouts } from '../useLayouts.ts'
import { GelCard } from './GelCard.tsx'
import '../kit.css'
import './cuts.css'

/** Every cut of the chosen looks, drawn to one scale on the sheets and rolls that are in the drawer or to be bought. */
export function GelCutsPage({ onClose }: { readonly onClose: () => void }) {
  const plan = useBoard((board) => board.plan)
  const layouts = useLayouts()
  const toBuy = layouts.reduce((sum, { sheetsToBuy, rollsToBuy }) => sum + sheetsToBuy + rollsToBuy, 0)
  const begun = layouts.reduce((sum, { sheets }) => sum + sheets.length, 0)
  const unfit = layouts.reduce((sum, { cannot }) => sum + cannot.length, 0)
  return (
    <FullPage
      onClose={onClose} title="Gel cuts"
      words="Each cut covers its opening and 2 cm all round. The knife cuts straight from edge to edge, in the order of the numbers."
      tools={
        <button type="button" className="button button-lined" onClick={() => saveCsv(cutsCsv(plan, layouts), plan.title, 'gel cuts')}>
          <Download size={16} aria-hidden /> Cuts as CSV
        </button>
      }
    >
      <div className="page-column kit-page">
        <div className="page-panel kit-top">
          <LookChips />
          <p role="status" className="kit-sum">
            <b>{begun}</b> {begun === 1 ? 'sheet' : 'sheets'} cut, <b>{toBuy}</b> to buy{unfit > 0 ? <>; <b>{unfit}</b> {unfit === 1 ? 'cut fits' : 'cuts fit'} no sheet</> : null}
          </p>
        </div>
        <div className="gel-cuts">
          {layouts.map((layout, index) => <GelCard key={layout.gelId} layout={layout} index={index} />)}
        </div>
        {layouts.length === 0 && <p className="page-panel kit-card">No light that is on carries a gel in the chosen looks.</p>}
        <p className="kit-care">
          The usual care: a gel never touches tube or glass, lamp LED or off, air behind it, look at it often; heads cool before it is changed. The
          equipment’s manual, the studio’s rules and local code come first.
        </p>
      </div>
    </FullPage>
  )
}
