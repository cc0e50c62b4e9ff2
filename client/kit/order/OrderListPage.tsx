import { Download } from 'lucide-react'
import { useMemo } from 'react'
import { orderCsv } from '../../../shared-core/kit/kitCsv.ts'
import { orderCases } from '../../../shared-core/kit/orderLine.ts'
import { orderList } from '../../../shared-core/kit/orderList.ts'
import { FullPage } from '../../controls/FullPage.tsx'
import { useRig } from '../../rig/useRig.ts'
import { useBoard } from '../../session/useBoard.ts'
import { useChosenLooks } from '../chosenLooks.ts'
import { LookChips } from '../LookChips.tsx'
import { saveCsv } from '../saveCsv.ts'
import { useLayouts } from '../useLayouts.ts'
import { OrderRow } from './OrderRow.tsx'
import { isPacked } from './packedState.ts'
import '../kit.css'
import './order.css'

/** All that the chosen looks need, case by case, to order by and to tick off in the van. */
export function OrderListPage({ onClose }: { readonly onClose: () => void }) {
  const plan = useBoard((board) => board.plan)
  const lookIds = useChosenLooks()
  const layouts = useLayouts()
  const packed = useRig(({ rig }) => rig.packed)
  const lines = useMemo(() => orderList(plan, lookIds, layouts), [plan, lookIds, layouts])
  const lookNames = useMemo(() => lookIds.map((id) => plan.looks[id]?.name ?? ''), [plan, lookIds])
  const done = lines.filter((line) => isPacked(line, packed[line.key])).length
  const short = lines.filter(({ missing }) => missing !== null && missing > 0).length
  return (
    <FullPage
      onClose={onClose} title="Order and pack"
      words="What the looks need at once at most, with spares. A tick is everybody’s, and is kept here without a network."
      tools={
        <button type="button" className="button button-lined" onClick={() => saveCsv(orderCsv(lines, lookNames), plan.title, 'order')}>
          <Download size={16} aria-hidden /> Order list as CSV
        </button>
      }
    >
      <div className="page-column kit-page">
        <div className="page-panel kit-top">
          <LookChips />
          <p role="status" className="kit-sum">
            <b>{done} of {lines.length}</b> packed{short > 0 ? <>; <b>{short}</b> {short === 1 ? 'line is' : 'lines are'} short</> : null}
          </p>
        </div>
        <div className="order-cases">
          {orderCases.map((name) => {
            const here = lines.filter((line) => line.case === name)
            if (here.length === 0) return null
            return (
              <section key={name} className="page-panel kit-card order-case" aria-label={name}>
                <h3>
                  {name} <span className="page-soft">{here.filter((line) => isPacked(line, packed[line.key])).length} of {here.length}</span>
                </h3>
                <ul>
                  {here.map((line) => <OrderRow key={line.key} line={line} lookNames={lookNames} entry={packed[line.key]} />)}
                </ul>
              </section>
            )
          })}
        </div>
        {lines.length === 0 && <p className="page-panel kit-card">No look is chosen: choose at least one above.</p>}
      </div>
    </FullPage>
  )
}
