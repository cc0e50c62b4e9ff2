import type { Access } from '../../server/access/access.ts'
import { makeLog } from '../../server/log.ts'
import { Neighbours, type NeighbourPace } from '../../server/neighbours/neighbours.ts'
import { PostgresLine } from '../../server/neighbours/postgresLine.ts'
import { makeAccess, serve } from '../../server/serve.ts'
import { readSettings } from '../../server/settings.ts'
import { PostgresStore } from '../../server/store/postgresStore.ts'
import { wireCut } from '../postgres/wireCut.ts'

export interface SoakRelay {
  readonly origin: string
  readonly access: Access
  readonly neighbours: Neighbours
  /** As the process would be lost: nothing more reaches the database, not even what is on its way. */
  kill(): Promise<void>
  stop(): Promise<void>
}

/** A relay in this process on a shared database, on a wire of its own. */
export async function openSoakRelay(databaseUrl: string, pace?: NeighbourPace): Promise<SoakRelay> {
  const wire = await wireCut(databaseUrl)
  const settings = {
    ...readSettings({}), PORT: 0, PROBE_MS: 50, MERGE_WINDOW_MS: 2, COMPACT_AFTER_UPDATES: 40, ROOM_IDLE_MS: 50,
    MAX_CONNECTIONS_PER_SEAT: 100,
  }
  const store = await PostgresStore.open(wire.url, 4)
  const neighbours = new Neighbours(new PostgresLine(wire.url), pace)
  const access = makeAccess(store, settings)
  const running = await serve({ settings, store, access, neighbours, log: makeLog('none'), clientFolder: '/nowhere', demo: null })
  const stop = async () => {
    await running.stop()
    wire.close()
  }
  return {
    origin: `ws://127.0.0.1:${running.port}`, access, neighbours, stop,
    kill() {
      wire.cut()
      return stop()
    },
  }
}

/** Waits until both have heard of one another. */
export async function haveMet(...relays: readonly SoakRelay[]): Promise<void> {
  while (relays.some(({ neighbours }) => neighbours.count < relays.length - 1)) await new Promise((resolve) => setTimeout(resolve, 2))
}
