import { IndexeddbPersistence } from 'y-indexeddb'
import type * as Y from 'yjs'
import { z } from 'zod'
import { readKept, writeKept } from './kept.ts'

/**
 * This device's own copy of a seat's plan. It belongs to the seat and not to the job, so that a copy dropped for a
 * refused edit never takes along what another seat of this browser still has to send. Each start over begins a new
 * generation; the one before stays until the relay's copy has arrived in the new one.
 */
const generationsKey = 'halfstop.copies'
const unsentKey = 'halfstop.unsent'

const generationsSchema = z.record(z.string(), z.number().int().min(0))
const unsentSchema = z.record(z.string(), z.literal(true))

export function openLocalCopy(seatId: string, generation: number, doc: Y.Doc): IndexeddbPersistence {
  return new IndexeddbPersistence(`halfstop/${seatId}/plan/${generation}`, doc)
}

export function generationOf(seatId: string): number {
  return readKept(generationsKey, generationsSchema, {})[seatId] ?? 0
}

export function keepGeneration(seatId: string, generation: number): void {
  writeKept(generationsKey, { ...readKept(generationsKey, generationsSchema, {}), [seatId]: generation })
}

/** Whether this seat has written anything since it was last sure that the relay has all of it. */
export function mayHoldUnsent(seatId: string): boolean {
  return readKept(unsentKey, unsentSchema, {})[seatId] === true
}

export function markUnsent(seatId: string, may: boolean): void {
  if (mayHoldUnsent(seatId) === may) return
  const { [seatId]: _before, ...others } = readKept(unsentKey, unsentSchema, {})
  writeKept(unsentKey, may ? { ...others, [seatId]: true } : others)
}

/** Whether the copy was read; some browsers keep none in private windows, and say so only by an error or by silence. */
export function readLocalCopy(localCopy: IndexeddbPersistence): Promise<boolean> {
  const patienceMs = 4_000
  return Promise.race([
    localCopy._db.then(() => localCopy.whenSynced).then(() => true, () => false),
    new Promise<boolean>((resolve) => setTimeout(() => resolve(false), patienceMs)),
  ])
}
