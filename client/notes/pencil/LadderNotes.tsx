import { useBoard } from '../../session/useBoard.ts'
import type { LadderLayout } from '../../ladder/ladderLayout.ts'
import type { PinnedThing } from '../engine/threads.ts'
import { NoteMark } from './NoteMark.tsx'
import './PinnedMarks.css'
import { pinnedTo } from './PinnedMarks.tsx'
import { useNoteList } from './useNoteList.ts'

/** The notes on the Ladder, one mark at each light's tape and each area that has any: the last that is not read, or else the last. */
export function LadderNotes({ layout: { lights, areas, columns } }: { readonly layout: LadderLayout }) {
  const notes = useNoteList()
  const lookId = useBoard((board) => board.lookId)

  function markAt(thing: PinnedThing & { readonly id: string }, left: number, top: number) {
    const pinned = pinnedTo(notes, lookId, thing)
    const shown = pinned.findLast(notes.isNew) ?? pinned.at(-1)
    if (shown === undefined) return null
    return <NoteMark key={`${thing.on} ${thing.id}`} thread={shown} isNew={notes.isNew(shown)} className="ladder-notes-mark" style={{ left, top }} />
  }

  return (
    <div className="ladder-notes">
      {lights.map(({ thing, labelPixels }) => markAt({ on: 'light', id: thing.id }, columns.tapeLeft - 10, labelPixels))}
      {areas.map(({ thing: { area }, labelPixels }) => markAt({ on: 'area', id: area.id }, columns.patchRight + 10, labelPixels))}
    </div>
  )
}
