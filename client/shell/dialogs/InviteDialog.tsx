import { useState } from 'react'
import { renewLink, withdrawLinks, type RoleLink } from '../../connection/api.ts'
import { Choice } from '../../controls/Choice.tsx'
import { Dialog } from '../../controls/Dialog.tsx'
import { useSeat } from '../../session/useSeat.ts'
import { ask } from '../../session/pageStore.ts'
import { LinkCard } from '../door/LinkCard.tsx'
import { roleOptions } from '../door/roleWords.ts'
import './InviteDialog.css'

/** Makes a secret link for a role, or withdraws those there are. It is shown once: the relay keeps no copy of its key. */
export function InviteDialog() {
  const seat = useSeat()
  const [role, setRole] = useState<RoleLink['role']>('assistant')
  const [made, setMade] = useState<RoleLink | null>(null)
  const [words, setWords] = useState('')

  async function make(request: typeof renewLink, said: string): Promise<void> {
    if (seat === null) return
    const answer = await request(seat.seatId, role)
    setMade(answer.ok ? answer.value : null)
    setWords(answer.ok ? said : answer.words)
  }

  return (
    <Dialog
      open
      onClose={() => ask(null)}
      title="Ask somebody in"
      words="Whoever has the link comes in with its role. Send it as you would send a key."
      actions={
        <>
          <button
            type="button"
            className="button"
            disabled={role === 'photographer'}
            onClick={() => void make(withdrawLinks, `Every earlier ${role} link is withdrawn, and whoever came by one is out.`)}
          >
            Withdraw all and make a new one
          </button>
          <button
            type="button"
            className="button button-main"
            onClick={() => void make(renewLink, `Earlier ${role} links let nobody new in. Whoever is in stays.`)}
          >
            Make a link
          </button>
        </>
      }
    >
      <Choice
        label="They come as"
        value={role}
        options={roleOptions}
        onChoose={(next) => {
          setRole(next)
          setMade(null)
          setWords('')
        }}
      />
      <div className="invite-outcome" aria-live="polite">
        {made !== null && <LinkCard link={made} />}
        {words !== '' && <p className="invite-words">{words}</p>}
      </div>
    </Dialog>
  )
}
