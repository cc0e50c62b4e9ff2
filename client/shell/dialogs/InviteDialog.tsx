import { useEffect, useState } from 'react'
import { listLinks, renewLink, withdrawLink, withdrawLinks, type Answer, type MadeLink, type RoleLink } from '../../connection/api.ts'
import { Choice } from '../../controls/Choice.tsx'
import { Dialog } from '../../controls/Dialog.tsx'
import { useSeat } from '../../session/useSeat.ts'
import { ask } from '../../session/pageStore.ts'
import { LinkCard } from '../door/LinkCard.tsx'
import { roleOptions } from '../door/roleWords.ts'
import './InviteDialog.css'
import { LinksList } from './LinksList.tsx'

/** Long enough for a campaign, short enough that a forgotten link does not stay good; the relay may allow less. */
const usualDays = '180'
const spans = [
  { value: '1', label: '1 day' },
  { value: '7', label: '1 week' },
  { value: '30', label: '30 days' },
  { value: usualDays, label: 'Half a year' },
] as const

/** Makes a secret link for a role, or withdraws those there are. It is shown once: the relay keeps no copy of its key. */
export function InviteDialog() {
  const seat = useSeat()
  const [role, setRole] = useState<RoleLink['role']>('assistant')
  const [made, setMade] = useState<RoleLink | null>(null)
  const [words, setWords] = useState('')
  const [days, setDays] = useState<(typeof spans)[number]['value']>(usualDays)
  const [links, setLinks] = useState<readonly MadeLink[]>([])
  const seatId = seat?.seatId ?? null

  useEffect(() => {
    if (seatId === null) return
    let here = true
    void listLinks(seatId).then((answer) => {
      if (here && answer.ok) setLinks(answer.value.links)
    })
    return () => {
      here = false
    }
    // A link made is one more in the list.
  }, [seatId, made])

  async function withdraw(linkId: string): Promise<void> {
    if (seat === null) return
    const answer = await withdrawLink(seat.seatId, linkId)
    setWords(answer.ok ? 'That link is withdrawn, and whoever came by it is out.' : answer.words)
    if (answer.ok) setLinks(answer.value.links)
  }

  async function make(request: (seatId: string) => Promise<Answer<RoleLink>>, said: string): Promise<void> {
    if (seat === null) return
    const answer = await request(seat.seatId)
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
            onClick={() => void make((own) => withdrawLinks(own, role), `Every earlier ${role} link is withdrawn, and whoever came by one is out.`)}
          >
            Withdraw all and make a new one
          </button>
          <button
            type="button"
            className="button button-main"
            onClick={() => void make((own) => renewLink(own, role, Number(days)), `Earlier ${role} links let nobody new in. Whoever is in stays.`)}
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
      <div className="invite-span">
        <Choice label="The link is good for" value={days} options={spans} onChoose={setDays} />
      </div>
      <div className="invite-outcome" aria-live="polite">
        {made !== null && <LinkCard link={made} />}
        {words !== '' && <p className="invite-words">{words}</p>}
      </div>
      <LinksList links={links} onWithdraw={(linkId) => void withdraw(linkId)} />
    </Dialog>
  )
}
