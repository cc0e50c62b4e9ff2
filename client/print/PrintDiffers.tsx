import { useEffect, useMemo } from 'react'
import { compareLooks } from '../../shared-core/compare/changes.ts'
import type { Look } from '../../shared-core/plan/schema/look.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { MARKS_ID } from '../../shared-core/stands/builtAs.ts'
import type { PrintMark } from '../../shared-core/stands/printMark.ts'
import { standChanges, type StandChange } from '../../shared-core/stands/standChanges.ts'
import { digestDifference } from '../../shared-core/stands/standDigest.ts'
import { useLockedPlan } from '../agree/lock/useLockedPlan.ts'
import { FullPage } from '../controls/FullPage.tsx'
import { useNotes } from '../notes/useNotes.ts'
import { ask } from '../session/pageStore.ts'
import { useBoard, useBoardStore } from '../session/useBoard.ts'
import { knownPrint } from './knownPrint.ts'
import { usePlanHash } from './usePlanHash.ts'
import './print.css'

/** What differs now from a page that was scanned: that it is out of date first, then stand by stand. */
export function PrintDiffers({ mark, onClose }: { readonly mark: PrintMark; readonly onClose: () => void }) {
  const board = useBoardStore()
  const plan = useBoard((state) => state.plan)
  const kept = useNotes((notes) => notes.kept)
  const isHere = useNotes((notes) => notes.isHere)
  const connection = useBoard((state) => state.connection)
  const look = plan.looks[mark.lookId]
  const known = useMemo(() => knownPrint(mark, kept), [mark, kept])
  const isShown = useBoard((state) => state.lookId === mark.lookId)
  useEffect(() => {
    if (look !== undefined && !isShown) board.getState().showLook(mark.lookId)
  }, [board, look, isShown, mark.lookId])

  return (
    <FullPage onClose={onClose} title="What differs since this print" words={`${look?.name ?? 'A look that is gone'}, page ${mark.page}: ${printWords(mark)}`}>
      <div className="print-page">
        {!isHere ? <p role="status" className="print-card">Looking up what was printed</p> : (
          <>
            <Standing mark={mark} known={known} />
            {look === undefined
              ? <p className="print-loud" role="alert">The look on this print is no longer in the job. Build nothing from it.</p>
              : <Differences mark={mark} plan={plan} look={look} keptHash={known.planHash} />}
          </>
        )}
        <section className="print-card print-do" aria-label="What to do">
          {connection.state !== 'live' && <p className="print-soft">As far as this device knows. {connection.words}</p>}
          <p className="print-buttons">
            <button type="button" className="button button-main" onClick={() => ask({ kind: 'rig-sheet' })}>Open the rig sheet</button>
            <button type="button" className="button button-lined" onClick={() => ask({ kind: 'print' })}>Print anew</button>
          </p>
        </section>
      </div>
    </FullPage>
  )
}

function printWords({ lockNumber }: PrintMark): string {
  return lockNumber === null ? 'a draft' : `lock ${lockNumber}`
}

/** First and loudest: whether the print is of what stands agreed. */
function Standing({ mark, known: { lock, standing } }: { readonly mark: PrintMark; readonly known: ReturnType<typeof knownPrint> }) {
  const { lockNumber, planHashStart } = mark
  if (lockNumber === null) {
    return standing === null
      ? <p className="print-card">This print is a draft, and the look is not locked.</p>
      : <p className="print-loud" role="alert">This print is a draft. Lock {standing.number} stands now.</p>
  }
  if (lock === null) return <p className="print-loud" role="alert">This job knows no lock {lockNumber} of this look. Do not build from this print before somebody has looked into it.</p>
  if (standing !== null && standing.number > lock.number) return <p className="print-loud" role="alert">Superseded by lock {standing.number}</p>
  if (planHashStart !== '' && !lock.planHash.startsWith(planHashStart)) return <p className="print-loud" role="alert">This print is not of the plan that lock {lockNumber} keeps. Do not build from it.</p>
  return <p className="print-card">Lock {lockNumber} stands.</p>
}

interface DifferencesProps {
  readonly mark: PrintMark
  readonly plan: Plan
  readonly look: Look
  readonly keptHash: string | null
}

/** Stand by stand in words where the printed plan can be had; else by the digests on the print. */
function Differences({ mark, plan, look, keptHash }: DifferencesProps) {
  const units = useBoard((board) => board.units)
  const nowHash = usePlanHash(plan)
  const found = useLockedPlan(keptHash)
  const printed = found?.ok === true ? found.value : null
  const before = printed?.looks[mark.lookId]
  const changes = useMemo(() => (before === undefined ? null : standChanges(before, plan, mark.lookId, units)), [before, plan, mark.lookId, units])
  const others = useMemo(() => (printed === null || before === undefined ? [] : otherChanges(printed, plan, mark.lookId)), [printed, before, plan, mark.lookId])
  if (mark.planHashStart !== '' && nowHash.startsWith(mark.planHashStart)) return <ChangeList changes={[]} others={[]} />
  if (changes !== null) return <ChangeList changes={changes} others={others} />
  if (keptHash !== null && found === null) return <p role="status" className="print-card">Fetching what was printed</p>
  return <ByDigest mark={mark} look={look} />
}

function ChangeList({ changes, others }: { readonly changes: readonly StandChange[]; readonly others: readonly string[] }) {
  return (
    <section className="print-card" aria-label="Stands that differ">
      <h3>{changes.length === 0 ? 'No stand differs from this print' : `${changes.length} ${changes.length === 1 ? 'stand differs' : 'stands differ'}`}</h3>
      <ul className="print-changes">
        {changes.map(({ standId, name, words }) => <li key={standId}><b className="print-stand">{name}</b> <span>{words.join(', ')}</span></li>)}
      </ul>
      {others.length > 0 && (
        <>
          <h4>Beside the stands</h4>
          <ul>{others.map((words) => <li key={words}>{words}</li>)}</ul>
        </>
      )}
    </section>
  )
}

function ByDigest({ mark, look }: { readonly mark: PrintMark; readonly look: Look }) {
  const { standIds, goneCount } = useMemo(() => digestDifference(mark.digests, look), [mark.digests, look])
  const changes = standIds.map((standId): StandChange => ({ standId, name: nameOf(look, standId), words: ['not as printed; see the rig sheet for how it is now'] }))
  return (
    <>
      <ChangeList changes={changes} others={goneCount === 0 ? [] : [`${goneCount} printed ${goneCount === 1 ? 'stand is' : 'stands are'} no longer in the look`]} />
      <p className="print-card print-soft">The plan that was printed cannot be had here, so only what differs can be told, and not by how much.</p>
    </>
  )
}

function nameOf(look: Look, standId: string): string {
  return standId === MARKS_ID ? 'The marks' : (look.lights[standId]?.letter ?? look.pieces[standId]?.label ?? standId)
}

/** Settings that no stand carries. */
const BESIDE_STANDS = /^(camera\/(?!place)|finish\/|subject\/|backdrop\/(?!place)|meter)/

function otherChanges(before: Plan, after: Plan, lookId: string): readonly string[] {
  return compareLooks(before, lookId, after, lookId).changes.filter(({ key }) => BESIDE_STANDS.test(key)).map(({ words }) => words)
}
