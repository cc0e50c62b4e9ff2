import { describe, expect, it } from 'vitest'
import { leaderOf, leadsRing } from '../../client/agree/call/leaderOf.ts'
import { SEES_PLAINLY, type Person } from '../../client/session/board.ts'

const person = (seatId: string, lookingWith: string | null): Person => ({
  seatId, name: seatId, role: 'client', isSelf: false, hasPen: false, pointer: null, selection: null, inHand: null, lookId: 'dusk',
  sees: { ...SEES_PLAINLY, with: lookingWith },
})

describe('who leads', () => {
  it('is the person looked with, or whom they look with', () => {
    const people = [person('me', null), person('ines', null), person('tobin', 'ines')]
    expect(leaderOf(people, 'ines', 'me')?.seatId).toBe('ines')
    expect(leaderOf(people, 'tobin', 'me')?.seatId).toBe('ines')
  })

  it('is nobody where it comes round, and nobody who has left', () => {
    expect(leaderOf([person('ines', 'me')], 'ines', 'me')).toBeNull()
    expect(leaderOf([person('ines', 'tobin'), person('tobin', 'ines')], 'ines', 'me')).toBeNull()
    expect(leaderOf([], 'ines', 'me')).toBeNull()
  })

  it('is, of two who asked for each other at once, the one whose seat comes first, on both pages alike', () => {
    const both = [person('ines', 'tobin'), person('tobin', 'ines')]
    expect([leadsRing(both, 'tobin', 'ines'), leadsRing(both, 'ines', 'tobin')]).toEqual([true, false])
    const three = [person('a', 'b'), person('b', 'c'), person('c', 'a')]
    expect([leadsRing(three, 'b', 'a'), leadsRing(three, 'c', 'b'), leadsRing(three, 'a', 'c')]).toEqual([true, false, false])
    // Who only looks on at a ring, and who follows a plain leader, keep following.
    expect(leadsRing([...both, person('a', 'ines')], 'ines', 'a')).toBe(false)
    expect(leadsRing([person('ines', null), person('a', 'ines')], 'ines', 'a')).toBe(false)
  })
})
