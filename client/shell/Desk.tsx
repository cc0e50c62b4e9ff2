import { AskPanel } from '../ask/AskPanel.tsx'
import { WhatItDid } from '../explain/WhatItDid.tsx'
import { FrameView } from '../frame/FrameView.tsx'
import { StopLadder } from '../ladder/StopLadder.tsx'
import { Unhurried } from '../session/Unhurried.tsx'
import { SinglesStrip } from '../singles/SinglesStrip.tsx'
import { SnagList } from '../snags/SnagList.tsx'
import './Desk.css'
import { Part } from './faults/Part.tsx'
import { Room } from './Room.tsx'
import { TopBar } from './bar/TopBar.tsx'

/** The board on a laptop: picture, instrument, room; the lights' own pictures under them. */
export function Desk() {
  return (
    <div className="desk">
      <TopBar />
      <main className="desk-board">
        <div className="desk-row">
          <div className="desk-frame">
            <Part name="The Frame">
              <Unhurried><FrameView /></Unhurried>
            </Part>
          </div>
          <div className="desk-ladder">
            <Part name="The ladder">
              <Unhurried><StopLadder /></Unhurried>
            </Part>
          </div>
          <div className="desk-floor">
            <Room />
          </div>
        </div>
        <WhatItDid />
        <div className="desk-row">
          <div className="desk-singles">
            <Part name="The strip of Singles">
              <Unhurried><SinglesStrip /></Unhurried>
            </Part>
          </div>
          <div className="desk-snags">
            <Part name="The list of snags">
              <Unhurried><SnagList /></Unhurried>
            </Part>
          </div>
        </div>
        <Part name="Ask">
          <AskPanel />
        </Part>
      </main>
    </div>
  )
}
