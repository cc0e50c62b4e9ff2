import { pause } from './crowd.ts'
import { Person } from './person.ts'
import type { BenchRow } from './row.ts'
import { isHocuspocusInstalled, isStockServerInstalled, startHocuspocus, startOurs, startStock, type MeasuredServer } from './servers.ts'

const ROOMS = 300
const EDITS = 20

/** Memory of a room with one person in it who made a few edits, the connection with it: heap and buffers after tidying up. */
export async function roomMemoryRows(): Promise<BenchRow[]> {
  const ours = await bytesPerRoom(await startOurs())
  const stock = isStockServerInstalled() ? await bytesPerRoom(await startStock()) : null
  const rival = isHocuspocusInstalled() ? await bytesPerRoom(await startHocuspocus()) : null
  const note = [stock === null ? '' : `stock ${stock.toFixed(1)}`, rival === null ? '' : `Hocuspocus ${rival.toFixed(1)}`].filter(Boolean).join(', ')
  return [{ name: 'relay, memory of a room with one person', value: ours, unit: 'kB', target: stock, better: 'lower', note }]
}

async function bytesPerRoom(server: MeasuredServer): Promise<number> {
  await visitRooms(server, 30)
  const before = await server.memory()
  const people = await visitRooms(server, ROOMS)
  const after = await server.memory()
  people.forEach((person) => person.leave())
  await server.stop()
  return (after.usedBytes - before.usedBytes) / ROOMS / 1_000
}

async function visitRooms(server: MeasuredServer, rooms: number): Promise<Person[]> {
  const people: Person[] = []
  for (let room = 0; room < rooms; room++) {
    for (const place of await server.places(1)) {
      const person = new Person(place)
      await person.opened
      for (let edit = 0; edit < EDITS; edit++) person.doc.getMap('bench').set(`light-${edit % 5}`, edit)
      people.push(person)
    }
  }
  await pause(3_000)
  return people
}
