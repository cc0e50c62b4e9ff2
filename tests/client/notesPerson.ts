import { onTestFinished } from 'vitest'
import * as Y from 'yjs'
import { readNotesFromDocument, watchNotes } from '../../shared-core/document/notesDocument.ts'
import { commandAnswersSchema } from '../../shared-core/notes/answer.ts'
import type { NotesCommand } from '../../shared-core/notes/command.ts'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { createNotesStore, type NotesSource } from '../../client/notes/engine/notesStore.ts'
import type { OutboxShelf } from '../../client/notes/engine/outboxShelf.ts'
import { pageShelf } from '../../client/notes/engine/pageShelf.ts'
import type { OwnVotes } from '../../client/notes/engine/ownVotes.ts'
import type { Answer } from '../../client/connection/api.ts'
import { bearer } from '../relay/notesPeople.ts'
import type { Seated, TestRelay } from '../relay/openRelay.ts'
import { stockJoin, type StockClient } from '../relay/stockClient.ts'
import { HandClock } from './handClock.ts'

const noAnswer: Answer<never> = { ok: false, status: null, words: 'The relay does not answer.' }

/** The notes in a document, joined to the relay or not. */
export function sourceOf(doc: Y.Doc): NotesSource {
  return { read: () => readNotesFromDocument(doc).notes, isHere: () => true, onChange: (listener) => watchNotes(doc, listener) }
}

/** What a device keeps of a seat through a reload. */
export interface Device {
  readonly shelf: OutboxShelf
  readonly doc: Y.Doc
  votes: OwnVotes
}

export const newDevice = (): Device => ({ shelf: { ...pageShelf(), outlivesPage: () => true }, doc: new Y.Doc(), votes: {} })

/** A person with the page open, whose network the test holds. Reloading is opening a page on the same device. */
export function openPage(relay: TestRelay, seated: Seated, device: Device, shown: () => Plan = () => demoPlan) {
  const clock = new HandClock()
  const posted: NotesCommand[][] = []
  const network = { isUp: false, losesAnswers: false }
  const store = createNotesStore({
    seat: seated, source: sourceOf(device.doc), shelf: device.shelf, clock, shownPlan: shown,
    ownVotes: { read: () => device.votes, keep: (votes) => void (device.votes = votes) },
    inTurn: (send) => send(),
    async post(commands) {
      posted.push([...commands])
      if (!network.isUp) return noAnswer
      const response = await relay.post(`/s/${seated.seatId}/notes`, { commands }, bearer(seated))
      if (network.losesAnswers) return noAnswer
      if (response.status !== 200) return { ok: false, status: response.status, words: (await response.json() as { message: string }).message }
      return { ok: true, value: commandAnswersSchema.parse(await response.json()).answers }
    },
  })
  let provider: StockClient['provider'] | null = null
  const leave = () => {
    provider?.destroy()
    provider = null
    store.close()
  }
  onTestFinished(leave)
  return {
    store, network, posted, clock, leave,
    board: () => store.getState(),
    /** The network is back: the document catches up, and the outbox is woken. */
    async comeBack() {
      network.isUp = true
      provider = (await stockJoin(relay, seated.seatId, bearer(seated), 'notes', device.doc)).provider
      store.wake()
    },
  }
}
