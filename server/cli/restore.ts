/**
 * `npm run -s restore -- FILE` brings every job of a backup back that the store lacks. Jobs that it has stay as they are,
 * so relays may run meanwhile. To go back to a backup altogether, restore into an empty store: another DATA_DIR.
 */
import { restorePostgres, restoreSqlite } from '../operate/restore.ts'
import { runCommand, whichStore } from '../operate/whichStore.ts'
import { mkdirSync } from 'node:fs'
import { dirname } from 'node:path'

const [backup] = process.argv.slice(2)

void runCommand(async () => {
  if (backup === undefined) {
    console.error('usage: npm run -s restore -- FILE')
    process.exit(2)
  }
  const store = whichStore(process.env)
  if (store.kind === 'sqlite') mkdirSync(dirname(store.path), { recursive: true, mode: 0o700 })
  const { brought, there } = store.kind === 'sqlite' ? restoreSqlite(backup, store.path) : await restorePostgres(backup, store.url)
  console.log(`Brought back ${brought.length} ${brought.length === 1 ? 'job' : 'jobs'}${there.length === 0 ? '.' : `; ${there.length} were there and stay as they are.`}`)
  brought.forEach((jobId) => console.log(`  ${jobId}`))
  return 0
})
