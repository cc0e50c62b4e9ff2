import type { DocumentKey } from '../store/store.ts'
import { asStoreError, StoreError } from '../store/storeError.ts'
import { noteCompleteness } from './catchingUp.ts'
import type { Company } from './company.ts'
import type { Connection } from './connection.ts'
import { goBack, isFull, readOn } from './documentCare.ts'
import { serveOwnWrite, type OwnWrite } from './ownWrite.ts'
import type { RoomHouse } from './roomHouse.ts'
import type { SharedDocument } from './sharedDocument.ts'
import { refuseAll, type Change } from './work.ts'

/** How a room's document changes: applied, then kept, and only then shown to everybody here and told to other relays. */
export class Taking {
  readonly #key: DocumentKey
  readonly #house: RoomHouse
  readonly #company: Company
  readonly #mayWrite: (connection: Connection) => boolean
  readonly #readOnLater: (sequence: number) => void

  /** @param readOnLater asks for what another relay kept up to that sequence to be read, in its turn */
  constructor(
    key: DocumentKey, house: RoomHouse, company: Company,
    mayWrite: (connection: Connection) => boolean, readOnLater: (sequence: number) => void,
  ) {
    this.#key = key
    this.#house = house
    this.#company = company
    this.#mayWrite = mayWrite
    this.#readOnLater = readOnLater
  }

  async take(document: SharedDocument, changes: readonly Change[]): Promise<void> {
    if (document.bytes > this.#house.limits.documentBytes && await isFull(document, this.#key, this.#house)) return refuseAll(changes, 'document-full')
    let applied
    try {
      applied = document.apply(changes.map((change) => change.update), !changes.some((change) => change.isAnswer))
    } catch {
      return this.#takeOneByOne(document, changes)
    }
    changes.forEach((change, index) => noteCompleteness(document, change, applied.incomplete.has(index), this.#mayWrite))
    if (applied.news === null) return
    let sequence
    try {
      sequence = await document.keep(applied.news)
    } catch (thrown) {
      this.#house.health.failed(asStoreError(thrown))
      await this.goBack(document)
      return refuseAll(changes, 'not-kept')
    }
    this.#company.passOnEdits(applied.news, changes.length)
    this.#tellKept(document, sequence)
  }

  async writeOwn(document: SharedDocument, write: OwnWrite): Promise<void> {
    if (await isFull(document, this.#key, this.#house)) return write.reject(new StoreError('full', 'the document is as large as may be'))
    const news = await serveOwnWrite(document, write, this.#house.health, () => this.goBack(document))
    if (news === null) return
    this.#company.passOnEdits(news, 1)
    this.#tellKept(document, document.lastSequence)
  }

  /** Back to what is kept, showing what others kept meanwhile. */
  async goBack(document: SharedDocument): Promise<void> {
    this.#passOn(await goBack(document, this.#house.health))
  }

  /** Takes in and shows what other relays kept. */
  async readOn(document: SharedDocument): Promise<void> {
    this.#passOn(await readOn(document, this.#house.health))
  }

  /** One of them broke the document: back to what is kept, then each by itself, so that only the culprit is turned out. */
  async #takeOneByOne(document: SharedDocument, changes: readonly Change[]): Promise<void> {
    await this.goBack(document)
    if (document.isStale) return refuseAll(changes, 'not-kept')
    const [only, ...others] = changes
    if (only !== undefined && others.length === 0) return only.connection.close('badFrame')
    for (const change of changes) await this.take(document, [change])
  }

  /** Another relay kept it: here it only has to be shown. */
  #passOn(news: Uint8Array | null): void {
    if (news !== null) this.#company.passOnEdits(news, 1)
  }

  /** What is kept now others may want to read. */
  #tellKept(document: SharedDocument, sequence: number): void {
    this.#house.neighbours?.rowsKept(this.#key, sequence)
    if (document.isBehind) this.#readOnLater(Infinity)
  }
}
