import { SEES_PLAINLY } from '../../client/session/board.ts'
import { describe, expect, it } from 'vitest'
import { demoLookId } from '../../shared-core/plan/demo/demoPlan.ts'
import { peopleFrom, relayWordFrom } from '../../client/session/peopleFrom.ts'
import { readPresence } from '../../client/session/presence.ts'

const seat = { seatId: 's2', name: 'Tobin', role: 'assistant' } as const
const own = { seatId: 's1', jobId: 'j', name: 'Ines', role: 'photographer' } as const
const inHand = { name: 'changeCamera', changes: [{ path: ['looks', demoLookId, 'camera', 'fNumber'], set: 11 }] }

describe('reading one presence', () => {
  it('takes what somebody sees part by part, and nothing that is not a view', () => {
    const seat = { seatId: 's2', name: 'Tobin', role: 'assistant' as const }
    const sees = { view: 'stops', soloLightId: 'c', before: true, beforeKept: true, page: 'proof-sheet', reopened: { kind: 'lock', id: 'l1' }, pointer: { frameX: 0.25, frameY: 0.5 }, with: 's1' }
    expect(readPresence({ seat, sees })!.sees).toEqual(sees)
    expect(readPresence({ seat, sees: { ...sees, view: 'x-ray', page: 'admin', reopened: { kind: 'lock' }, pointer: { frameX: 4, frameY: 0 } } })!.sees)
      .toEqual({ ...sees, view: 'picture', page: null, reopened: null, pointer: null })
  })

  it('is nobody’s without the relay’s stamp', () => {
    expect(readPresence({ pointer: { xMetres: 0, yMetres: 0 } })).toBeNull()
    expect(readPresence({ seat: { ...seat, role: 'owner' } })).toBeNull()
    expect(readPresence(null)).toBeNull()
    expect(readPresence('Tobin')).toBeNull()
  })

  it('takes what is sound and drops what is not, field by field', () => {
    const pointer = { xMetres: 1, yMetres: 2 }
    const read = readPresence({ seat, pointer, selection: { kind: 'light', id: '<script>' }, inHand, lookId: demoLookId })
    expect(read).toEqual({ seat, sees: SEES_PLAINLY, pointer, selection: null, inHand, lookId: demoLookId })
  })

  it.each([
    ['a pointer off the set', { pointer: { xMetres: 1e9, yMetres: 0 } }],
    ['a pointer that is no number', { pointer: { xMetres: Number.NaN, yMetres: 0 } }],
    ['a selection of an unknown kind', { selection: { kind: 'door' } }],
    ['a hand on a place the plan does not have', { inHand: { name: 'x', changes: [{ path: ['walls'], set: 1 }] } }],
    ['a hand with a value out of bounds', { inHand: { name: 'x', changes: [{ path: ['looks', 'a', 'camera', 'fNumber'], set: -8 }] } }],
    ['a hand that takes a leaf away', { inHand: { name: 'x', changes: [{ path: ['looks', 'a', 'camera', 'fNumber'], remove: true }] } }],
  ])('drops %s', (_words, field) => {
    expect(readPresence({ seat, ...field })).toEqual({ seat, pointer: null, selection: null, inHand: null, lookId: null, sees: SEES_PLAINLY })
  })
})

describe('the people on a job', () => {
  const relay = (pen: object | null, notKept: string | null = null) => [99, { relay: { pen, notKept } }] as const

  it('puts oneself first, from the seat and not from the wire', () => {
    const states = new Map<number, unknown>([[1, { seat: { ...seat, name: 'Not me' } }], [2, { seat }]])
    expect(peopleFrom(states, 1, own, null).map(({ name, isSelf }) => [name, isSelf])).toEqual([['Ines', true], ['Tobin', false]])
  })

  it('counts a person with two pages once, where they have something in hand', () => {
    const states = new Map<number, unknown>([[2, { seat }], [3, { seat, inHand }], [4, { seat, pointer: { xMetres: 0, yMetres: 0 } }]])
    const people = peopleFrom(states, 1, own, null)
    expect(people).toHaveLength(2)
    expect(people[1]?.inHand).toEqual(inHand)
  })

  it('counts one’s own other pages as oneself', () => {
    expect(peopleFrom(new Map([[2, { seat: own }]]), 1, own, null)).toHaveLength(1)
  })

  it('gives the pen to the photographer until the relay says otherwise', () => {
    const pell = { seatId: 's3', name: 'Pell', role: 'client' }
    const holders = (pen: { seatId: string; name: string } | null) =>
      peopleFrom(new Map<number, unknown>([[2, { seat }], [3, { seat: pell }]]), 1, own, pen).filter(({ hasPen }) => hasPen).map(({ name }) => name)
    expect(holders(null)).toEqual(['Ines'])
    expect(holders({ seatId: 's3', name: 'Pell' })).toEqual(['Pell'])
  })

  it('hears from the relay alone who holds the pen and whether edits are kept', () => {
    const pen = { seatId: 's3', name: 'Pell' }
    expect(relayWordFrom(new Map([relay(pen, 'The disk is full')]))).toEqual({ pen, notKept: 'The disk is full' })
    expect(relayWordFrom(new Map([[1, { notKept: 'Panic' }]]))).toBeNull()
  })
})
