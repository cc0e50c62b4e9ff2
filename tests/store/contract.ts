import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { LinkRecord, SealedVote, SeatRecord, Store } from '../../server/store/store.ts'
import { StoreError } from '../../server/store/storeError.ts'

/** Every promise written in server/store/store.ts, for any store: `open` gives a fresh empty one. */
export function describeStoreContract(name: string, open: () => Promise<Store>): void {
  describe(`${name} keeps the store's promises`, () => {
    let store: Store
    const plan = { jobId: 'job', document: 'plan' } as const
    const rig = { jobId: 'job', document: 'rig' } as const

    beforeEach(async () => {
      store = await open()
      await store.createJob({ jobId: 'job', createdMs: 1_000, links: [link('a')], documents: [] })
    })
    afterEach(() => store.close())

    it('gives no updates for a document never written', async () => {
      expect(await store.readDocument(plan)).toEqual({ updates: [], lastSequence: 0 })
      expect(await store.readDocument({ jobId: 'nowhere', document: 'plan' })).toEqual({ updates: [], lastSequence: 0 })
    })

    it('gives updates back in order, byte for byte, numbered from 1', async () => {
      const sequences = []
      for (const value of [1, 2, 3]) sequences.push(await store.append(plan, bytes(value)))
      expect(sequences).toEqual([1, 2, 3])
      const kept = await store.readDocument(plan)
      expect(kept.updates.map((update) => Array.from(update))).toEqual([[1, 1], [2, 2], [3, 3]])
      expect(kept.lastSequence).toBe(3)
    })

    it('numbers appends in the order they were asked for, also when none was waited for', async () => {
      const sequences = await Promise.all([1, 2, 3, 4].map((value) => store.append(plan, bytes(value))))
      expect(sequences).toEqual([1, 2, 3, 4])
      expect((await store.readDocument(plan)).updates.map((update) => update[0])).toEqual([1, 2, 3, 4])
    })

    it('keeps documents apart, each with its own sequence', async () => {
      await Promise.all([store.append(plan, bytes(1)), store.append(rig, bytes(9)), store.append(plan, bytes(2))])
      expect((await store.readDocument(plan)).updates.map((update) => update[0])).toEqual([1, 2])
      expect(await store.readDocument(rig)).toEqual({ updates: [bytes(9)], lastSequence: 1 })
    })

    it('does not feel later changes of the bytes it was given', async () => {
      const update = bytes(5)
      await store.append(plan, update)
      update.fill(0)
      expect((await store.readDocument(plan)).updates.map((kept) => Array.from(kept))).toEqual([[5, 5]])
    })

    it('keeps an empty update and one of a megabyte', async () => {
      const large = new Uint8Array(1_000_000).map((_, index) => index % 251)
      await store.append(plan, new Uint8Array(0))
      await store.append(plan, large)
      const { updates } = await store.readDocument(plan)
      expect(updates[0]?.length).toBe(0)
      expect(Buffer.compare(Buffer.from(updates[1] as Uint8Array), Buffer.from(large))).toBe(0)
    })

    it('compacts up to a sequence and leaves later updates and the numbering alone', async () => {
      for (const value of [1, 2, 3, 4]) await store.append(plan, bytes(value))
      await store.append(rig, bytes(8))
      await store.compact(plan, bytes(77), 3)
      expect(await store.readDocument(plan)).toEqual({ updates: [bytes(77), bytes(4)], lastSequence: 4 })
      expect(await store.append(plan, bytes(5))).toBe(5)
      await store.compact(plan, bytes(78), 5)
      expect(await store.readDocument(plan)).toEqual({ updates: [bytes(78)], lastSequence: 5 })
      expect(await store.append(plan, bytes(6))).toBe(6)
      expect((await store.readDocument(rig)).updates).toEqual([bytes(8)])
    })

    it('gives what stands behind a sequence, and a fold when its last does', async () => {
      for (const value of [1, 2, 3, 4]) await store.append(plan, bytes(value))
      expect(await store.readDocument(plan, 2)).toEqual({ updates: [bytes(3), bytes(4)], lastSequence: 4 })
      expect(await store.readDocument(plan, 4)).toEqual({ updates: [], lastSequence: 4 })
      expect(await store.readDocument({ jobId: 'nowhere', document: 'plan' }, 7)).toEqual({ updates: [], lastSequence: 7 })
      await store.compact(plan, bytes(77), 3)
      expect(await store.readDocument(plan, 2)).toEqual({ updates: [bytes(77), bytes(4)], lastSequence: 4 })
      expect(await store.readDocument(plan, 3)).toEqual({ updates: [bytes(4)], lastSequence: 4 })
    })

    it('keeps an update meant for one place there or not at all, whoever shares its turn', async () => {
      expect(await store.append(plan, bytes(1), 0)).toBe(1)
      await expect(store.append(plan, bytes(2), 0)).rejects.toMatchObject({ name: 'StoreError', trouble: 'conflict' })
      await expect(store.append(plan, bytes(2), 5)).rejects.toMatchObject({ trouble: 'conflict' })
      const together = await Promise.allSettled([
        store.append(plan, bytes(3), 1), store.append(plan, bytes(4), 1), store.append(rig, bytes(5), 0), store.append(plan, bytes(6)),
      ])
      expect(together.map((outcome) => (outcome.status === 'fulfilled' ? outcome.value : 'refused'))).toEqual([2, 'refused', 1, 3])
      expect((await store.readDocument(plan)).updates).toEqual([bytes(1), bytes(3), bytes(6)])
    })

    it('makes nothing of compacting a document never written', async () => {
      await store.compact(plan, bytes(1), 10)
      expect(await store.readDocument(plan)).toEqual({ updates: [], lastSequence: 0 })
    })

    it('creates a job with its links and first contents, and refuses the same job twice', async () => {
      const job = {
        jobId: 'second', createdMs: 2_000, links: [link('b', 'second'), link('c', 'second')],
        documents: [{ document: 'plan' as const, update: bytes(4) }],
      }
      await store.createJob(job)
      expect(await store.job('second')).toEqual({ jobId: 'second', createdMs: 2_000, penSeatId: null })
      expect((await store.linksOf('second')).map((found) => found.linkId)).toEqual(['b', 'c'])
      expect(await store.readDocument({ jobId: 'second', document: 'plan' })).toEqual({ updates: [bytes(4)], lastSequence: 1 })
      await expect(store.createJob({ ...job, links: [], documents: [] })).rejects.toBeInstanceOf(StoreError)
      expect(await store.job('nowhere')).toBeNull()
    })

    it('remembers who holds the pen', async () => {
      await store.setPen('job', 'seat-1')
      expect((await store.job('job'))?.penSeatId).toBe('seat-1')
      await store.setPen('job', null)
      expect((await store.job('job'))?.penSeatId).toBeNull()
    })

    it('gives links back as they were, and never moves the moment one ended', async () => {
      expect(await store.link('a')).toEqual(link('a'))
      await store.addLink(link('later'))
      await store.endLink('a', { closedMs: 50 })
      await store.endLink('a', { closedMs: 60, revokedMs: 70 })
      await store.endLink('a', { revokedMs: 80 })
      expect(await store.link('a')).toEqual({ ...link('a'), closedMs: 50, revokedMs: 70 })
      expect((await store.linksOf('job')).map((found) => found.linkId)).toEqual(['a', 'later'])
      expect(await store.link('nowhere')).toBeNull()
    })

    it('keeps seats, their names and the link they hang on', async () => {
      await store.addLink(link('b'))
      await store.addSeat(seat('s1'))
      await store.addSeat(seat('s2'))
      expect(await store.seat('s1')).toEqual(seat('s1'))
      expect(await store.seatCount('a')).toBe(2)
      await store.renameSeat('s1', 'Řehoř 光')
      await store.moveSeat('s1', 'b')
      expect(await store.seat('s1')).toEqual({ ...seat('s1'), name: 'Řehoř 光', linkId: 'b' })
      expect(await store.seatCount('a')).toBe(1)
      await store.addSeat(seat('s3'))
      expect((await store.seatsOf('a')).map(({ seatId }) => seatId)).toEqual(['s2', 's3'])
      expect(await store.seatsOf('nowhere')).toEqual([])
      expect(await store.seat('nowhere')).toBeNull()
    })

    it('keeps things by their name, byte for byte, once, and for their own job alone', async () => {
      await store.createJob({ jobId: 'second', createdMs: 0, links: [], documents: [] })
      const picture = { hash: 'aa', mediaType: 'image/png', bytes: new Uint8Array(30_000).map((_, index) => index % 251) }
      await store.keep('job', picture)
      await store.keep('job', { ...picture, mediaType: 'text/html' })
      await store.keep('job', { hash: 'bb', mediaType: 'application/json', bytes: bytes(1) })
      expect(await store.kept('job', 'aa')).toEqual(picture)
      expect(await store.kept('second', 'aa')).toBeNull()
      expect(await store.kept('job', 'cc')).toBeNull()
      expect(await store.keptTotal('job')).toEqual({ things: 2, bytes: 30_002 })
      expect(await store.keptTotal('second')).toEqual({ things: 0, bytes: 0 })
    })

    it('does not feel later changes of the bytes of a kept thing', async () => {
      const given = bytes(5)
      await store.keep('job', { hash: 'aa', mediaType: 'image/png', bytes: given })
      given.fill(0)
      expect((await store.kept('job', 'aa'))?.bytes).toEqual(bytes(5))
    })

    it('keeps nothing for a job that is not there', async () => {
      await expect(store.keep('nowhere', { hash: 'aa', mediaType: 'image/png', bytes: bytes(1) })).rejects.toBeInstanceOf(StoreError)
      await expect(store.sealVote('nowhere', sealed('s1', 'c1', 'x'))).rejects.toBeInstanceOf(StoreError)
    })

    it('keeps the last vote of each seat, in the order of their first, and the same command once', async () => {
      await store.sealVote('job', sealed('s1', 'c1', 'first'))
      await store.sealVote('job', sealed('s2', 'c2', 'other'))
      await store.sealVote('job', sealed('s1', 'c3', 'second thought'))
      await store.sealVote('job', sealed('s1', 'c1', 'first'))
      await store.sealVote('job', { ...sealed('s1', 'c4', 'elsewhere'), ballotId: 'b2' })
      expect(await store.sealedVotes('job', 'b1')).toEqual([sealed('s1', 'c3', 'second thought'), sealed('s2', 'c2', 'other')])
      expect(await store.sealedVotes('nowhere', 'b1')).toEqual([])
    })

    it('answers a probe and leaves nothing behind', async () => {
      await store.probe()
      await store.probe()
      expect(await store.readDocument(plan)).toEqual({ updates: [], lastSequence: 0 })
    })

    it('refuses everything after it was closed, as a store error', async () => {
      await store.close()
      for (const call of [
        () => store.append(plan, bytes(1)), () => store.readDocument(plan), () => store.compact(plan, bytes(1), 1),
        () => store.probe(), () => store.job('job'), () => store.linksOf('job'), () => store.addSeat(seat('s3')),
        () => store.keep('job', { hash: 'aa', mediaType: 'image/png', bytes: bytes(1) }), () => store.kept('job', 'aa'),
        () => store.sealVote('job', sealed('s1', 'c1', 'x')), () => store.sealedVotes('job', 'b1'),
      ]) {
        await expect(call()).rejects.toMatchObject({ name: 'StoreError', trouble: 'closed' })
      }
      await store.close()
    })
  })
}

function sealed(seatId: string, commandId: string, vote: string): SealedVote {
  return { ballotId: 'b1', seatId, commandId, vote }
}

function bytes(value: number): Uint8Array {
  return new Uint8Array([value, value])
}

function link(linkId: string, jobId = 'job'): LinkRecord {
  return {
    linkId, jobId, role: 'client', keyHash: new Uint8Array(32).fill(3), createdMs: 10, expiresMs: 9_999_999_999_999,
    closedMs: null, revokedMs: null,
  }
}

function seat(seatId: string): SeatRecord {
  return {
    seatId, jobId: 'job', linkId: 'a', role: 'client', name: 'Pell', secretHash: new Uint8Array(32).fill(7), createdMs: 20,
  }
}
