import { openDB, rtop } from 'lib0/indexeddb'
import { createStore } from 'zustand/vanilla'
import { readPage, type NotebookPage } from '../../shared-core/notebook/page.ts'

const STORE = 'pages'

interface Shelf {
  /** Null until it was looked. */
  readonly pages: readonly NotebookPage[] | null
  /** Why the browser keeps none, in words. */
  readonly trouble: string
}

/** The notebook of this device: past looks of every job that was open on it. It belongs to no job and leaves the device only as a file. */
export const notebookShelf = createStore<Shelf>()(() => ({ pages: null, trouble: '' }))

let opened: Promise<IDBDatabase> | null = null

async function rows(mode: IDBTransactionMode): Promise<{ readonly store: IDBObjectStore; readonly written: Promise<void> }> {
  opened ??= openDB('halfstop/notebook', (database: IDBDatabase) => database.createObjectStore(STORE, { keyPath: 'id' }))
  const transaction = (await opened).transaction(STORE, mode)
  const written = new Promise<void>((resolve, reject) => {
    transaction.oncomplete = () => resolve()
    transaction.onabort = () => reject(transaction.error ?? new Error('not written'))
  })
  return { store: transaction.objectStore(STORE), written }
}

export async function readShelf(): Promise<void> {
  try {
    const { store } = await rows('readonly')
    const kept = await rtop(store.getAll()) as unknown[]
    notebookShelf.setState({ pages: kept.flatMap((row) => readPage(row) ?? []), trouble: '' })
  } catch {
    notebookShelf.setState({ pages: [], trouble: 'This browser keeps no notebook (a private window, or no room left). Save looks as job files instead.' })
  }
}

/** Keeps pages, or a changed one in its place. False, with words on the shelf, where the browser did not. */
export async function keepPages(pages: readonly NotebookPage[]): Promise<boolean> {
  return change((store) => pages.forEach((page) => store.put(page)))
}

export async function dropPage(id: string): Promise<boolean> {
  return change((store) => void store.delete(id))
}

async function change(act: (store: IDBObjectStore) => void): Promise<boolean> {
  try {
    const { store, written } = await rows('readwrite')
    act(store)
    await written
    await readShelf()
    return true
  } catch {
    notebookShelf.setState({ trouble: 'The browser did not keep that. Nothing that was kept before is lost.' })
    return false
  }
}
