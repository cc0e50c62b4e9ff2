import { useState } from 'react'
import { AskPanel } from '../ask/AskPanel.tsx'
import { ThatOneButton } from '../agree/lock/ThatOneButton.tsx'
import { PlainWordsButton } from '../agree/client/PlainWordsButton.tsx'
import { LockState } from '../agree/lock/LockState.tsx'
import { WhatItDid } from '../explain/WhatItDid.tsx'
import { FrameView } from '../frame/FrameView.tsx'
import { StopLadder } from '../ladder/StopLadder.tsx'
import { NotesButton } from '../notes/pencil/NotesButton.tsx'
import { NotesSheet } from '../notes/pencil/NotesSheet.tsx'
import { usePencil } from '../notes/pencil/pencilStore.ts'
import { SinglesStrip } from '../singles/SinglesStrip.tsx'
import { SnagList } from '../snags/SnagList.tsx'
import { useBoard } from '../session/useBoard.ts'
import { CameraLine } from './bar/CameraLine.tsx'
import { ConnectionWords } from './bar/ConnectionWords.tsx'
import { Details } from './Details.tsx'
import { JobWork } from './bar/JobWork.tsx'
import { LookMenu } from './bar/LookMenu.tsx'
import { agreePages, dayPages } from './bar/menuPages.ts'
import { PageMenuList } from './bar/PageMenu.tsx'
import { Part } from './faults/Part.tsx'
import { PeopleList } from './bar/PeopleMenu.tsx'
import './Phone.css'
import { Room } from './Room.tsx'
import { SetWords } from './bar/SetWords.tsx'
import { UndoRedo } from './bar/TopBar.tsx'

const flips = ['Frame', 'Ladder', 'Floor', 'Job'] as const
type Flip = (typeof flips)[number]

/** The board in one hand: one flip at a time, everything to press in the thumb's third. */
export function Phone() {
  const [flip, setFlip] = useState<Flip>('Frame')
  const hasPicked = useBoard((board) => board.selection !== null)
  const notesShown = usePencil((state) => state.listShown)
  const title = useBoard((board) => board.plan.title)
  const snagCount = useBoard((board) => board.prediction.snags.length)
  return (
    <div className="phone">
      <header className="phone-top">
        <h1 className="heard">{title}</h1>
        <LookMenu />
        <LockState />
        <PlainWordsButton />
        <ConnectionWords />
      </header>
      <main className="phone-flip" aria-label={flip}>
        {flip === 'Frame' && <FrameFlip />}
        {flip === 'Ladder' && (
          <div className="phone-ladder">
            <Part name="The ladder">
              <StopLadder />
            </Part>
            <CameraLine />
          </div>
        )}
        {flip === 'Floor' && <Room />}
        {flip === 'Job' && <JobFlip onDone={() => setFlip('Frame')} />}
        {notesShown ? flip !== 'Floor' && <NotesSheet /> : (flip === 'Frame' || flip === 'Ladder') && hasPicked && <Details />}
        <Part name="Ask">
          <AskPanel />
        </Part>
      </main>
      <div className="phone-said">
        <WhatItDid />
        <ThatOneButton />
      </div>
      <nav className="phone-bar" aria-label="Flips">
        {flips.map((name) => (
          <button key={name} type="button" className="phone-bar-flip" aria-current={flip === name ? 'page' : undefined} onClick={() => setFlip(name)}>
            {name}
            {name === 'Frame' && snagCount > 0 && <span className="phone-bar-snags">{snagCount} {snagCount === 1 ? 'snag' : 'snags'}</span>}
          </button>
        ))}
      </nav>
    </div>
  )
}

function FrameFlip() {
  return (
    <div className="phone-frame-flip">
      <div className="phone-frame">
        <Part name="The Frame">
          <FrameView />
        </Part>
      </div>
      <div className="phone-singles">
        <Part name="The strip of Singles">
          <SinglesStrip />
        </Part>
      </div>
      <Part name="The list of snags">
        <SnagList />
      </Part>
    </div>
  )
}

function JobFlip({ onDone }: { readonly onDone: () => void }) {
  const isCrew = useBoard((board) => board.role !== 'client')
  const title = useBoard((board) => board.plan.title)
  return (
    <div className="phone-job">
      <div className="phone-job-head">
        <h2 className="phone-job-title">{title}</h2>
        <UndoRedo />
      </div>
      <SetWords onChosen={onDone} />
      <NotesButton className="button-lined phone-job-notes" onOpened={onDone} />
      <h2>Agree</h2>
      <PageMenuList pages={agreePages} />
      {isCrew && (
        <>
          <h2>Set day</h2>
          <PageMenuList pages={dayPages} />
        </>
      )}
      <h2>People</h2>
      <PeopleList />
      <h2>This job</h2>
      <JobWork closeAfter={(button) => button} />
    </div>
  )
}
