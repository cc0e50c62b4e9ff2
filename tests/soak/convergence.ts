import * as Y from 'yjs'
import { PostgresStore } from '../../server/store/postgresStore.ts'
import { Dice } from './dice.ts'
import { haveMet, openSoakRelay, type SoakRelay } from './sharingRelay.ts'
import { WaywardPerson } from './waywardPerson.ts'

const PEOPLE = 10
const ROUNDS = 40
/** The patience of a check that fails; nothing is said about how long it takes. */
const PATIENCE_MS = 30_000

export interface Converged {
  readonly edits: number
  readonly moves: number
  readonly restarts: number
  readonly bytes: number
}

/**
 * Ten people edit one document over two relays that are killed and stopped in between, on wires that lose, double and
 * reorder messages. Then all behave, and everybody's document must be the same to the byte, as must what is kept.
 *
 * @throws Error naming the run, whose number decides every throw of the dice
 */
export async function converge(run: number, databaseUrl: string): Promise<Converged> {
  const dice = new Dice(run)
  const relays = [await openSoakRelay(databaseUrl), await openSoakRelay(databaseUrl)]
  const people: WaywardPerson[] = []
  try {
    await haveMet(...relays)
    const { jobId, keys } = await relays[0]!.access.createJob([])
    for (let index = 0; index < PEOPLE; index++) {
      const taken = await relays[0]!.access.takeSeat(jobId, keys.assistant, `Person ${index}`)
      if (typeof taken === 'string') throw new Error(taken)
      const admission = { seatId: taken.seat.seatId, secret: taken.secret }
      people.push(new WaywardPerson(run * 100 + index + 1, admission, new Dice(run * 1_000 + index)))
    }
    await Promise.all(people.map((person) => person.join(dice.oneOf(relays).origin)))
    const counts = await misbehave(dice, databaseUrl, relays, people)
    await settle(dice, relays, people)
    const bytes = await sameForAll(people, databaseUrl, jobId)
    return { ...counts, bytes }
  } catch (thrown) {
    throw new Error(`run ${run}: ${thrown instanceof Error ? thrown.message : String(thrown)}`, { cause: thrown })
  } finally {
    people.forEach((person) => person.leave())
    await Promise.all(relays.map((relay) => relay.stop()))
  }
}

async function misbehave(dice: Dice, databaseUrl: string, relays: SoakRelay[], people: readonly WaywardPerson[]) {
  const counts = { edits: 0, moves: 0, restarts: 0 }
  const gone: Promise<void>[] = []
  for (let round = 0; round < ROUNDS; round++) {
    for (const person of people) {
      if (!person.isIn || dice.happens(0.02)) {
        counts.moves += 1
        await person.join(dice.oneOf(relays).origin)
      }
      for (let edits = dice.below(3); edits > 0; edits--) {
        counts.edits += 1
        person.edit()
      }
    }
    if (round % 15 === 8) {
      counts.restarts += 1
      const which = dice.below(relays.length)
      const leaving = relays[which]!
      gone.push(dice.happens(0.5) ? leaving.kill() : leaving.stop())
      relays[which] = await openSoakRelay(databaseUrl)
    }
    await new Promise((resolve) => setTimeout(resolve, dice.below(3)))
  }
  await Promise.all(gone)
  return counts
}

async function settle(dice: Dice, relays: readonly SoakRelay[], people: readonly WaywardPerson[]): Promise<void> {
  for (const person of people) {
    person.behave()
    for (let tries = 0; !person.isIn && tries < 50; tries++) await person.join(dice.oneOf(relays).origin)
    person.ask()
  }
}

/** @returns the size of the document that all have. @throws Error when they do not come to be the same */
async function sameForAll(people: readonly WaywardPerson[], databaseUrl: string, jobId: string): Promise<number> {
  const store = await PostgresStore.open(databaseUrl, 2)
  try {
    const untilMs = performance.now() + PATIENCE_MS
    for (;;) {
      const kept = new Y.Doc()
      const { updates } = await store.readDocument({ jobId, document: 'plan' })
      kept.transact(() => updates.forEach((update) => Y.applyUpdate(kept, update)))
      const all = [kept, ...people.map(({ doc }) => doc)].map(asWrittenAnew)
      const different = all.filter((bytes) => !bytes.equals(all[0]!)).length
      if (different === 0) return all[0]!.byteLength
      if (performance.now() > untilMs) throw new Error(`${different} of ${people.length} people's documents differ from what is kept`)
      await new Promise((resolve) => setTimeout(resolve, 20))
    }
  } finally {
    await store.close()
  }
}

/**
 * The document as one who reads it for the first time would write it. In memory Yjs remembers where an item was once cut
 * in two by an edit that came in between, so the same document may be written in more pieces than it has.
 */
function asWrittenAnew(doc: Y.Doc): Buffer {
  const fresh = new Y.Doc()
  Y.applyUpdate(fresh, Y.encodeStateAsUpdate(doc))
  const bytes = Buffer.from(Y.encodeStateAsUpdate(fresh))
  fresh.destroy()
  return bytes
}
