import { useEffect, useState, type SyntheticEvent } from 'react'
import { takeDemoSeat, whatIsOffered, type NewJob, type RoleLink, type Welcome } from '../../connection/api.ts'
import { remembered } from '../../session/remembered.ts'
import { readPastedLink } from '../../session/route.ts'
import '../../controls/NumberField.css'
import { LinkCard } from './LinkCard.tsx'
import { StartJob } from './StartJob.tsx'
import { StopScale } from './StopScale.tsx'
import './WelcomePage.css'

/** The first page: come in by a link, go on with a job, or start one. */
export function WelcomePage() {
  const [job, setJob] = useState<NewJob | null>(null)
  const offered = useOffered()
  return (
    <main className="welcome">
      <StopScale />
      <div className="welcome-words">
        <header>
          <h1 className="welcome-name">Halfstop</h1>
          <p className="welcome-line">Plan a set lit with gels, together, before a stand is touched.</p>
        </header>
        {job === null ? (
          <>
            {offered !== null && offered.demoRoles.length > 0 && <OpenDemo roles={offered.demoRoles} />}
            <YourJobs />
            {offered?.newJobs !== false && <StartJob onJob={setJob} />}
            <PasteLink />
          </>
        ) : (
          <JobLinks job={job} />
        )}
      </div>
    </main>
  )
}

/** What this relay offers; null until it answers, and for as long as it does not. */
function useOffered(): Welcome | null {
  const [offered, setOffered] = useState<Welcome | null>(null)
  useEffect(() => {
    let here = true
    void whatIsOffered().then((answer) => {
      if (here && answer.ok) setOffered(answer.value)
    })
    return () => {
      here = false
    }
  }, [])
  return offered
}

/** Invented people of the demo job, one for each role, so that three tabs can be three people. */
const demoNames: Readonly<Record<RoleLink['role'], string>> = {
  photographer: 'Ines Corvalho-Reed', assistant: 'Tobin Achterberg', client: 'Pell Oduya',
}

function OpenDemo({ roles }: { readonly roles: readonly RoleLink['role'][] }) {
  const [trouble, setTrouble] = useState('')

  async function open(role: RoleLink['role']): Promise<void> {
    const answer = await takeDemoSeat(role, remembered.name() === '' ? demoNames[role] : remembered.name())
    if (answer.ok) location.assign(`/s/${answer.value.seatId}`)
    else setTrouble(answer.words)
  }

  return (
    <section aria-labelledby="open-demo">
      <h2 id="open-demo">Look at the demo job, “Late Harvest”</h2>
      <div className="welcome-row">
        {roles.map((role, index) => (
          <button key={role} type="button" className={`button ${index === 0 ? 'button-main' : 'button-lined'}`} onClick={() => void open(role)}>
            As {role}
          </button>
        ))}
      </div>
      {trouble !== '' && (
        <p role="alert" className="welcome-trouble">
          {trouble}
        </p>
      )}
    </section>
  )
}

function YourJobs() {
  const seats = remembered.seats()
  if (seats.length === 0) return null
  return (
    <section aria-labelledby="your-jobs">
      <h2 id="your-jobs">Where you have been</h2>
      <ul className="welcome-jobs">
        {seats.slice(0, 6).map((seat) => (
          <li key={seat.seatId}>
            <a className="welcome-job" href={`/s/${seat.seatId}`}>
              <span>{seat.title === '' ? 'Untitled job' : seat.title}</span>
              <span className="welcome-soft">
                as {seat.name}, {seat.role}
              </span>
            </a>
          </li>
        ))}
      </ul>
    </section>
  )
}

function PasteLink() {
  const [pasted, setPasted] = useState('')
  const [trouble, setTrouble] = useState('')

  function open(event: SyntheticEvent): void {
    event.preventDefault()
    const address = readPastedLink(pasted, location.origin)
    if (address === null) setTrouble('That is no link to a job on this relay.')
    else location.assign(address)
  }

  return (
    <section aria-labelledby="paste-link">
      <h2 id="paste-link">Come in by a link</h2>
      <form className="welcome-row" onSubmit={open}>
        <input
          className="number-field-input welcome-paste"
          aria-label="The link you were sent"
          placeholder="Paste the link you were sent"
          value={pasted}
          onChange={(event) => setPasted(event.currentTarget.value)}
        />
        <button type="submit" className="button button-lined">
          Open
        </button>
      </form>
      {trouble !== '' && (
        <p role="alert" className="welcome-trouble">
          {trouble}
        </p>
      )}
    </section>
  )
}

function JobLinks({ job }: { readonly job: NewJob }) {
  const own = job.links.find((link) => link.role === 'photographer')
  return (
    <section aria-labelledby="job-links">
      <h2 id="job-links">One link for each role</h2>
      <p className="welcome-soft">They are shown this once. Whoever has a link comes in with its role.</p>
      <div>
        {job.links.map((link) => (
          <LinkCard key={link.role} link={link} />
        ))}
      </div>
      {own !== undefined && (
        <a className="button button-main" href={own.url}>
          Go in as the photographer
        </a>
      )}
    </section>
  )
}
