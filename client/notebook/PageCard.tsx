import { useState } from 'react'
import { coloursOf, type NotebookPage } from '../../shared-core/notebook/page.ts'
import { formatFNumber } from '../../shared-core/plan/entry/aperture.ts'
import { formatIso } from '../../shared-core/plan/entry/camera.ts'
import { formatLength } from '../../shared-core/plan/entry/length.ts'
import { LookCanvas } from '../frame/picture/LookCanvas.tsx'
import { useBoard } from '../session/useBoard.ts'

const PICTURE_WIDTH = 240

interface PageCardProps {
  readonly page: NotebookPage
  readonly onRebuild: () => void
  readonly onNote: (note: string) => void
  readonly onDrop: () => void
}

/** One kept look: its picture, where and when, its colours, what was noted. */
export function PageCard({ page, onRebuild, onNote, onDrop }: PageCardProps) {
  const units = useBoard((board) => board.units)
  const mayEdit = useBoard((board) => board.mayEdit)
  const [isDropping, setDropping] = useState(false)
  const { plan, lookId } = page
  const look = plan.looks[lookId]!
  const { camera } = look
  const aspect = camera.sensorWidthMillimetres / camera.sensorHeightMillimetres
  const { room } = plan
  const learned = [...Object.values(plan.heads), ...Object.values(plan.modifiers), ...Object.values(plan.gels)].filter(({ learnedStops }) => learnedStops !== 0)
  return (
    <article className="page-panel notebook-page" aria-label={look.name}>
      <div className="notebook-picture" style={{ aspectRatio: aspect }}>
        <LookCanvas plan={plan} lookId={lookId} widthPixels={PICTURE_WIDTH} heightPixels={Math.round(PICTURE_WIDTH / aspect)} description={`Predicted picture of ${look.name}`} />
      </div>
      <div className="notebook-words">
        <h3>{look.name}</h3>
        <p>{plan.title}, {new Date(page.keptMs).toLocaleDateString([], { dateStyle: 'long' })}</p>
        <p>{coloursOf(page) || 'clear light'}</p>
        <p className="page-soft">
          {room.name}, {formatLength(room.lengthMetres, units)} × {formatLength(room.widthMetres, units)} × {formatLength(room.heightMetres, units)}
          {' · '}{formatFNumber(camera.fNumber)}, {formatIso(camera.isoSpeed)}
        </p>
        {learned.length > 0 && <p className="page-soft">Learned from the meter: {learned.map(({ name, learnedStops }) => `${name} ${learnedStops > 0 ? '+' : '−'}${Math.abs(learnedStops).toFixed(1)}`).join(', ')}</p>}
        {page.shotPlan !== null && page.asShot.length === 0 && <p className="page-soft">Shot as planned</p>}
        {page.asShot.length > 0 && <details><summary>As shot, where it was otherwise</summary><ul>{page.asShot.map((words) => <li key={words}>{words}</li>)}</ul></details>}
        <NoteField note={page.note} onDone={onNote} />
        <div className="notebook-actions">
          <button type="button" className="button button-lined" aria-disabled={!mayEdit} onClick={() => mayEdit && onRebuild()}>Rebuild in this job…</button>
          {isDropping
            ? <button type="button" className="button button-lined" onClick={onDrop}>Take it out for good</button>
            : <button type="button" className="button" onClick={() => setDropping(true)}>Take out…</button>}
        </div>
      </div>
    </article>
  )
}

function NoteField({ note, onDone }: { readonly note: string; readonly onDone: (note: string) => void }) {
  const [typed, setTyped] = useState<string | null>(null)
  return (
    <textarea
      className="notebook-note" rows={2} maxLength={4_000} aria-label="What worked, what to do otherwise" placeholder="What worked, what to do otherwise"
      value={typed ?? note} onChange={(event) => setTyped(event.target.value)}
      onBlur={() => {
        if (typed !== null && typed !== note) onDone(typed)
        setTyped(null)
      }}
    />
  )
}
