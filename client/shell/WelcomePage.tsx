import { useState, type SyntheticEvent } from 'react'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { createJob, type NewJob } from '../connection/api.ts'
import { remembered } from '../session/remembered.ts'
import { readPastedLink } from '../session/route.ts'
import { LinkCard } from './LinkCard.tsx'
import { StopScale } from './StopScale.tsx'
import './WelcomePage.css'

/** The first page: come in by a link, go on with a job, or start one. */
export function WelcomePage() {
  const [job, setJob] = useState<NewJob | null>(null)
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
            <YourJobs />
            <StartJob onJob={setJob} />
            <PasteLink />
          </>
        ) : (
          <JobLinks job={job} />
        )}
      </div>
    </main>
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

function StartJob({ onJob }: { readonly onJob: (job: NewJob) => void }) {
  const [trouble, setTrouble] = useState<readonly string[]>([])
  const [busy, setBusy] = useState(false)

  async function start(plan: Plan | null): Promise<void> {
    setBusy(true)
    const answer = await createJob(plan)
    setBusy(false)
    if (answer.ok) onJob(answer.value)
    else setTrouble([answer.words])
  }

  async function startFromFile(): Promise<void> {
    // The reader of job files is the core's; it comes when it is asked for.
    const { chooseFile, readFile } = await import('./jobFile.ts')
    const file = await chooseFile()
    if (file === null) return
    const reading = await readFile(file)
    if (reading.ok) return start(reading.plan)
    setTrouble([`“${file.name}” cannot be opened.`, ...reading.problems.map(({ path, message }) => (path === '' ? message : `${path}: ${message}`))])
  }

  return (
    <section aria-labelledby="start-job">
      <h2 id="start-job">Start a job</h2>
      <div className="welcome-row">
        <button type="button" className="button button-main" disabled={busy} onClick={() => void start(null)}>
          New job
        </button>
        <button type="button" className="button button-lined" disabled={busy} onClick={() => void startFromFile()}>
          From a job file
        </button>
      </div>
      {trouble.length > 0 && (
        <ul role="alert" className="welcome-trouble">
          {trouble.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      )}
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
