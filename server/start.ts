/**
 * `npm start`: builds the page when it has to, opens the store, and serves page, API and live connections on one port
 * until told to stop. With `DATABASE_URL` the store is PostgreSQL's. `--no-build` serves the page as it is; `--settings` prints what can be set.
 */
import { mkdirSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { makeLog } from './log.ts'
import { Neighbours } from './neighbours/neighbours.ts'
import { PostgresLine } from './neighbours/postgresLine.ts'
import { makeAccess, mayOpenDemo, serve, type RunningRelay } from './serve.ts'
import { readSettings, SettingsError, settingsTable, type Settings } from './settings.ts'
import { buildClient, isBuildStale } from './startup/clientBuild.ts'
import { openDemoJob } from './startup/demoJob.ts'
import { welcomeText } from './startup/welcome.ts'
import { PostgresStore } from './store/postgresStore.ts'
import { SqliteStore } from './store/sqliteStore.ts'
import type { Store } from './store/store.ts'
import { StoreError } from './store/storeError.ts'

const PROJECT_FOLDER = fileURLToPath(new URL('..', import.meta.url))
const CLIENT_FOLDER = join(PROJECT_FOLDER, 'dist', 'client')
/** What still runs after this is cut off: people come back by themselves. */
const STOP_WITHIN_MS = 5_000

async function start(): Promise<void> {
  const settings = readSettings(process.env)
  const log = makeLog(settings.LOG_LEVEL)
  await buildIfStale()
  const { store, neighbours } = await openStore(settings)
  const access = makeAccess(store, settings)
  // Relays on one database would each need the demo's keys, which are kept beside one of them.
  const hasDemo = settings.DEMO === 'on' && settings.DATABASE_URL === ''
  const demo = hasDemo ? await openDemoJob(store, access, join(dataFolder(settings), 'demo-links.json')) : null
  const running = await serve({
    settings, store, access, log, clientFolder: CLIENT_FOLDER, demo: mayOpenDemo(settings) ? demo : null,
    ...(neighbours === null ? {} : { neighbours }),
  })
  running.metrics.watchProcess()
  console.log(welcomeText(running.origin, settings, demo))
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => void stop(running))
}

/** The database that several relays may share, with the line between them; otherwise a file of this one's own. */
async function openStore(settings: Settings): Promise<{ store: Store; neighbours: Neighbours | null }> {
  if (settings.DATABASE_URL !== '') {
    const store = await PostgresStore.open(settings.DATABASE_URL, settings.DATABASE_CONNECTIONS)
    return { store, neighbours: new Neighbours(new PostgresLine(settings.DATABASE_URL)) }
  }
  mkdirSync(dataFolder(settings), { recursive: true, mode: 0o700 })
  const store = new SqliteStore(join(dataFolder(settings), 'halfstop.db'), settings.DURABILITY)
  if (settings.MAX_STORE_BYTES > 0) store.limitBytes(settings.MAX_STORE_BYTES)
  return { store, neighbours: null }
}

function dataFolder(settings: Settings): string {
  return resolve(settings.DATA_DIR)
}

async function buildIfStale(): Promise<void> {
  if (process.argv.includes('--no-build') || !isBuildStale(PROJECT_FOLDER, CLIENT_FOLDER)) return
  const startedMs = Date.now()
  console.log('Building the page: only on the first start and after changes to it …')
  await buildClient(PROJECT_FOLDER)
  console.log(`Built in ${((Date.now() - startedMs) / 1_000).toFixed(1)} s.`)
}

async function stop(running: RunningRelay): Promise<void> {
  console.log('Stopping: keeping what arrived …')
  setTimeout(() => process.exit(1), STOP_WITHIN_MS).unref()
  await running.stop()
  process.exit(0)
}

/** What went wrong, in words for whoever typed the command. */
function explanation(thrown: unknown): string {
  if (thrown instanceof SettingsError) return `These settings cannot be used:\n${thrown.message}`
  if (thrown instanceof StoreError) return `${thrown.words}\n(${thrown.message})`
  const code = (thrown as { code?: unknown } | null)?.code
  if (code === 'EADDRINUSE') return 'That port is in use by another program. Choose another: PORT=4300 npm start'
  return thrown instanceof Error ? String(thrown.stack) : String(thrown)
}

if (process.argv.includes('--settings')) console.log(settingsTable())
else {
  start().catch((thrown: unknown) => {
    console.error(explanation(thrown))
    process.exit(1)
  })
}
