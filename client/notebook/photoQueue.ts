import { openDB, rtop } from 'lib0/indexeddb'
import { createStore } from 'zustand/vanilla'
import { keepPicture } from '../connection/api.ts'

const STORE = 'photos'
const LONGEST_PIXELS = 1_600
const AGAIN_MS = 15_000

export interface WaitingPhoto {
  readonly id: string
  readonly lookId: string
  readonly standId: string
  readonly jpeg: Blob
}

export interface PhotoQueue {
  /** What waits for the relay, on this device. */
  readonly waiting: readonly WaitingPhoto[]
  /** Why the last one was not taken; empty while there is no trouble but the network. */
  readonly trouble: string
}

/**
 * Photographs on their way to the relay: kept in this browser's database, so that a set without a network loses none, and
 * sent one by one while a page that shows them is open. `onKept` is told of each with the name it is kept under.
 * Nothing is read or sent before it is started.
 */
export function createPhotoQueue(seatId: string, onKept: (photo: WaitingPhoto, hash: string) => void) {
  const store = createStore<PhotoQueue>()(() => ({ waiting: [], trouble: '' }))
  let database: Promise<IDBDatabase | null> = Promise.resolve(null)
  let isSending = false
  let isClosed = true
  const rows = async (mode: IDBTransactionMode): Promise<IDBObjectStore | null> => (await database)?.transaction(STORE, mode).objectStore(STORE) ?? null

  async function readKept(): Promise<void> {
    const all = await rows('readonly')
    const kept = all === null ? [] : await rtop(all.getAll()).catch(() => []) as WaitingPhoto[]
    store.setState(({ waiting }) => ({ waiting: [...kept.filter(({ id }) => waiting.every((one) => one.id !== id)), ...waiting] }))
  }

  /** Changes what is kept on this device, where it keeps anything. */
  async function keep(change: (all: IDBObjectStore) => IDBRequest): Promise<void> {
    const all = await rows('readwrite')
    if (all !== null) await rtop(change(all)).catch(() => null)
  }

  async function send(): Promise<void> {
    if (isSending || isClosed) return
    isSending = true
    try {
      for (const photo of store.getState().waiting) {
        const answer = await keepPicture(seatId, photo.jpeg)
        if (isClosed) return
        if (!answer.ok) {
          store.setState({ trouble: answer.status === null ? '' : answer.words })
          return
        }
        onKept(photo, answer.value.hash)
        await keep((all) => all.delete(photo.id))
        store.setState(({ waiting }) => ({ waiting: waiting.filter(({ id }) => id !== photo.id), trouble: '' }))
      }
    } finally {
      isSending = false
    }
  }

  return {
    store,
    async add(id: string, lookId: string, standId: string, file: Blob): Promise<void> {
      const photo = { id, lookId, standId, jpeg: await smaller(file) }
      store.setState(({ waiting }) => ({ waiting: [...waiting, photo] }))
      await keep((all) => all.put(photo))
      await send()
    },
    /** Reads what waits on this device and sends it, now and whenever there may be a network; gives back how to stop. */
    start(): () => void {
      isClosed = false
      database = openDB(`halfstop/${seatId}/photos`, (opened: IDBDatabase) => void opened.createObjectStore(STORE, { keyPath: 'id' })).catch(() => null)
      const again = (): void => void send()
      const timer = setInterval(again, AGAIN_MS)
      globalThis.addEventListener('online', again)
      void readKept().then(send)
      const opened = database
      return () => {
        isClosed = true
        clearInterval(timer)
        globalThis.removeEventListener('online', again)
        void opened.then((one) => one?.close())
      }
    },
  }
}

/** A camera's file is larger than a record of a stand needs, and tells where it was taken: drawn anew, it does neither. */
async function smaller(file: Blob): Promise<Blob> {
  const picture = await createImageBitmap(file, { imageOrientation: 'from-image' })
  const scale = Math.min(1, LONGEST_PIXELS / Math.max(picture.width, picture.height))
  const canvas = new OffscreenCanvas(Math.max(1, Math.round(picture.width * scale)), Math.max(1, Math.round(picture.height * scale)))
  canvas.getContext('2d')?.drawImage(picture, 0, 0, canvas.width, canvas.height)
  picture.close()
  return canvas.convertToBlob({ type: 'image/jpeg', quality: 0.85 })
}
