import { readdirSync, readFileSync } from 'node:fs'
import { Person, type Hands } from './person.ts'
import type { MeasuredServer } from './servers.ts'

const SETTLE_MS = 1_500
const MEASURE_MS = 3_000
const DRAIN_MS = 4_000

/** So many rooms of so many people, each doing the same. */
export interface Crowd {
  readonly rooms: number
  readonly people: number
  readonly hands: Hands
  /** A hand that drags makes the page write ten times a second. */
  readonly editEveryMs: number
}

export interface Measured {
  /** One for each edit seen by another person, however many came in one message. */
  readonly latenciesMs: readonly number[]
  /** How many there should have been. */
  readonly expected: number
  readonly cpuSeconds: number
}

/**
 * Everybody edits, evenly spread over the interval. An edit is one clock tick of its maker's document, so what a message
 * brings is read off its clocks, the same way for every server.
 */
export async function measureCrowd(server: MeasuredServer, crowd: Crowd): Promise<Measured> {
  const latenciesMs: number[] = []
  const rooms = await enter(server, crowd)
  let isMeasuring = false
  for (const room of rooms) {
    const madeBy = new Map(room.map((person) => [person.clientId, person.sentMs]))
    for (const person of room) {
      person.onSeen = (makerId, from, to, nowMs) => {
        const sent = makerId === person.clientId || !isMeasuring ? undefined : madeBy.get(makerId)
        if (sent === undefined) return
        for (let clock = from; clock < to; clock++) {
          const madeMs = sent.get(clock)
          if (madeMs !== undefined) latenciesMs.push(nowMs - madeMs)
        }
      }
    }
  }
  const everybody = rooms.flat()
  everybody.forEach((person, index) => person.start(crowd.hands, crowd.editEveryMs, (index * crowd.editEveryMs) / everybody.length))
  await pause(SETTLE_MS)
  everybody.forEach((person) => person.sentMs.clear())
  isMeasuring = true
  const cpuBefore = cpuSecondsOf(server.pid)
  await pause(MEASURE_MS)
  everybody.forEach((person) => person.stop())
  const expected = everybody.reduce((total, person) => total + person.sentMs.size, 0) * (crowd.people - 1)
  for (let waitedMs = 0; latenciesMs.length < expected && waitedMs < DRAIN_MS; waitedMs += 10) await pause(10)
  const cpuSeconds = cpuSecondsOf(server.pid) - cpuBefore
  everybody.forEach((person) => person.leave())
  return { latenciesMs, expected, cpuSeconds }
}

const WARMING: readonly Crowd[] = [
  { rooms: 1, people: 30, hands: 'edit and point', editEveryMs: 20 },
  { rooms: 60, people: 3, hands: 'edit', editEveryMs: 50 },
]

/**
 * Some ten thousand edits ahead of any measurement, in one full room and in many small ones: a server's code is compiled
 * as it runs, and relays run for days.
 */
export async function warmUp(server: MeasuredServer): Promise<void> {
  for (const crowd of WARMING) {
    const people = (await enter(server, crowd)).flat()
    people.forEach((person, index) => person.start(crowd.hands, crowd.editEveryMs, (index * crowd.editEveryMs) / people.length))
    await pause(5_000)
    people.forEach((person) => person.leave())
  }
}

async function enter(server: MeasuredServer, { rooms, people }: Crowd): Promise<Person[][]> {
  const entered: Person[][] = []
  for (let count = 0; count < rooms; count++) {
    const room = (await server.places(people)).map((place) => new Person(place))
    await Promise.all(room.map((person) => person.opened))
    entered.push(room)
  }
  return entered
}

/** CPU time all threads of a process have used, to the nanosecond (Linux, sched-stats.rst: the first figure of schedstat). */
export function cpuSecondsOf(pid: number): number {
  const threads = readdirSync(`/proc/${pid}/task`)
  return threads.reduce((total, thread) => total + Number(readFileSync(`/proc/${pid}/task/${thread}/schedstat`, 'utf8').split(' ')[0]), 0) / 1e9
}

export function pause(ms: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, ms))
}
