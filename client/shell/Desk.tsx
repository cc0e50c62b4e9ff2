import { FrameView } from '../frame/FrameView.tsx'
import { StopLadder } from '../ladder/StopLadder.tsx'
import { SinglesStrip } from '../singles/SinglesStrip.tsx'
import { SnagList } from '../snags/SnagList.tsx'
import './Desk.css'
import { Room } from './Room.tsx'
import { TopBar } from './TopBar.tsx'

/** The board on a laptop: picture, instrument, room; the lights' own pictures under them. */
export function Desk() {
  return (
    <div className="desk">
      <TopBar />
      <main className="desk-board">
        <div className="desk-row">
          <div className="desk-frame">
            <FrameView />
          </div>
          <div className="desk-ladder">
            <StopLadder />
          </div>
          <div className="desk-floor">
            <Room />
          </div>
        </div>
        <div className="desk-row">
          <div className="desk-singles">
            <SinglesStrip />
          </div>
          <div className="desk-snags">
            <SnagList />
          </div>
        </div>
      </main>
    </div>
  )
}
