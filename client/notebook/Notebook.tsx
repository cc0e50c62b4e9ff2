import { useEffect, useState } from 'react'
import { useStore } from 'zustand'
import { planAsShot, shotWords } from '../../shared-core/notebook/asShot.ts'
import { newPage, pagesFound, readNotebook, writeNotebook, type NotebookPage, type Shot } from '../../shared-core/notebook/page.ts'
import { newId } from '../../shared-core/plan/newId.ts'
import { asShotKey } from '../../shared-core/rig/asShot.ts'
import type { Rig } from '../../shared-core/rig/rig.ts'
import { standsOf } from '../../shared-core/stands/stand.ts'
import { FullPage } from '../controls/FullPage.tsx'
import { useRigStore } from '../rig/useRig.ts'
import type { Board } from '../session/board.ts'
import { chooseFile, giveFile } from '../shell/dialogs/jobFile.ts'
import { useBoard, useBoardStore } from '../session/useBoard.ts'
import { PageCard } from './PageCard.tsx'
import { RebuildHere } from './RebuildHere.tsx'
import { dropPage, keepPages, notebookShelf, readShelf } from './shelf.ts'
import './notebook.css'

/** Past looks of every job that was open on this device: found by a word, read again, and rebuilt here. */
export function Notebook({ onClose }: { readonly onClose: () => void }) {
  const { pages, trouble } = useStore(notebookShelf)
  const [sought, setSought] = useState('')
  const [rebuilding, setRebuilding] = useState<NotebookPage | null>(null)
  useEffect(() => void readShelf(), [])
  const found = pages === null ? [] : pagesFound(pages, sought)
  if (rebuilding !== null) return <RebuildHere page={rebuilding} onBack={() => setRebuilding(null)} onDone={onClose} />
  return (
    <FullPage onClose={onClose} title="Notebook" words="Looks kept on this device, from every job that was open on it" tools={<NotebookFile pages={pages ?? []} />}>
      <div className="page-column notebook">
        <KeepThisLook />
        {trouble !== '' && <p className="page-panel notebook-trouble" role="status">{trouble}</p>}
        {pages !== null && pages.length > 0 && (
          <input
            className="notebook-search" type="search" aria-label="Find by look, colour, room or note" placeholder="Find by look, colour, room or note"
            value={sought} onChange={(event) => setSought(event.target.value)}
          />
        )}
        {pages !== null && pages.length === 0 && trouble === '' && (
          <p className="notebook-empty">Nothing kept yet. At wrap, keep the look that was shot: a year later it is built again from here, in another room or with other kit.</p>
        )}
        {pages !== null && pages.length > 0 && found.length === 0 && <p className="notebook-empty">No page has all these words.</p>}
        <ul className="notebook-pages">
          {found.map((page) => (
            <li key={page.id}>
              <PageCard page={page} onRebuild={() => setRebuilding(page)} onNote={(note) => void keepPages([{ ...page, note }])} onDrop={() => void dropPage(page.id)} />
            </li>
          ))}
        </ul>
      </div>
    </FullPage>
  )
}

/** The look on the board, as it is now. */
function KeepThisLook() {
  const lookName = useBoard((board) => board.plan.looks[board.lookId]?.name ?? '')
  const board = useBoardStore()
  const rig = useRigStore()
  const [note, setNote] = useState('')
  async function keep(): Promise<void> {
    const now = board.getState()
    const { plan, lookId } = now
    if (plan.looks[lookId] === undefined) return
    if (!(await keepPages([newPage(newId(), Date.now(), plan, lookId, note.trim(), asShot(now, rig.getState().rig))]))) return
    setNote('')
    board.say(`“${lookName}” is in the notebook of this device`)
  }
  return (
    <form className="page-panel notebook-keep" onSubmit={(event) => {
      event.preventDefault()
      void keep()
    }}>
      <label className="notebook-keep-note">
        <span>What worked, what to do otherwise</span>
        <textarea rows={2} maxLength={4_000} value={note} onChange={(event) => setNote(event.target.value)} />
      </label>
      <button type="submit" className="button button-main">Keep “{lookName}”</button>
    </form>
  )
}

/** The look as it was recorded at wrap; null where nobody did. */
function asShot({ plan, lookId, prediction, units }: Board, { asShot: entries }: Rig): Shot | null {
  if (prediction.lookId !== lookId) return null
  const stands = standsOf(plan, lookId, prediction)
  const recorded = stands.flatMap((stand) => {
    const entry = entries[asShotKey(lookId, stand.id)]
    return entry === undefined ? [] : [{ stand, entry }]
  })
  if (recorded.length === 0) return null
  return {
    plan: planAsShot(plan, lookId, stands, entries),
    words: recorded.flatMap(({ stand, entry }) => shotWords(entry, stand, plan, units).map((words) => `${stand.name} ${words}`.slice(0, 300))),
  }
}

function NotebookFile({ pages }: { readonly pages: readonly NotebookPage[] }) {
  const board = useBoardStore()
  async function take(): Promise<void> {
    const file = await chooseFile()
    if (file === null) return
    const read = file.size > 200_000_000 ? null : readNotebook(await file.text())
    if (read === null) return board.say(`“${file.name}” is no notebook of this program. Nothing was changed`)
    if (await keepPages(read.pages)) board.say(`${read.pages.length} pages taken in${read.unread > 0 ? `, ${read.unread} could not be read` : ''}`)
  }
  return (
    <div className="notebook-file">
      <button type="button" className="button button-lined" aria-disabled={pages.length === 0}
        onClick={() => pages.length > 0 && giveFile(new Blob([writeNotebook(pages)], { type: 'application/json' }), 'Notebook.halfstop.json')}>
        Save as a file
      </button>
      <button type="button" className="button" onClick={() => void take()}>Take in a file</button>
    </div>
  )
}
