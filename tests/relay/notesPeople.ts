import type * as Y from 'yjs'
import { readNotesFromDocument } from '../../shared-core/document/notesDocument.ts'
import { commandAnswersSchema, type CommandAnswer } from '../../shared-core/notes/answer.ts'
import type { Notes } from '../../shared-core/notes/notes.ts'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { planUpdate } from '../../server/planUpdate.ts'
import type { Seated, TestRelay } from './openRelay.ts'
import { rawJoin } from './rawPeer.ts'

export const bearer = ({ secret }: Seated) => ({ authorization: `Bearer ${secret}` })

/** Any look of the demo job. */
export const demoLookId = Object.keys(demoPlan.looks)[0]!

/** The demo job with one person in each role. */
export async function demoCrew(relay: TestRelay) {
  const { jobId, keys } = await relay.access.createJob([{ document: 'plan', update: planUpdate(demoPlan) }])
  return {
    jobId, keys,
    photographer: await relay.seat(jobId, keys.photographer, 'Ines'),
    assistant: await relay.seat(jobId, keys.assistant, 'Tobin'),
    client: await relay.seat(jobId, keys.client, 'Pell'),
  }
}

/** Sends commands as an outbox does; the relay's answers. */
export async function say(relay: Pick<TestRelay, 'post'>, seated: Seated, ...commands: readonly unknown[]): Promise<CommandAnswer[]> {
  const response = await relay.post(`/s/${seated.seatId}/notes`, { commands }, bearer(seated))
  if (response.status !== 200) throw new Error(`${response.status} ${await response.text()}`)
  return commandAnswersSchema.parse(await response.json()).answers
}

/** `ok`, or the code, of each. */
export async function outcomes(relay: Pick<TestRelay, 'post'>, seated: Seated, ...commands: readonly unknown[]): Promise<string[]> {
  return (await say(relay, seated, ...commands)).map((answer) => (answer.ok ? 'ok' : answer.code))
}

/** The notes as a seat is sent them by plain sync. */
export async function notesDocOf(relay: Pick<TestRelay, 'origin'>, seated: Seated): Promise<Y.Doc> {
  return (await rawJoin(relay, seated, 'notes')).document()
}

export async function notesOf(relay: Pick<TestRelay, 'origin'>, seated: Seated): Promise<Notes> {
  return readNotesFromDocument(await notesDocOf(relay, seated)).notes
}

export const note = (id: string, text = 'more plum') => ({ do: 'note.add', id, lookId: demoLookId, pin: { on: 'look' }, text })
export const lock = (id: string, more: object = {}) => (
  { do: 'lock.make', id, lookId: demoLookId, conditions: 'if the print matches', standInsSeen: false, askAgainSteps: 2, planHashSeen: null, ...more })
export const yes = (id: string, lockId: string) => ({ do: 'yes.add', id, lockId, words: 'yes', screenCheckId: null })
