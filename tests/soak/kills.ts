import * as Y from 'yjs'
import { Dice } from './dice.ts'
import { SteadyPerson } from './steadyPerson.ts'

const PEOPLE = 8
const EDIT_EVERY_MS = 20
/** What is still in the sockets when a relay dies counts as seen once it arrives; less than a provider waits before it comes back. */
const LAST_WORDS_MS = 40
const PATIENCE_MS = 60_000

/** What is killed, and how to look at what it kept while nobody can bring anything back. */
export interface Victim {
  /** Where people come in. */
  readonly origin: string
  /** Kills, and resolves once the process is gone. */
  kill(dice: Dice): Promise<void>
  /** Whatever must be there before the next kill; resolves when people can be served again as at the start. */
  recover(): Promise<void>
  /** The updates kept of a job's plan, after a kill. */
  kept(jobId: string): Promise<readonly Uint8Array[]>
}

export interface KillFigures {
  readonly kills: number
  readonly edits: number
  /** Edits seen by somebody else before a kill and looked for after it, over all kills. */
  readonly seen: number
  /** Longest time from a kill until everybody was in and in step again. */
  readonly slowestReturnMs: number
}

/**
 * Eight people edit without pause while what serves them is killed at random times. After each kill, before anybody can
 * bring back what they have, all that anybody saw of others must be kept, and of everybody's edits no number may be
 * missing below the highest. At the end all have all.
 *
 * @throws Error saying what was lost, and the run, whose number decides the times
 */
export async function killWhileEditing(victim: Victim, kills: number, run = 1): Promise<KillFigures> {
  const dice = new Dice(run)
  const { jobId, people } = await letIn(victim.origin)
  try {
    let seenInAll = 0
    let slowestReturnMs = 0
    await until(() => people.every((person) => person.isIn), 'everybody is in')
    people.forEach((person) => person.type(EDIT_EVERY_MS))
    for (let count = 1; count <= kills; count++) {
      await pause(150 + dice.below(700))
      await victim.kill(dice)
      const killedMs = performance.now()
      await pause(LAST_WORDS_MS)
      people.forEach((person) => person.provider.disconnect())
      seenInAll += compare(people, await victim.kept(jobId), `run ${run}, kill ${count}`)
      const recovered = victim.recover()
      people.forEach((person) => person.provider.connect())
      await until(() => people.every((person) => person.isIn), 'everybody is back')
      slowestReturnMs = Math.max(slowestReturnMs, performance.now() - killedMs)
      await recovered
    }
    people.forEach((person) => person.rest())
    const edits = people.reduce((total, person) => total + person.made, 0)
    await until(() => people.every(({ doc }) => doc.getMap('edits').size === edits), 'everybody has every edit')
    return { kills, edits, seen: seenInAll, slowestReturnMs }
  } finally {
    people.forEach((person) => person.leave())
  }
}

/** @returns how many edits had been seen. @throws Error when one of them is not kept, or a number is missing */
function compare(people: readonly SteadyPerson[], updates: readonly Uint8Array[], when: string): number {
  const doc = new Y.Doc()
  doc.transact(() => updates.forEach((update) => Y.applyUpdate(doc, update)))
  const kept = new Set(doc.getMap('edits').keys())
  const seen = new Set(people.flatMap((person) => [...person.seen]))
  const lost = [...seen].filter((edit) => !kept.has(edit))
  if (lost.length > 0) throw new Error(`${when}: ${lost.length} edits that others had seen are lost, such as ${lost[0]}`)
  for (const { name } of people) {
    const numbers = [...kept].filter((edit) => edit.startsWith(`${name}/`)).map((edit) => Number(edit.slice(name.length + 1)))
    const highest = Math.max(-1, ...numbers)
    if (numbers.length !== highest + 1) throw new Error(`${when}: of ${name}'s edits up to ${highest} only ${numbers.length} are kept`)
  }
  return seen.size
}

/** Each provider listens for the end of the process. */
process.setMaxListeners(PEOPLE * 4)

/** A new job with eight people on it, by the links as people are given them. */
export async function letIn(origin: string): Promise<{ jobId: string; people: SteadyPerson[] }> {
  const made = (await (await post(origin, '/api/jobs', {})).json()) as { jobId: string; links: { role: string; url: string }[] }
  const key = made.links.find(({ role }) => role === 'assistant')?.url.split('#')[1] ?? ''
  const people = await Promise.all(Array.from({ length: PEOPLE }, async (_, index) => {
    const name = `p${index}`
    const response = await post(origin, '/api/seats', { jobId: made.jobId, key, name, headless: true })
    return new SteadyPerson(name, origin, (await response.json()) as { seatId: string; secret: string })
  }))
  return { jobId: made.jobId, people }
}

async function post(origin: string, path: string, body: unknown): Promise<Response> {
  const response = await fetch(`${origin}${path}`, {
    method: 'POST', body: JSON.stringify(body), headers: { 'content-type': 'application/json', 'connection': 'close' },
  })
  if (response.status !== 201) throw new Error(`${path}: ${response.status} ${await response.text()}`)
  return response
}

/** @throws Error naming what never came true */
export async function until(holds: () => boolean, what: string): Promise<void> {
  const untilMs = performance.now() + PATIENCE_MS
  while (!holds()) {
    if (performance.now() > untilMs) throw new Error(`never came true: ${what}`)
    await pause(5)
  }
}

export function pause(ms: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, ms))
}
