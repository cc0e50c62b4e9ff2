import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { latestOnly } from '../../client/session/latestOnly.ts'
import { HandClock } from './handClock.ts'

describe('latest only', () => {
  it('never passes on faster than the interval, never a stale value, and always the last', () => {
    fc.assert(fc.property(fc.array(fc.nat(80), { minLength: 1 }), (pausesMs) => {
      const clock = new HandClock()
      const sent: { readonly value: number; readonly atMs: number }[] = []
      const send = latestOnly<number>((value) => sent.push({ value, atMs: clock.nowMs() }), 33, clock)
      pausesMs.forEach((pauseMs, value) => {
        clock.moveOn(pauseMs)
        send(value)
      })
      clock.moveOn(1_000)
      expect(sent.at(-1)?.value).toBe(pausesMs.length - 1)
      sent.slice(1).forEach((one, index) => {
        const before = sent[index]
        expect(one.atMs - (before?.atMs ?? 0)).toBeGreaterThanOrEqual(33)
        expect(one.value).toBeGreaterThan(before?.value ?? -1)
      })
    }))
  })

  it('passes the first one on at once', () => {
    const sent: number[] = []
    latestOnly<number>((value) => sent.push(value), 33, new HandClock())(7)
    expect(sent).toEqual([7])
  })
})
