/**
 * `npm run -s backup -- FILE` copies the whole store, as it is at one instant, into one SQLite file, while relays go on
 * writing to it. The store is the one that `npm start` opens with the same settings (DATA_DIR or DATABASE_URL).
 */
import { backUpPostgres, backUpSqlite } from '../operate/backup.ts'
import { runCommand, whichStore } from '../operate/whichStore.ts'

const [target] = process.argv.slice(2)

void runCommand(async () => {
  if (target === undefined) {
    console.error('usage: npm run -s backup -- FILE')
    process.exit(2)
  }
  const store = whichStore(process.env)
  const counts = store.kind === 'sqlite' ? backUpSqlite(store.path, target) : await backUpPostgres(store.url, target)
  console.log(`${target}: ${Object.entries(counts).map(([table, rows]) => `${rows} ${table.replace('_', ' ')}`).join(', ')}`)
  return 0
})
