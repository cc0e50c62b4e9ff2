import { JOB_FILE_ENDING, JOB_FILE_MOST_CHARACTERS, readJobFile, writeJobFile, type PlanReading } from '../../../shared-core/plan/read.ts'
import type { Plan } from '../../../shared-core/plan/schema/plan.ts'
import { ask } from '../../session/pageStore.ts'

/** Gives the plan to the person as a file, under the job's own title. */
export function saveJobFile(plan: Plan): void {
  giveFile(new Blob([writeJobFile(plan)], { type: 'application/json' }), fileNameOf(plan.title))
}

/** Gives a file to the person, as a download. */
export function giveFile(content: Blob, fileName: string): void {
  const link = document.createElement('a')
  link.href = URL.createObjectURL(content)
  link.download = fileName
  link.click()
  // The browser has taken the file long before; until then the address has to live.
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000)
}

/** "Late Harvest" as `Late Harvest.halfstop.json`, without the characters that file systems refuse. */
export function fileNameOf(title: string): string {
  const plain = title.replaceAll(/[\\/:*?"<>|\p{Cc}]/gu, ' ').replaceAll(/\s+/g, ' ').replace(/^[. ]+/, '').trim()
  return `${plain === '' ? 'job' : plain.slice(0, 80)}${JOB_FILE_ENDING}`
}

/** Lets the person choose a file; null when they choose none. */
export function chooseFile(): Promise<File | null> {
  return new Promise((resolve) => {
    const input = document.createElement('input')
    input.type = 'file'
    input.accept = `${JOB_FILE_ENDING},application/json,.json`
    input.addEventListener('change', () => resolve(input.files?.[0] ?? null))
    input.addEventListener('cancel', () => resolve(null))
    input.click()
  })
}

/** Reads a file as a job; what cannot be a job file by its size alone is not even loaded. */
export async function readFile(file: File): Promise<PlanReading> {
  const mostBytes = JOB_FILE_MOST_CHARACTERS * 4
  if (file.size <= mostBytes) return readJobFile(await file.text())
  return { ok: false, problems: [{ path: '', message: `The file is too large: ${mostBytes / 1e6} megabytes is the most a job can be.` }] }
}

/** A file meant to take the place of the plan on the board: asks first, or lists what is wrong with it. */
export async function offerJobFile(file: File): Promise<void> {
  const reading = await readFile(file)
  if (reading.ok) ask({ kind: 'replace', plan: reading.plan, fileName: file.name, repairs: reading.repairs })
  else ask({ kind: 'bad-file', fileName: file.name, problems: reading.problems })
}
