import { useMemo, useState } from 'react'
import { builtPlan, coloursOf, type NotebookPage } from '../../shared-core/notebook/page.ts'
import { HELD_WITHIN_STOPS, type RebuildIn, type Rebuilt } from '../../shared-core/notebook/rebuild.ts'
import { learnedFrom, rebuiltEdit } from '../../shared-core/notebook/rebuiltEdit.ts'
import { formatStops } from '../../shared-core/plan/entry/stops.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { FullPage } from '../controls/FullPage.tsx'
import { Switch } from '../controls/Switch.tsx'
import { LookCanvas } from '../frame/picture/LookCanvas.tsx'
import { useBoard, useBoardStore } from '../session/useBoard.ts'
import { usePerform } from '../session/usePerform.ts'
import { useRebuilt } from './useRebuilt.ts'

interface RebuildHereProps {
  readonly page: NotebookPage
  readonly onBack: () => void
  readonly onDone: () => void
}

/** A kept look in this job's room and with its kit, beside what it was; nothing is changed before it is taken. */
export function RebuildHere({ page, onBack, onDone }: RebuildHereProps) {
  const board = useBoardStore()
  // As the job stands when the page opens: it would begin anew with every hand elsewhere.
  const [{ plan: job, lookId: lookHere }] = useState(() => board.getState())
  const [isThisPerson, setThisPerson] = useState(true)
  const subject = job.looks[lookHere]?.subject
  const where = useMemo((): RebuildIn => ({
    room: job.room, mayMoveMark: false, kit: { heads: job.heads, modifiers: job.modifiers, gels: job.gels },
    ...(isThisPerson && subject !== undefined ? { subject: { ...subject, xMetres: page.plan.looks[page.lookId]!.subject.xMetres, yMetres: page.plan.looks[page.lookId]!.subject.yMetres } } : {}),
  }), [job, subject, isThisPerson, page])
  const kept = builtPlan(page)
  const { rebuilt, isAtWork, trouble } = useRebuilt(kept, page.lookId, where)
  const name = page.plan.looks[page.lookId]!.name
  return (
    <FullPage onClose={onBack} title={`Rebuild “${name}” here`} words={`In ${job.room.name || 'this room'}, with this job's kit: stops, angles and apparent sizes are kept`}>
      <div className="page-column notebook">
        <div className="rebuild">
          <div className="rebuild-pair">
            <Picture title={page.shotPlan === null ? 'As it was planned' : 'As it was shot'} plan={kept} lookId={page.lookId} />
            {rebuilt !== null && <Picture title="Here" plan={rebuilt.plan} lookId={page.lookId} />}
          </div>
          <div className="page-panel rebuild-words">
            <Switch label={`On ${subject?.name || 'the person of the look on the board'}, as in this job`} on={isThisPerson} onTurn={setThisPerson} />
            <p role="status">{trouble !== '' ? trouble : isAtWork ? 'Being worked out…' : coloursOf(page)}</p>
            {rebuilt !== null && !isAtWork && <Found rebuilt={rebuilt} />}
            {rebuilt !== null && !isAtWork && <Take rebuilt={rebuilt} page={page} name={name} onDone={onDone} />}
          </div>
        </div>
      </div>
    </FullPage>
  )
}

function Picture({ title, plan, lookId }: { readonly title: string; readonly plan: Plan; readonly lookId: string }) {
  const { camera, name } = plan.looks[lookId]!
  const aspect = camera.sensorWidthMillimetres / camera.sensorHeightMillimetres
  return (
    <figure className="rebuild-picture">
      <div style={{ aspectRatio: aspect }}>
        <LookCanvas plan={plan} lookId={lookId} widthPixels={330} heightPixels={Math.round(330 / aspect)} description={`${name}: ${title}`} />
      </div>
      <figcaption>{title}</figcaption>
    </figure>
  )
}

function Found({ rebuilt: { isHeld, areas, moves, reasons } }: { readonly rebuilt: Rebuilt }) {
  const off = areas.filter(({ offStops }) => Math.abs(offStops) >= 0.05)
  return (
    <>
      <p className="rebuild-verdict">{isHeld ? `Every area is within ${HELD_WITHIN_STOPS} stop of what it was.` : 'Not every area can be held here.'}</p>
      {reasons.length > 0 && <section aria-label="Why not"><h3>Why</h3><ul className="rebuild-lines">{reasons.map((words) => <li key={words}>{words}</li>)}</ul></section>}
      <section aria-label="What is done">
        <h3>What is done</h3>
        {moves.length === 0 ? <p>Nothing: it stands as it stood.</p> : <ul className="rebuild-lines">{moves.map((words) => <li key={words}>{words}</li>)}</ul>}
      </section>
      {off.length > 0 && (
        <details>
          <summary>Levels that differ</summary>
          <ul className="rebuild-lines">
            {off.map(({ id, label, offStops, afterStops }) => <li key={id}>{label} {afterStops === null ? 'dark' : formatStops(afterStops)}, {formatStops(offStops)} to what it was</li>)}
          </ul>
        </details>
      )}
    </>
  )
}

function Take({ rebuilt, page, name, onDone }: { readonly rebuilt: Rebuilt; readonly page: NotebookPage; readonly name: string; readonly onDone: () => void }) {
  const plan = useBoard((board) => board.plan)
  const perform = usePerform()
  const learned = learnedFrom(plan, page.plan)
  return (
    <div className="notebook-actions">
      <button type="button" className="button button-main" onClick={() => {
        if (perform(rebuiltEdit(plan, rebuilt, page.lookId, `${name}, rebuilt`), `“${name}, rebuilt” is a look of this job`)) onDone()
      }}>
        Add as a look
      </button>
      {learned.words.length > 0 && (
        <button type="button" className="button button-lined" onClick={() => perform({ ok: true, edit: learned.edit }, `Learned from then: ${learned.words.join(', ')}`)}>
          Use what the meter taught then: {learned.words.join(', ')}
        </button>
      )}
    </div>
  )
}
