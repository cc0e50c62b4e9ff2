import type { LadderLayout } from '../../ladder/ladderLayout.ts'
import { NoteMark } from './NoteMark.tsx'
import './PinnedMarks.css'
import { usePinnedTo } from './PinnedMarks.tsx'

/** The notes on the Ladder, one mark at each light's tape and each area that has any: the newest that is not read, or else the last. */
export function LadderNotes({ layout: { lights, areas, columns } }: { readonly layout: LadderLayout }) {
  return (
    <div className="ladder-notes">
      {lights.map(({ thing, labelPixels }) => <At key={thing.id} of="light" id={thing.id} x={columns.tapeLeft - 10} y={labelPixels} />)}
      {areas.map(({ thing: { area }, labelPixels }) => <At key={area.id} of="area" id={area.id} x={columns.patchRight + 10} y={labelPixels} />)}
    </div>
  )
}

function At({ of, id, x, y }: { readonly of: 'light' | 'area'; readonly id: string; readonly x: number; readonly y: number }) {
  const pinned = usePinnedTo(of, id)
  const shown = pinned.findLast(({ isNew }) => isNew) ?? pinned.at(-1)
  if (shown === undefined) return null
  return <NoteMark thread={shown.thread} isNew={shown.isNew} className="ladder-notes-mark" style={{ left: x, top: y }} />
}
