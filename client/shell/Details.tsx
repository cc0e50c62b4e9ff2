import { ChevronDown, ChevronsDown, ChevronsUp, ChevronUp } from 'lucide-react'
import { lazy, Suspense, useEffect, useRef } from 'react'
import { AskHere } from '../ask/AskHere.tsx'
import type { Selection } from '../session/board.ts'
import { Unhurried } from '../session/Unhurried.tsx'
import { useBoard } from '../session/useBoard.ts'
import { setSheet, useSheet } from '../session/pageStore.ts'
import './Details.css'
import { DetailLine } from './DetailLine.tsx'
import { Part } from './faults/Part.tsx'

const loadSidePanels = () => import('../panels/SidePanels.tsx')
const SidePanels = lazy(async () => ({ default: (await loadSidePanels()).SidePanels }))

/**
 * What is picked, in a line at the room's foot; pressed, the line lifts its sheet. The sheet stays as it was left, so
 * that picking a light to drag it does not cover the room, and going through all lights does not mean opening each.
 */
export function Details() {
  const selection = useBoard((board) => board.selection)
  const select = useBoard((board) => board.select)
  const chosenSheet = useSheet()
  const sheetElement = useRef<HTMLElement>(null)
  const sheet = selection !== null && isBySheetAlone(selection) && chosenSheet === 'shut' ? 'low' : chosenSheet

  useEffect(() => {
    sheetElement.current?.scrollTo({ top: 0 })
  }, [selection])

  // On hand before it is asked for: offline it could not come any more.
  useEffect(() => {
    void loadSidePanels()
  }, [])

  if (selection === null) return <p className="detail-line detail-line-idle">Nothing is picked. Touch a light, a flag, the camera or the subject</p>
  const shut = () => {
    setSheet('shut')
    if (isBySheetAlone(selection)) select(null)
  }
  return (
    <>
      {sheet !== 'shut' && (
        <aside ref={sheetElement} id="detail-sheet" className="detail-sheet" data-tall={sheet === 'tall'} aria-label="Details">
          <Part name="This sheet">
            <Suspense fallback={null}>
              <Unhurried><SidePanels /></Unhurried>
            </Suspense>
          </Part>
        </aside>
      )}
      <div className="detail-line">
        {sheet === 'shut' ? <Unhurried><DetailLine selection={selection} /></Unhurried> : <span className="detail-line-words" />}
        <AskHere selection={selection} />
        {sheet !== 'shut' && (
          <button
            type="button"
            className="button button-bare"
            aria-label={sheet === 'tall' ? 'Lower the sheet' : 'Raise the sheet'}
            onClick={() => setSheet(sheet === 'tall' ? 'low' : 'tall')}
          >
            {sheet === 'tall' ? <ChevronsDown size={17} aria-hidden /> : <ChevronsUp size={17} aria-hidden />}
          </button>
        )}
        <button
          type="button"
          className="button detail-line-open"
          aria-expanded={sheet !== 'shut'}
          aria-controls="detail-sheet"
          onClick={() => (sheet === 'shut' ? setSheet('low') : shut())}
        >
          Details
          {sheet === 'shut' ? <ChevronUp size={15} aria-hidden /> : <ChevronDown size={15} aria-hidden />}
        </button>
      </div>
    </>
  )
}

/** Kit and room have no other way to be worked on: picking them is asking for their sheet. */
function isBySheetAlone(selection: Selection): boolean {
  return selection.kind === 'kit' || selection.kind === 'room'
}
