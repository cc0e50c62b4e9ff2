import { useState } from 'react'
import { makeLink, type RoleLink } from '../connection/api.ts'
import { Choice } from '../controls/Choice.tsx'
import { Dialog } from '../controls/Dialog.tsx'
import { useSeat } from '../session/useSeat.ts'
import { LinkCard } from './LinkCard.tsx'
import { ask } from './pageStore.ts'
import { roleOptions, roleWords } from './roleWords.ts'

/** Makes one more secret link. It is shown once: the relay keeps no copy of its key. */
export function InviteDialog() {
  const seat = useSeat()
  const [role, setRole] = useState<RoleLink['role']>('assistant')
  const [made, setMade] = useState<RoleLink | null>(null)
  const [trouble, setTrouble] = useState('')

  async function make(): Promise<void> {
    if (seat === null) return
    const answer = await makeLink(seat.seatId, role)
    setMade(answer.ok ? answer.value : null)
    setTrouble(answer.ok ? '' : answer.words)
  }

  return (
    <Dialog
      open
      onClose={() => ask(null)}
      title="Ask somebody in"
      words="Whoever has the link comes in with its role. Send it as you would send a key."
      actions={
        <button type="button" className="button button-main" onClick={() => void make()}>
          Make a link
        </button>
      }
    >
      <Choice label="They come as" value={role} options={roleOptions} onChoose={setRole} />
      <p className="invite-words">{roleWords[role]}</p>
      {made !== null && <LinkCard link={made} />}
      {trouble !== '' && <p role="alert">{trouble}</p>}
    </Dialog>
  )
}
