import { openDB, rtop } from 'lib0/indexeddb'
import { commandSchema } from '../../../shared-core/notes/command.ts'
import type { OutboxEntry, OutboxShelf } from './outboxShelf.ts'
import { pageShelf } from './pageShelf.ts'

const STORE = 'commands'
/** A browser that keeps nothing in private windows may answer with silence. */
const PATIENCE_MS = 4_000

type Row = OutboxEntry & { readonly id: string }

/**
 * The outbox of a seat in this browser's database, where it survives reloads and days without a network. What the
 * browser will not keep lies in the page alone, and `outlivesPage` says so.
 */
export function deviceShelf(seatId: string): OutboxShelf {
  const name = `halfstop/${seatId}/outbox`
  const inPage = pageShelf()
  let lastRead: readonly OutboxEntry[] = []
  let isKeeping = true
  const database = Promise.race([
    openDB(name, (opened: IDBDatabase) => opened.createObjectStore(STORE, { autoIncrement: true }).createIndex('id', 'id', { unique: true })),
    new Promise<null>((resolve) => setTimeout(() => resolve(null), PATIENCE_MS)),
  ]).catch(() => null)
  void database.then((opened) => void (isKeeping = opened !== null))
  const pages = typeof BroadcastChannel === 'undefined' ? null : new BroadcastChannel(name)

  /** Does something to the kept rows, and waits until it is written; false where nothing can be kept. */
  async function change(act: (rows: IDBObjectStore) => Promise<void>): Promise<boolean> {
    try {
      const opened = await database
      if (opened === null) return false
      const transaction = opened.transaction(STORE, 'readwrite')
      const written = new Promise<boolean>((resolve) => {
        transaction.oncomplete = () => resolve(true)
        transaction.onabort = () => resolve(false)
      })
      await act(transaction.objectStore(STORE))
      return await written
    } catch {
      return false
    } finally {
      pages?.postMessage('changed')
    }
  }

  return {
    async read() {
      try {
        const opened = await database
        const rows = opened === null ? [] : await rtop(opened.transaction(STORE).objectStore(STORE).getAll()) as Row[]
        lastRead = rows.map(entryOf)
      } catch {
        // The browser has closed the database: what was there is still known here, and goes on being sent.
      }
      return [...lastRead, ...await inPage.read()]
    },
    async put(entry) {
      const isWritten = await change(async (rows) => {
        const key: unknown = await rtop(rows.index('id').getKey(entry.command.id))
        if (key === undefined) await rtop(rows.add({ ...entry, id: entry.command.id } satisfies Row))
      })
      if (!isWritten) await inPage.put(entry)
    },
    async mark(id, refused) {
      await inPage.mark(id, refused)
      await change(async (rows) => {
        const key = await rtop(rows.index('id').getKey(id)) as IDBValidKey | undefined
        if (key !== undefined) await rtop(rows.put({ ...await rtop(rows.get(key)) as Row, refused }, key))
      })
    },
    async remove(ids) {
      await inPage.remove(ids)
      await change(async (rows) => {
        for (const id of ids) {
          const key = await rtop(rows.index('id').getKey(id)) as IDBValidKey | undefined
          if (key !== undefined) await rtop(rows.delete(key))
        }
      })
    },
    outlivesPage: () => isKeeping && inPage.isEmpty(),
    onOtherPage(listener) {
      pages?.addEventListener('message', listener)
      return () => pages?.removeEventListener('message', listener)
    },
    close() {
      pages?.close()
      void database.then((opened) => opened?.close())
    },
  }
}

/** An earlier version of the page may have left what this one does not know: it is kept to be copied, and not sent. */
function entryOf({ command, writtenMs, refused }: Row): OutboxEntry {
  const isKnown = commandSchema.safeParse(command).success
  return { command, writtenMs, refused: isKnown ? refused : { words: 'This page no longer knows this kind of note.', mayTryAgain: false } }
}
