/**
 * `npm run -s check` reads every room and everything kept, as relay and page would, and says what is wrong; relays may
 * run meanwhile. `npm run -s check -- FILE` does so with a backup. Exit codes: 0 all well; 1 faults; 2 could not be read.
 */
import { existsSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Database from 'libsql'
import { backUpPostgres } from '../operate/backup.ts'
import { checkStore, type StoreReport } from '../operate/check.ts'
import { runCommand, whichStore } from '../operate/whichStore.ts'
import { pragma, storeErrorOf } from '../store/sqliteDatabase.ts'
import { StoreError } from '../store/storeError.ts'

void runCommand(async () => {
  const [file] = process.argv.slice(2)
  const store = file === undefined ? whichStore(process.env) : ({ kind: 'sqlite', path: file } as const)
  const report = store.kind === 'sqlite' ? checkFile(store.path) : await checkPostgres(store.url)
  print(report)
  return report.faults.length + report.rooms.filter((room) => room.faults.length > 0).length === 0 ? 0 : 1
})

function checkFile(path: string): StoreReport {
  if (!existsSync(path)) throw new StoreError('unreadable', `there is no store at ${path}`)
  const database = new Database(path, { timeout: 5_000 })
  try {
    pragma(database, 'query_only = ON')
    return checkStore(database)
  } catch (thrown) {
    throw storeErrorOf(thrown)
  } finally {
    database.close()
  }
}

/** What a database keeps is read as its backup, so that all of it is of one instant. */
async function checkPostgres(url: string): Promise<StoreReport> {
  const folder = mkdtempSync(join(tmpdir(), 'halfstop-check-'))
  try {
    await backUpPostgres(url, join(folder, 'copy.db'))
    return checkFile(join(folder, 'copy.db'))
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

function print({ rooms, keptThings, faults }: StoreReport): void {
  for (const { jobId, document, updates, bytes, faults: ofRoom, remarks } of rooms) {
    console.log(`${jobId}/${document}: ${updates} ${updates === 1 ? 'update' : 'updates'}, ${bytes} bytes${ofRoom.length === 0 ? '' : ', FAULTY'}`)
    for (const words of [...ofRoom, ...remarks]) console.log(`  ${words}`)
  }
  const faulty = rooms.filter((room) => room.faults.length > 0).length
  console.log(`${rooms.length} rooms, ${faulty} of them faulty; ${keptThings} kept things.`)
  faults.forEach((words) => console.log(words))
}
