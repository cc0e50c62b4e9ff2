import { FloorView } from '../floor/FloorView.tsx'
import { FrameView } from '../frame/FrameView.tsx'
import { StopLadder } from '../ladder/StopLadder.tsx'
import { SidePanels } from '../panels/SidePanels.tsx'
import { SinglesStrip } from '../singles/SinglesStrip.tsx'
import { SnagList } from '../snags/SnagList.tsx'
import './BoardPage.css'
import { TopBar } from './TopBar.tsx'
import { useNarrow } from './useNarrow.ts'

/** The whole board: a picture, the instrument beside it and the room; on a phone, three thumb-flips. */
export function BoardPage() {
  return useNarrow() ? <p>phone</p> : <Desk />
}

function Desk() {
  return (
    <div className="desk">
      <TopBar />
      <main className="desk-board">
        <div className="desk-frame"><FrameView /></div>
        <div className="desk-ladder"><StopLadder /></div>
        <div className="desk-floor">
          <FloorView />
          <SidePanels />
        </div>
        <div className="desk-singles"><SinglesStrip /></div>
        <div className="desk-snags"><SnagList /></div>
      </main>
    </div>
  )
}
