import { useState } from 'react'
import type { Plan } from '../../../shared-core/plan/schema/plan.ts'
import { createJob, type NewJob } from '../../connection/api.ts'

/** Starts a job with the usual room and kit, or with what a job file holds. */
export function StartJob({ onJob }: { readonly onJob: (job: NewJob) => void }) {
  const [trouble, setTrouble] = useState<readonly string[]>([])
  const [busy, setBusy] = useState(false)

  async function start(plan: Plan): Promise<void> {
    setBusy(true)
    const answer = await createJob(plan)
    setBusy(false)
    if (answer.ok) onJob(answer.value)
    else setTrouble([answer.words])
  }

  async function startNew(): Promise<void> {
    // The core's usual room and kit come when they are asked for: the first page does without.
    const { newPlan } = await import('../../session/newPlan.ts')
    await start(newPlan('New job'))
  }

  async function startFromFile(): Promise<void> {
    const { chooseFile, readFile } = await import('../dialogs/jobFile.ts')
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
        <button type="button" className="button button-lined" disabled={busy} onClick={() => void startNew()}>
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
