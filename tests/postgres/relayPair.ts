import { Neighbours, type NeighbourPace } from '../../server/neighbours/neighbours.ts'
import { PostgresLine } from '../../server/neighbours/postgresLine.ts'
import type { Settings } from '../../server/settings.ts'
import { PostgresStore } from '../../server/store/postgresStore.ts'
import { openRelay, type TestRelay } from '../relay/openRelay.ts'

export interface SharingRelay extends TestRelay {
  readonly neighbours: Neighbours
}

/** One relay, in this process, on a database that others may share. */
export async function openSharingRelay(url: string, changed: Partial<Settings> = {}, pace?: NeighbourPace): Promise<SharingRelay> {
  const store = await PostgresStore.open(url, 4)
  const neighbours = new Neighbours(new PostgresLine(url), pace)
  const relay = await openRelay({ PROBE_MS: 50, ...changed }, store, { neighbours })
  return { ...relay, neighbours }
}

/** Two relays on one database that have heard of one another. */
export async function openPair(url: string, changed: Partial<Settings> = {}, pace?: NeighbourPace): Promise<[SharingRelay, SharingRelay]> {
  const pair: [SharingRelay, SharingRelay] = [await openSharingRelay(url, changed, pace), await openSharingRelay(url, changed, pace)]
  while (pair.some(({ neighbours }) => neighbours.count < 1)) await new Promise((resolve) => setTimeout(resolve, 5))
  return pair
}

