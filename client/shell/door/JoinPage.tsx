import { useState, type SyntheticEvent } from 'react'
import { takeSeat } from '../../connection/api.ts'
import type { SeatInfo } from '../../connection/seat.ts'
import { remembered } from '../../session/remembered.ts'
import '../../controls/NumberField.css'
import './CardPage.css'

export interface JoinPageProps {
  readonly jobId: string
  readonly linkKey: string
  readonly onSeat: (seat: SeatInfo) => void
}

/** Comes in by a link: asks the name others will see, and changes the key for a seat. */
export function JoinPage({ jobId, linkKey, onSeat }: JoinPageProps) {
  const [name, setName] = useState(remembered.name())
  const [trouble, setTrouble] = useState('')
  const [busy, setBusy] = useState(false)

  async function join(event: SyntheticEvent): Promise<void> {
    event.preventDefault()
    const own = name.trim()
    if (own === '' || busy) return setTrouble(own === '' ? 'A name is needed, so that the others know who you are.' : trouble)
    setBusy(true)
    remembered.keepName(own)
    const answer = await takeSeat(jobId, linkKey, own)
    setBusy(false)
    if (answer.ok) onSeat(answer.value)
    else setTrouble(answer.words)
  }

  return (
    <main className="card-page">
      <div className="card-page-card">
        <h1>You are asked onto a job</h1>
        {linkKey === '' ? (
          <p className="card-page-trouble">This link is missing its second half, after the #. Ask for it again and copy all of it.</p>
        ) : (
          <form className="card-page-form" onSubmit={(event) => void join(event)}>
            <label htmlFor="own-name" className="card-page-soft">
              Your name, as the others will see it
            </label>
            <input
              id="own-name"
              className="number-field-input"
              autoComplete="name"
              maxLength={60}
              value={name}
              aria-describedby={trouble === '' ? undefined : 'join-trouble'}
              onChange={(event) => setName(event.currentTarget.value)}
            />
            {trouble !== '' && (
              <p id="join-trouble" role="alert" className="card-page-trouble">
                {trouble}
              </p>
            )}
            <div className="card-page-actions">
              <button type="submit" className="button button-main" disabled={busy}>
                {busy ? 'Coming in' : 'Come in'}
              </button>
            </div>
          </form>
        )}
      </div>
    </main>
  )
}
