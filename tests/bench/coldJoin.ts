import * as Y from 'yjs'
import { pause } from './crowd.ts'
import { Person, syncMessage } from './person.ts'
import { median, type BenchRow } from './row.ts'
import { isHocuspocusInstalled, startHocuspocus, startOurs, type MeasuredServer, type Place } from './servers.ts'

const EDITS = 20_000
const MAKERS = 8
const JOINS = 3
/** Both servers put a room out of memory once it is left; this is ample for it. */
const UNTIL_PUT_AWAY_MS = 3_500

/**
 * Coming into a room of 20,000 edits that nobody is in and that is not in memory: from opening the socket until all of it
 * is there. The first answer that a server gives must have all: an empty one would be drawn as an empty board.
 */
export async function coldJoinRows(): Promise<BenchRow[]> {
  const ours = await startOurs({ ROOM_IDLE_MS: '1', MESSAGES_PER_SECOND: '100000', BYTES_PER_SECOND: '100000000' })
  const rival = isHocuspocusInstalled() ? await startHocuspocus() : null
  try {
    const oursMs = await coldJoin(ours)
    const rivalMs = rival === null ? null : await coldJoin(rival)
    const note = rivalMs === null ? '' : `Hocuspocus ${rivalMs.ms.toFixed(1)}, answers short of content ${rivalMs.short}; stock keeps nothing`
    return [
      { name: `relay, cold join of a room of ${EDITS} edits`, value: oursMs.ms, unit: 'ms', target: 40, better: 'lower', note },
      { name: 'relay, cold join: first answers short of content', value: oursMs.short, unit: `of ${JOINS}`, target: 1, better: 'lower', note: '' },
    ]
  } finally {
    await Promise.all([ours.stop(), rival?.stop()])
  }
}

async function coldJoin(server: MeasuredServer): Promise<{ ms: number; short: number }> {
  const [writing, joining] = (await server.places(2)) as [Place, Place]
  const whole = await fill(writing)
  const timesMs: number[] = []
  let short = 0
  // The first brings the code up, as on a relay that has run for days.
  for (let join = 0; join <= JOINS; join++) {
    await pause(UNTIL_PUT_AWAY_MS)
    const startedMs = performance.now()
    const person = new Person(joining)
    await person.opened
    const answered = new Promise<Uint8Array>((resolve) => { person.onAnswer = resolve })
    person.ask()
    const update = await answered
    const tookMs = performance.now() - startedMs
    const doc = new Y.Doc()
    Y.applyUpdate(doc, update)
    person.leave()
    if (join === 0) continue
    timesMs.push(tookMs)
    if (contentOf(doc) !== whole) short += 1
  }
  console.error(`  cold join, ${server.name}: ${timesMs.map((ms) => ms.toFixed(1)).join(', ')} ms`)
  return { ms: median(timesMs), short }
}

/** Several people's edits to things of a set, one after another, each an update of its own as a hand sends it. */
async function fill(place: Place): Promise<string> {
  const person = new Person(place)
  await person.opened
  const docs = Array.from({ length: MAKERS }, () => new Y.Doc())
  const all = new Y.Doc()
  for (let edit = 0; edit < EDITS; edit++) {
    const doc = docs[edit % MAKERS] as Y.Doc
    const before = Y.encodeStateVector(doc)
    doc.getMap('bench').set(`maker-${edit % MAKERS}-light-${Math.floor(edit / MAKERS) % 25}`, edit / 100)
    const update = Y.encodeStateAsUpdate(doc, before)
    Y.applyUpdate(all, update)
    person.say(syncMessage(2, update))
    if (edit % 50 === 49) await pause(25)
  }
  const answered = new Promise((resolve) => { person.onAnswer = resolve })
  person.ask()
  await answered
  person.leave()
  return contentOf(all)
}

function contentOf(doc: Y.Doc): string {
  return JSON.stringify(Object.entries(doc.getMap('bench').toJSON()).sort(([a], [b]) => (a < b ? -1 : 1)))
}
