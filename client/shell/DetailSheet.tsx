import { ChevronsDown, ChevronsUp, X } from 'lucide-react'
import { useEffect, useRef, useState } from 'react'
import { SidePanels } from '../panels/SidePanels.tsx'
import type { Selection } from '../session/board.ts'
import { useBoard } from '../session/useBoard.ts'
import './DetailSheet.css'

/** The sheet about the selected thing: comes up over the near end of the room, where the set is empty. */
export function DetailSheet() {
  const selection = useBoard((board) => board.selection)
  const select = useBoard((board) => board.select)
  const [tall, setTall] = useState(false)
  const sheet = useRef<HTMLElement>(null)

  useEffect(() => {
    sheet.current?.scrollTo({ top: 0 })
  }, [selection])

  if (selection === null) return null
  return (
    <aside ref={sheet} className="detail-sheet" data-tall={tall} aria-label={labelOf(selection)}>
      <div className="detail-sheet-buttons">
        <button
          type="button"
          className="button button-bare"
          aria-label={tall ? 'Make the sheet lower' : 'Make the sheet taller'}
          aria-pressed={tall}
          onClick={() => setTall(!tall)}
        >
          {tall ? <ChevronsDown size={17} aria-hidden /> : <ChevronsUp size={17} aria-hidden />}
        </button>
        <button type="button" className="button button-bare" aria-label="Close the sheet" onClick={() => select(null)}>
          <X size={17} aria-hidden />
        </button>
      </div>
      <SidePanels />
    </aside>
  )
}

function labelOf(selection: Selection): string {
  const names = {
    light: 'The light', piece: 'The piece', point: 'The point', area: 'The area', camera: 'Camera', subject: 'Subject',
    backdrop: 'Backdrop', room: 'Room', kit: 'Kit',
  } as const
  return names[selection.kind]
}
