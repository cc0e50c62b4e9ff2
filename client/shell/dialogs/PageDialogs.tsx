import { lazy, Suspense } from 'react'
import { replaceJob } from '../../../shared-core/plan/edits/job.ts'
import { Dialog } from '../../controls/Dialog.tsx'
import { useBoard } from '../../session/useBoard.ts'
import { usePerform } from '../../session/usePerform.ts'
import { ask, useAsking, type Asking } from '../../session/pageStore.ts'
import { shortcutList } from '../shortcuts.ts'
import { InviteDialog } from './InviteDialog.tsx'
import { saveJobFile } from './jobFile.ts'
import './PageDialogs.css'

const ProofSheet = lazy(async () => ({ default: (await import('../../agree/proof/ProofSheet.tsx')).ProofSheet }))
const Agreed = lazy(async () => ({ default: (await import('../../agree/lock/Agreed.tsx')).Agreed }))
const StandIns = lazy(async () => ({ default: (await import('../../agree/standIns/StandIns.tsx')).StandIns }))
const ScreenCheck = lazy(async () => ({ default: (await import('../../agree/screenCheck/ScreenCheck.tsx')).ScreenCheck }))
const OrderListPage = lazy(async () => ({ default: (await import('../../kit/order/OrderListPage.tsx')).OrderListPage }))
const GelCutsPage = lazy(async () => ({ default: (await import('../../kit/cuts/GelCutsPage.tsx')).GelCutsPage }))
const PowerPage = lazy(async () => ({ default: (await import('../../kit/power/PowerPage.tsx')).PowerPage }))
const PrintPage = lazy(async () => ({ default: (await import('../../print/PrintPage.tsx')).PrintPage }))
const PrintDiffers = lazy(async () => ({ default: (await import('../../print/PrintDiffers.tsx')).PrintDiffers }))
const RigSheet = lazy(async () => ({ default: (await import('../../rig/RigSheet.tsx')).RigSheet }))
const AsShot = lazy(async () => ({ default: (await import('../../notebook/AsShot.tsx')).AsShot }))
const HandOver = lazy(async () => ({ default: (await import('../../notebook/HandOver.tsx')).HandOver }))
const LookChange = lazy(async () => ({ default: (await import('../../moves/LookChange.tsx')).LookChange }))
const TestFrame = lazy(async () => ({ default: (await import('../../testFrame/TestFrame.tsx')).TestFrame }))
const MeterBook = lazy(async () => ({ default: (await import('../../meter/MeterBook.tsx')).MeterBook }))
const Notebook = lazy(async () => ({ default: (await import('../../notebook/Notebook.tsx')).Notebook }))

/** Whatever the page asks just now, one at a time. */
export function PageDialogs() {
  const asking = useAsking()
  switch (asking?.kind) {
    case undefined:
      return null
    case 'shortcuts':
      return <ShortcutsDialog />
    case 'invite':
      return <InviteDialog />
    case 'proof-sheet':
      return <Suspense fallback={null}><ProofSheet onClose={close} /></Suspense>
    case 'agreed':
      return <Suspense fallback={null}><Agreed onClose={close} /></Suspense>
    case 'stand-ins':
      return <Suspense fallback={null}><StandIns onClose={close} /></Suspense>
    case 'screen-check':
      return <Suspense fallback={null}><ScreenCheck onClose={close} /></Suspense>
    case 'order-list':
      return <Suspense fallback={null}><OrderListPage onClose={close} /></Suspense>
    case 'gel-cuts':
      return <Suspense fallback={null}><GelCutsPage onClose={close} /></Suspense>
    case 'power':
      return <Suspense fallback={null}><PowerPage onClose={close} /></Suspense>
    case 'rig-sheet':
      return <Suspense fallback={null}><RigSheet onClose={close} /></Suspense>
    case 'test-frame':
      return <Suspense fallback={null}><TestFrame onClose={close} /></Suspense>
    case 'meter-book':
      return <Suspense fallback={null}><MeterBook onClose={close} /></Suspense>
    case 'print':
      return <Suspense fallback={null}><PrintPage onClose={close} /></Suspense>
    case 'print-differs':
      return <Suspense fallback={null}><PrintDiffers mark={asking.mark} onClose={close} /></Suspense>
    case 'notebook':
      return <Suspense fallback={null}><Notebook onClose={close} /></Suspense>
    case 'as-shot':
      return <Suspense fallback={null}><AsShot onClose={close} /></Suspense>
    case 'hand-over':
      return <Suspense fallback={null}><HandOver onClose={close} /></Suspense>
    case 'look-change':
      return <Suspense fallback={null}><LookChange onClose={close} /></Suspense>
    case 'replace':
      return <ReplaceDialog asking={asking} />
    case 'bad-file':
      return <BadFileDialog asking={asking} />
    case 'refused':
      return <RefusedDialog asking={asking} />
  }
}

const close = () => ask(null)

function ShortcutsDialog() {
  return (
    <Dialog open onClose={close} title="Keyboard">
      <dl className="shortcuts">
        {shortcutList.map(({ keys, words }) => (
          <div key={words} className="shortcuts-row">
            <dt>
              {keys.map((key) => (
                <kbd key={key}>{key}</kbd>
              ))}
            </dt>
            <dd>{words}</dd>
          </div>
        ))}
      </dl>
    </Dialog>
  )
}

function ReplaceDialog({ asking }: { readonly asking: Extract<Asking, { kind: 'replace' }> }) {
  const plan = useBoard((board) => board.plan)
  const perform = usePerform()
  return (
    <Dialog
      open
      onClose={close}
      title={`Open “${asking.fileName}” here?`}
      words={`It takes the place of “${plan.title}” for everybody on this job. One undo brings the old plan back.`}
      actions={
        <>
          <button type="button" className="button" onClick={close}>
            Keep what is here
          </button>
          <button
            type="button"
            className="button button-main"
            onClick={() => {
              close()
              perform(replaceJob(plan, asking.plan), `“${asking.plan.title}” is open`)
            }}
          >
            Open it
          </button>
        </>
      }
    >
      {asking.repairs.length > 0 && <WordList title="Repaired on reading" words={asking.repairs} />}
    </Dialog>
  )
}

function BadFileDialog({ asking }: { readonly asking: Extract<Asking, { kind: 'bad-file' }> }) {
  return (
    <Dialog
      open
      onClose={close}
      title={`“${asking.fileName}” cannot be opened`}
      words="Nothing on the board has changed."
      actions={
        <button type="button" className="button button-lined" onClick={close}>
          Close
        </button>
      }
    >
      <ul className="problems">
        {asking.problems.map(({ path, message }) => (
          <li key={`${path} ${message}`}>
            {path !== '' && <code>{path}</code>} {message}
          </li>
        ))}
      </ul>
    </Dialog>
  )
}

function RefusedDialog({ asking }: { readonly asking: Extract<Asking, { kind: 'refused' }> }) {
  return (
    <Dialog
      open
      onClose={close}
      title="Your last changes were not taken"
      words={`${asking.reason} The board shows the shared plan again. What you had is not lost: keep it as a job file if you want it.`}
      actions={
        <>
          <button type="button" className="button" onClick={close}>
            Let it go
          </button>
          <button
            type="button"
            className="button button-main"
            onClick={() => {
              saveJobFile({ ...asking.plan, title: `${asking.plan.title}, not taken`.slice(0, 120) })
              close()
            }}
          >
            Keep as a job file
          </button>
        </>
      }
    />
  )
}

function WordList({ title, words }: { readonly title: string; readonly words: readonly string[] }) {
  return (
    <>
      <h3>{title}</h3>
      <ul className="problems">
        {words.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </>
  )
}
