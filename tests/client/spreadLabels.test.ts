import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { spreadLabels, type Label } from '../../client/ladder/spreadLabels.ts'

const label = fc.record({ wantedPixels: fc.integer({ min: -100, max: 700 }), heightPixels: fc.integer({ min: 10, max: 50 }) })
const labels = fc.array(label, { minLength: 1, maxLength: 12 })
const ROOM = { from: 0, to: 600 }

const cost = (wanted: readonly Label[], centres: readonly number[]) =>
  wanted.reduce((sum, { wantedPixels }, i) => sum + (wantedPixels - centres[i]!) ** 2, 0)

describe('labels on the ladder', () => {
  it('leaves labels that do not touch where they want to be', () => {
    expect(spreadLabels([{ wantedPixels: 300, heightPixels: 20 }, { wantedPixels: 100, heightPixels: 20 }], 0, 600)).toEqual([300, 100])
  })

  it('moves two that collide the same way apart', () => {
    expect(spreadLabels([{ wantedPixels: 100, heightPixels: 20 }, { wantedPixels: 100, heightPixels: 20 }], 0, 600)).toEqual([90, 110])
  })

  it('never lets one cover another, keeps their order, and keeps them in the room they fit in', () => {
    fc.assert(
      fc.property(labels, (wanted) => {
        const centres = spreadLabels(wanted, ROOM.from, ROOM.to)
        const order = wanted.map((_, i) => i).sort((a, b) => wanted[a]!.wantedPixels - wanted[b]!.wantedPixels || a - b)
        order.forEach((index, place) => {
          const next = order[place + 1]
          if (next === undefined) return
          const apart = (wanted[index]!.heightPixels + wanted[next]!.heightPixels) / 2
          expect(centres[next]! - centres[index]!).toBeGreaterThanOrEqual(apart - 1e-6)
        })
        if (wanted.reduce((sum, { heightPixels }) => sum + heightPixels, 0) > ROOM.to - ROOM.from) return
        wanted.forEach(({ heightPixels }, i) => {
          expect(centres[i]! - heightPixels / 2).toBeGreaterThanOrEqual(ROOM.from - 1e-6)
          expect(centres[i]! + heightPixels / 2).toBeLessThanOrEqual(ROOM.to + 1e-6)
        })
      }),
    )
  })

  // Least squares: no placing that is allowed may be nearer. The rivals are gaps drawn at random between the labels.
  it('is the nearest of all placings that do not overlap', () => {
    fc.assert(
      fc.property(labels, fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 13, maxLength: 13 }), (wanted, shares) => {
        const total = wanted.reduce((sum, { heightPixels }) => sum + heightPixels, 0)
        const free = ROOM.to - ROOM.from - total
        if (free < 0) return
        const order = wanted.map((_, i) => i).sort((a, b) => wanted[a]!.wantedPixels - wanted[b]!.wantedPixels || a - b)
        const sumOfShares = shares.reduce((sum, share) => sum + share, 1e-9)
        const rival = new Array<number>(wanted.length)
        let at = ROOM.from
        order.forEach((index, place) => {
          at += (free * shares[place]!) / sumOfShares
          rival[index] = at + wanted[index]!.heightPixels / 2
          at += wanted[index]!.heightPixels
        })
        expect(cost(wanted, spreadLabels(wanted, ROOM.from, ROOM.to))).toBeLessThanOrEqual(cost(wanted, rival) + 1e-6)
      }),
    )
  })
})
