import { useState } from 'react'
import { NotesSheet } from '../../notes/pencil/NotesSheet.tsx'
import { PencilBar } from '../../notes/pencil/PencilToggle.tsx'
import { hideNotes, usePencil } from '../../notes/pencil/pencilStore.ts'
import { Unhurried } from '../../session/Unhurried.tsx'
import { useBoard } from '../../session/useBoard.ts'
import { Part } from '../../shell/faults/Part.tsx'
import { useSinceLock } from '../lock/useSinceLock.ts'
import { ClientBar } from './ClientBar.tsx'
import { ClientButtons } from './ClientButtons.tsx'
import './ClientFace.css'
import { LockInWords } from './LockInWords.tsx'
import { LookInWords } from './LookInWords.tsx'
import { PlainFrame } from './PlainFrame.tsx'
import { mayBeAgreed } from './mayBeAgreed.ts'
import { SaySheet, type Saying } from './SaySheet.tsx'

/** What a client sees: the picture, what it is in plain words, what was agreed, and what one thumb can say to it. */
export function ClientFace() {
  const lookId = useBoard((board) => board.lookId)
  const notesShown = usePencil((state) => state.listShown)
  const since = useSinceLock(lookId)
  const [begun, setBegun] = useState<Saying | null>(null)
  const asked = since !== null && mayBeAgreed(since) ? since.lock : null
  // A yes is only ever said to what asks for it: what has changed meanwhile, or was said yes to, asks no more.
  const saying = begun?.kind === 'yes' && begun.lockId !== asked?.id ? null : begun

  function say(kind: Saying['kind']): void {
    hideNotes()
    if (kind === 'yes') setBegun(asked === null ? null : { kind, lockId: asked.id })
    else setBegun({ kind, lookId, lockNumber: since?.lock.lock.number ?? null })
  }

  return (
    <div className="client-face">
      <ClientBar />
      <main className="client-face-board">
        <div className="client-face-picture">
          <Part name="The Frame">
            <Unhurried><PlainFrame /></Unhurried>
          </Part>
        </div>
        <div className="client-face-side">
          {notesShown ? <NotesSheet /> : saying !== null ? <SaySheet saying={saying} asked={asked} onLeave={() => setBegun(null)} /> : (
            <div className="client-face-words">
              {since !== null && <LockInWords since={since} />}
              <Unhurried><LookInWords /></Unhurried>
              {since === null && <LockInWords since={null} />}
            </div>
          )}
          {(notesShown || saying === null) && (
            <>
              <PencilBar />
              <ClientButtons isAsked={asked !== null} onSay={say} />
            </>
          )}
        </div>
      </main>
    </div>
  )
}
