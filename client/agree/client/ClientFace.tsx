import { useState } from 'react'
import { NotesSheet } from '../../notes/pencil/NotesSheet.tsx'
import { PencilBar } from '../../notes/pencil/PencilToggle.tsx'
import { usePencil } from '../../notes/pencil/pencilStore.ts'
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
import { YesSheet } from './YesSheet.tsx'

/** What a client sees: the picture, what it is in plain words, what was agreed, and what one thumb can say to it. */
export function ClientFace() {
  const lookId = useBoard((board) => board.lookId)
  const notesShown = usePencil((state) => state.listShown)
  const since = useSinceLock(lookId)
  const [yesTo, setYesTo] = useState<string | null>(null)
  const asked = since !== null && mayBeAgreed(since) ? since.lock : null
  const isSayingYes = asked !== null && yesTo === asked.id
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
          {notesShown ? <NotesSheet /> : isSayingYes ? <YesSheet view={asked} onLeave={() => setYesTo(null)} /> : (
            <div className="client-face-words">
              <Unhurried><LookInWords /></Unhurried>
              <LockInWords since={since} />
            </div>
          )}
          <PencilBar />
          <ClientButtons onYes={asked === null ? null : () => setYesTo(asked.id)} isSayingYes={isSayingYes} />
        </div>
      </main>
    </div>
  )
}
