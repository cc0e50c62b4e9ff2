import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { PostgresStore } from '../../server/store/postgresStore.ts'
import { SqliteStore } from '../../server/store/sqliteStore.ts'
import { balance } from './balancer.ts'
import type { Victim } from './kills.ts'
import { startRelayProcess } from './relayProcess.ts'

/** Everything from one address is people of one office; these come all at once. */
const ROOM_FOR_ALL = { NEW_JOBS_PER_HOUR: '1000', MAX_CONNECTIONS_PER_SEAT: '200' }

/** One relay on a file, started again after each kill. */
export async function relayOnFile(): Promise<Victim & { close(): Promise<void> }> {
  const folder = mkdtempSync(join(tmpdir(), 'halfstop-kills-'))
  const start = () => startRelayProcess({ ...ROOM_FOR_ALL, DATA_DIR: folder, DEMO: 'off' })
  let relay = await start()
  const balancer = await balance(() => [relay.port])
  return {
    origin: balancer.origin,
    kill: () => relay.end('SIGKILL'),
    async kept(jobId) {
      const store = new SqliteStore(join(folder, 'halfstop.db'))
      try {
        return (await store.readDocument({ jobId, document: 'plan' })).updates
      } finally {
        await store.close()
      }
    },
    async recover() {
      relay = await start()
    },
    async close() {
      balancer.close()
      await relay.end('SIGKILL')
      rmSync(folder, { recursive: true, force: true })
    },
  }
}

/** Two relays on one database behind a balancer, one of which is killed and started again. */
export async function relaysOnDatabase(databaseUrl: string, environment: Record<string, string> = {}): Promise<Victim & { close(): Promise<void> }> {
  const start = () => startRelayProcess({ ...ROOM_FOR_ALL, ...environment, DATABASE_URL: environment.DATABASE_URL ?? databaseUrl })
  const relays = await Promise.all([start(), start()])
  let killed = 0
  const balancer = await balance(() => relays.map(({ port }) => port))
  const store = await PostgresStore.open(databaseUrl, 2)
  return {
    origin: balancer.origin,
    kill(dice) {
      killed = dice.below(relays.length)
      return relays[killed]!.end('SIGKILL')
    },
    kept: async (jobId) => (await store.readDocument({ jobId, document: 'plan' })).updates,
    async recover() {
      relays[killed] = await start()
    },
    async close() {
      balancer.close()
      await store.close()
      await Promise.all(relays.map((relay) => relay.end('SIGKILL')))
    },
  }
}
