import { sha256 } from '../../shared-core/arithmetic/sha256.ts'
import type { KeptThings } from '../store/store.ts'

/** The job keeps as much as this relay lets it. */
export class FullError extends Error {
  constructor() {
    super('the job keeps as much as it may')
    this.name = 'FullError'
  }
}

/** Keeps things by the SHA-256 of their bytes, up to so many bytes a job. */
export class Keeper {
  readonly #store: KeptThings
  readonly #maxBytesPerJob: number

  constructor(store: KeptThings, maxBytesPerJob: number) {
    this.#store = store
    this.#maxBytesPerJob = maxBytesPerJob
  }

  /** @returns the name it is kept under. @throws FullError when the job may keep no more; StoreError */
  async keep(jobId: string, mediaType: string, content: Uint8Array | string): Promise<string> {
    const bytes = typeof content === 'string' ? Buffer.from(content, 'utf8') : content
    const hash = sha256(bytes)
    if ((await this.#store.kept(jobId, hash)) !== null) return hash
    if ((await this.#store.keptTotal(jobId)).bytes + bytes.byteLength > this.#maxBytesPerJob) throw new FullError()
    await this.#store.keep(jobId, { hash, mediaType, bytes })
    return hash
  }
}
