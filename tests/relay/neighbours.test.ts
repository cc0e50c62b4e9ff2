import fc from 'fast-check'
import { describe, expect, it, onTestFinished } from 'vitest'
import type { Line, LineEnd } from '../../server/neighbours/line.ts'
import { Neighbours, type NeighbourListener, type NeighbourPace } from '../../server/neighbours/neighbours.ts'
import { Joiner, partsOf } from '../../server/neighbours/parts.ts'
import { until } from './until.ts'

/** A line within this process, over which everything arrives at once. */
class OpenAir {
  readonly ends = new Set<LineEnd>()

  line(): Line {
    let own: LineEnd | null = null
    return {
      open: async (end) => {
        own = end
        this.ends.add(end)
        end.opened()
      },
      say: (text) => { if (own !== null && this.ends.has(own)) [...this.ends].forEach((end) => end.heard(text)) },
      close: async () => { if (own !== null) this.ends.delete(own) },
    }
  }

  /** From now on that one neither hears nor is heard. */
  silence(index: number): void {
    this.ends.delete([...this.ends][index] as LineEnd)
  }
}

const plan = { jobId: 'job', document: 'plan' } as const

/** A relay that takes down what it is told, with `isOpen` documents. */
async function relayOn(air: OpenAir, isOpen: boolean, pace: NeighbourPace = { hereMs: 1_000, lostMs: 60_000 }) {
  const told: string[] = []
  const neighbours = new Neighbours(air.line(), pace)
  const listener: NeighbourListener = {
    rowsKept: (key, sequence) => told.push(`rows ${key.jobId}/${key.document} ${sequence}`),
    presenceHeard: (_relayId, _key, entries) => told.push(`presence ${JSON.stringify(entries)}`),
    roomShared: () => { told.push('shared'); return isOpen },
    relayLost: () => told.push('lost'),
    penMoved: (jobId) => told.push(`pen ${jobId}`),
    seatChanged: (seatId) => told.push(`seat ${seatId}`),
    linksRevoked: (linkIds) => told.push(`revoked ${linkIds.join()}`),
    cameBack: () => told.push('came back'),
    lineLost: () => told.push('line lost'),
  }
  await neighbours.start(listener)
  onTestFinished(() => neighbours.stop())
  return { neighbours, told }
}

describe('relays on one line', () => {
  it('tell of a document those alone who have people on it, and answer one who comes to it', async () => {
    const air = new OpenAir()
    const [one, other] = [await relayOn(air, true), await relayOn(air, true)]
    one.neighbours.rowsKept(plan, 1)
    one.neighbours.presence(plan, [[5, 1, '{}']])
    expect(other.told.filter((news) => news !== 'came back')).toEqual([])
    other.neighbours.opened(plan)
    expect([one.told.at(-1), other.told.at(-1)]).toEqual(['shared', 'shared'])
    one.neighbours.rowsKept(plan, 2)
    one.neighbours.presence(plan, [[5, 1, '{}'], [6, 2, null]])
    expect(other.told.slice(-2)).toEqual(['rows job/plan 2', 'presence [[5,1,"{}"],[6,2,null]]'])
    other.neighbours.shut(plan)
    one.neighbours.rowsKept(plan, 3)
    expect(other.told.at(-1)).toMatch(/^presence/)
  })

  it('tell everybody of pens, seats and withdrawn links, in that order', async () => {
    const air = new OpenAir()
    const [one, other] = [await relayOn(air, false), await relayOn(air, false)]
    one.neighbours.penMoved('job')
    one.neighbours.seatChanged('s1')
    one.neighbours.linksRevoked(new Set(['l1', 'l2']))
    expect(other.told.slice(-3)).toEqual(['pen job', 'seat s1', 'revoked l1,l2'])
    expect(one.told).not.toContain('pen job')
  })

  it('know when one takes its leave, and when one is silent for too long', async () => {
    const air = new OpenAir()
    const pace = { hereMs: 5, lostMs: 40 }
    const [one, other] = [await relayOn(air, true, pace), await relayOn(air, true, pace)]
    other.neighbours.opened(plan)
    await other.neighbours.stop()
    expect([one.told.at(-1), one.neighbours.count, one.neighbours.shares(plan)]).toEqual(['lost', 0, false])
    const third = await relayOn(air, true, pace)
    await until(() => one.neighbours.count === 1)
    third.neighbours.opened(plan)
    air.silence(1)
    await until(() => one.neighbours.count === 0)
    expect([one.told.at(-1), one.neighbours.shares(plan)]).toEqual(['lost', false])
  })

  it('let pass what they do not understand', async () => {
    const air = new OpenAir()
    const { told } = await relayOn(air, true)
    const before = told.length
    for (const text of ['', '{', 'null', '{"from":"x"}', '{"from":"x","news":{"kind":"of a later release"}}', '{"from":"x","news":{"kind":"rows","jobId":1}}']) {
      for (const end of air.ends) end.heard(text)
    }
    expect(told.length).toBe(before)
  })
})

describe('a text longer than a notification', () => {
  // 8000 bytes: PostgreSQL 17, NOTIFY, "Parameters".
  it('comes together again from parts that each fit, in any order, beside others', () => {
    fc.assert(fc.property(fc.array(fc.tuple(fc.string({ unit: 'grapheme' }), fc.nat(4_000)), { minLength: 1, maxLength: 4 }), fc.infiniteStream(fc.nat()), (made, dice) => {
      const texts = made.map(([unit, times], index) => `${index}${unit.repeat(times)}`)
      const parts = texts.flatMap(partsOf)
      for (const part of parts) expect(Buffer.byteLength(part)).toBeLessThan(8_000)
      const joiner = new Joiner()
      const shuffled = parts.map((part) => [dice.next().value as number, part] as const).sort(([one], [other]) => one - other)
      const joined = shuffled.map(([, part]) => joiner.take(part)).filter((text) => text !== null)
      expect([...joined].sort()).toEqual([...texts].sort())
    }), { numRuns: 40 })
  })

  it('is not made of what is no part', () => {
    const joiner = new Joiner()
    for (const payload of ['', 'a', 'a.1.1.x', 'a.0.x.y', 'a.0.99999999.x', 'a.-1.2.x', '....']) expect(joiner.take(payload)).toBeNull()
  })
})
