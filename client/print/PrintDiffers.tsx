import { useEffect, useMemo } from 'react'
import type { PrintMark } from '../../shared-core/stands/printMark.ts'
import { FullPage } from '../controls/FullPage.tsx'
import { useNotes } from '../notes/useNotes.ts'
import { ask } from '../session/pageStore.ts'
import { useBoard, useBoardStore } from '../session/useBoard.ts'
import { knownPrint } from './knownPrint.ts'
import { usePrintDifferences, type PrintDifferences } from './usePrintDifferences.ts'
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
  const differences = usePrintDifferences(mark, known.planHash)
  const isShown = useBoard((state) => state.lookId === mark.lookId)
  useEffect(() => {
    if (look !== undefined && !isShown) board.getState().showLook(mark.lookId)
  }, [board, look, isShown, mark.lookId])

  return (
    <FullPage onClose={onClose} title="What differs since this print" words={`${look?.name ?? 'A look that is gone'}, page ${mark.page}: ${printWords(mark)}`}>
      <div className="page-column print-page">
        {!isHere ? <p role="status" className="page-panel print-card">Looking up what was printed</p> : (
          <>
            <Standing mark={mark} known={known} differences={differences} />
            {look === undefined
              ? <p className="print-loud" role="alert">The look on this print is no longer in the job. Build nothing from it.</p>
              : differences === null ? <p role="status" className="page-panel print-card">Fetching what was printed</p> : <Differences differences={differences} />}
          </>
        )}
        <section className="page-panel print-card print-do" aria-label="What to do">
          {connection.state !== 'live' && <p className="page-soft">As far as this device knows. {connection.words}</p>}
          <p className="print-buttons">
            <button type="button" className="button button-main" onClick={() => ask({ kind: 'rig-sheet' })}>Open the rig sheet</button>
            <button type="button" className="button button-lined" onClick={() => ask({ kind: 'print' })}>Print anew</button>
          </p>
        </section>
      </div>
    </FullPage>
  )
}

/** "A", "A and B", "A, B and the marks" */
function listWords(names: readonly string[]): string {
  const said = names.map((name) => (name === 'The marks' ? 'the marks' : name))
  return said.length < 2 ? said.join() : `${said.slice(0, -1).join(', ')} and ${said.at(-1)}`
}

function printWords({ lockNumber }: PrintMark): string {
  return lockNumber === null ? 'a draft' : `lock ${lockNumber}`
}

interface StandingProps {
  readonly mark: PrintMark
  readonly known: ReturnType<typeof knownPrint>
  readonly differences: PrintDifferences | null
}

/** First and loudest: whether the print is of what stands agreed, and whether the plan still says what was agreed. */
function Standing({ mark, known: { lock, standing }, differences }: StandingProps) {
  const { lockNumber, planHashStart } = mark
  if (lockNumber === null) {
    return standing === null
      ? <p className="page-panel print-card">This print is a draft, and the look is not locked.</p>
      : <p className="print-loud" role="alert">This print is a draft. Lock {standing.number} stands now.</p>
  }
  if (lock === null) return <p className="print-loud" role="alert">This job knows no lock {lockNumber} of this look. Do not build from this print before somebody has looked into it.</p>
  if (standing !== null && standing.number > lock.number) return <p className="print-loud" role="alert">Superseded by lock {standing.number}</p>
  if (planHashStart !== '' && !lock.planHash.startsWith(planHashStart)) return <p className="print-loud" role="alert">This print is not of the plan that lock {lockNumber} keeps. Do not build from it.</p>
  const moved = differences?.stands ?? []
  if (moved.length === 0) return <p className="page-panel print-card">Lock {lockNumber} stands.</p>
  return (
    <div className="print-loud" role="alert">
      <p>Lock {lockNumber} stands, but the plan no longer has {listWords(moved.map(({ name }) => name))} as agreed.</p>
      <p className="print-loud-more">This print is as lock {lockNumber} says. Ask the photographer whether to build {moved.length === 1 ? 'this stand' : 'these stands'} as agreed or as {moved.length === 1 ? 'it is' : 'they are'} now, before you do.</p>
    </div>
  )
}

function Differences({ differences: { stands, others, isKnownHow } }: { readonly differences: PrintDifferences }) {
  return (
    <>
      <section className="page-panel print-card" aria-label="Stands that differ">
        <h3>{stands.length === 0 ? 'No stand differs from this print' : `${stands.length} ${stands.length === 1 ? 'stand differs' : 'stands differ'}`}</h3>
        <ul className="print-changes">
          {stands.map(({ standId, name, words }) => <li key={standId}><b className="print-stand">{name}</b> <span>{words.join(', ')}</span></li>)}
        </ul>
        {others.length > 0 && (
          <>
            <h4>Beside the stands</h4>
            <ul>{others.map((words) => <li key={words}>{words}</li>)}</ul>
          </>
        )}
      </section>
      {!isKnownHow && <p className="page-panel print-card page-soft">The plan that was printed cannot be had here, so only what differs can be told, and not by how much.</p>}
    </>
  )
}
