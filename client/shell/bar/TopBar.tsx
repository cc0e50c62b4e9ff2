import { ChevronDown, Redo2, Undo2 } from 'lucide-react'
import { useState } from 'react'
import { PlainWordsButton } from '../../agree/client/PlainWordsButton.tsx'
import { LockState } from '../../agree/lock/LockState.tsx'
import { AskButton } from '../../ask/AskHere.tsx'
import { NotesButton } from '../../notes/pencil/NotesButton.tsx'
import { Popover } from '../../controls/Popover.tsx'
import { useBoard } from '../../session/useBoard.ts'
import { shortTopBar, useMedia } from '../useMedia.ts'
import { CameraLine } from './CameraLine.tsx'
import { ConnectionWords } from './ConnectionWords.tsx'
import { JobMenu } from './JobMenu.tsx'
import { LookMenu } from './LookMenu.tsx'
import { agreePages, dayPages } from './menuPages.ts'
import { PageMenu } from './PageMenu.tsx'
import { PeopleMenu } from './PeopleMenu.tsx'
import { SetWords } from './SetWords.tsx'
import './TopBar.css'

/** Job, look and camera on the left; who is here and what can be taken back on the right. */
export function TopBar() {
  const title = useBoard((board) => board.plan.title)
  const short = useMedia(shortTopBar)
  // A client builds nothing, and what they have in its place takes as much room.
  const isCrew = useBoard((board) => board.role !== 'client')
  return (
    <header className="top-bar">
      <h1 className="top-bar-title">{title === '' ? 'Untitled job' : title}</h1>
      <div className="top-bar-look">
        <LookMenu />
        <LockState />
      </div>
      <CameraLine />
      {short ? <SetMenu /> : <SetWords />}
      <PageMenu word="Agree" label="Agree on this look" pages={agreePages} />
      {isCrew && <PageMenu word="Set day" label="The set day" pages={dayPages} />}
      <div className="top-bar-right">
        <PlainWordsButton />
        <NotesButton />
        <AskButton />
        <ConnectionWords />
        <PeopleMenu />
        <UndoRedo />
        <JobMenu />
      </div>
    </header>
  )
}

/** The words of the set behind one word, where the bar is short. */
function SetMenu() {
  const [open, setOpen] = useState(false)
  return (
    <Popover
      label="The set"
      open={open}
      onOpen={setOpen}
      trigger={
        <button type="button" className="button top-bar-set">
          Set <ChevronDown size={14} aria-hidden />
        </button>
      }
    >
      <SetWords onChosen={() => setOpen(false)} />
    </Popover>
  )
}

/** One's own last edits back and forth. */
export function UndoRedo() {
  const undo = useBoard((board) => board.undo)
  const redo = useBoard((board) => board.redo)
  const canUndo = useBoard((board) => board.canUndo)
  const canRedo = useBoard((board) => board.canRedo)
  return (
    <div role="group" aria-label="Your own changes" className="undo-redo">
      <button type="button" className="button button-bare" aria-label="Undo" aria-disabled={!canUndo} onClick={() => canUndo && undo()}>
        <Undo2 size={17} aria-hidden />
      </button>
      <button type="button" className="button button-bare" aria-label="Redo" aria-disabled={!canRedo} onClick={() => canRedo && redo()}>
        <Redo2 size={17} aria-hidden />
      </button>
    </div>
  )
}
