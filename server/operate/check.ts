import * as Y from 'yjs'
import { sha256 } from '../../shared-core/arithmetic/sha256.ts'
import { readNotesFromDocument } from '../../shared-core/document/notesDocument.ts'
import { readPlanFromDocument } from '../../shared-core/document/readPlan.ts'
import { allUpdatesOf } from '../store/sqliteLog.ts'
import { pragma, type SqliteDatabase } from '../store/sqliteDatabase.ts'

/** What was found in one room: one document of one job. */
export interface RoomReport {
  readonly jobId: string
  readonly document: string
  readonly updates: number
  readonly bytes: number
  /** In words; none when all is well. */
  readonly faults: readonly string[]
  /** What the page would mend by itself or leave out, in words. */
  readonly remarks: readonly string[]
}

export interface StoreReport {
  readonly rooms: readonly RoomReport[]
  readonly keptThings: number
  /** Of the file, of what refers to what, and of kept things. */
  readonly faults: readonly string[]
}

interface UpdateRow {
  readonly sequence: number
  readonly bytes: ArrayBuffer
}

/** Reads everything that an SQLite store or a backup keeps, as a relay and a page would, and says what is wrong. */
export function checkStore(database: SqliteDatabase): StoreReport {
  const fileFault = pragma(database, 'integrity_check')
  if (fileFault !== 'ok') return { rooms: [], keptThings: 0, faults: [`The file is damaged: ${String(fileFault)}`] }
  const dangling = database.prepare('PRAGMA foreign_key_check').all() as { table: string }[]
  const kept = checkKept(database)
  const rooms = (database.prepare(`SELECT DISTINCT job_id, document FROM ${allUpdatesOf(database)} ORDER BY job_id, document`).all() as { job_id: string; document: string }[])
    .map(({ job_id, document }) => checkRoom(database, job_id, document))
  return {
    rooms, keptThings: kept.things,
    faults: [...dangling.map(({ table }) => `A row of ${table} belongs to nothing.`), ...kept.faults],
  }
}

function checkRoom(database: SqliteDatabase, jobId: string, document: string): RoomReport {
  const rows = database.prepare(`SELECT sequence, bytes FROM ${allUpdatesOf(database)} WHERE job_id = ? AND document = ? ORDER BY sequence`)
    .all(jobId, document) as UpdateRow[]
  const doc = new Y.Doc()
  const faults: string[] = []
  rows.forEach(({ sequence, bytes }, index) => {
    const before = rows[index - 1]
    // A folded log begins with the sequence up to which it was folded; from there on nothing may be missing.
    if (before !== undefined && sequence !== before.sequence + 1) faults.push(`Updates ${before.sequence + 1} to ${sequence - 1} are missing.`)
    try {
      Y.applyUpdate(doc, new Uint8Array(bytes))
    } catch {
      faults.push(`Update ${sequence} cannot be read.`)
    }
  })
  if (doc.store.pendingStructs !== null || doc.store.pendingDs !== null) faults.push('Some edits rest on others that are not there.')
  const remarks = remarksOn(document, doc)
  doc.destroy()
  return { jobId, document, updates: rows.length, bytes: rows.reduce((total, { bytes }) => total + bytes.byteLength, 0), faults, remarks }
}

function remarksOn(document: string, doc: Y.Doc): readonly string[] {
  if (document === 'plan') return readPlanFromDocument(doc).repairs
  if (document === 'notes') {
    const { leftOut } = readNotesFromDocument(doc)
    return leftOut === 0 ? [] : [`${leftOut} entries of the notes cannot be read and are left out.`]
  }
  return []
}

/** A thing is kept under the SHA-256 of its bytes: either they still give it or they changed. */
function checkKept(database: SqliteDatabase): { readonly things: number; readonly faults: readonly string[] } {
  let things = 0
  const faults: string[] = []
  for (const row of database.prepare('SELECT job_id, hash, bytes FROM kept').iterate()) {
    const { job_id, hash, bytes } = row as { job_id: string; hash: string; bytes: ArrayBuffer }
    things += 1
    if (sha256(new Uint8Array(bytes)) !== hash) faults.push(`Kept thing ${hash} of job ${job_id} is not what it was.`)
  }
  return { things, faults }
}
