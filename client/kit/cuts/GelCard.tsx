import { useMemo } from 'react'
import type { GelLayout } from '../../../shared-core/kit/cutLayout.ts'
import { gelEffect } from '../../gels/gelEffect.ts'
import { useGelViewing } from '../../gels/useGelViewing.ts'
import { useBoard } from '../../session/useBoard.ts'
import { CannotRow, TooLargeChoice } from './TooLarge.tsx'
import { DrawerHere } from './DrawerHere.tsx'
import { GelPattern } from './GelPattern.tsx'
import { SheetDrawing } from './SheetDrawing.tsx'

interface GelCardProps {
  readonly layout: GelLayout
  /** Which of the page's gels: each has a pattern of its own, so that they are told apart in grey. */
  readonly index: number
}

/** One gel: its sheets with their cuts, what fits none of them, and what is in the drawer. */
export function GelCard({ layout, index }: GelCardProps) {
  const plan = useBoard((board) => board.plan)
  const viewing = useGelViewing(null)
  const gel = plan.gels[layout.gelId]
  const effect = useMemo(() => (gel ? gelEffect([gel], viewing) : null), [gel, viewing])
  if (gel === undefined || effect === null) return null
  const { sheets, sheetsToBuy, rollsToBuy, cannot, mixedLookIds } = layout
  return (
    <section className="page-panel kit-card gel-cuts-card" aria-label={gel.name}>
      <h3>
        <GelPattern index={index} colour={effect.onWhite} />
        {gel.name} <span className="page-soft">{effect.words}</span>
      </h3>
      <p className="page-soft">
        {[`${sheets.length} ${sheets.length === 1 ? 'sheet' : 'sheets'} cut`, buyWords(sheetsToBuy, 'sheet'), buyWords(rollsToBuy, 'roll')].filter((words) => words !== '').join(', ')}
      </p>
      {mixedLookIds.length > 0 && (
        <p className="cuts-care">
          {mixedLookIds.map((id) => plan.looks[id]?.name).join(', ')}: cut from more than one batch, or from old sheets and new. Batches of one name differ: measure that they match, or take all of a look from one.
        </p>
      )}
      {cannot.map(({ cut, ways }) => <CannotRow key={cut.id} cut={cut} ways={ways} />)}
      <ul className="cut-sheets">
        {sheets.map((sheet, number) => (
          <SheetDrawing key={sheet.stock.id} sheet={sheet} number={number + 1} colour={effect.onWhite} gelId={layout.gelId} index={index} />
        ))}
      </ul>
      <TooLargeChoice gelId={layout.gelId} isAsked={cannot.length > 0} />
      <DrawerHere gelId={layout.gelId} gel={gel} />
    </section>
  )
}

const buyWords = (count: number, what: string): string => (count === 0 ? '' : `${count} ${what}${count === 1 ? '' : 's'} to buy`)
