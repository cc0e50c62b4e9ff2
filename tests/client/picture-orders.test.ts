import fc from 'fast-check'
import { describe, expect, it, vi } from 'vitest'
import { packPlan, unpackPlan, type PlanParcel } from '../../client/frame/picture/planParcel.ts'
import { PictureDesk } from '../../client/frame/picture/pictureDesk.ts'
import type { PictureOrder, WorkerAnswer, WorkerOrder } from '../../client/frame/picture/pictureOrders.ts'
import { shareStructure } from '../../shared-core/plan/reading/shareStructure.ts'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { applyEdit } from '../../shared-core/plan/edit.ts'

function order(slot: string, kind: 'frame' | 'single', soloLightId: string | null = null): PictureOrder {
  return { slot, kind, plan: demoPlan, lookId: 'dusk', width: 4, height: 6, soloLightId, coarse: false, view: 'picture', space: 'srgb' }
}

/** A maker that draws when told to. */
function maker() {
  const taken: WorkerOrder[] = []
  const made = {
    onmessage: null as ((event: MessageEvent<WorkerAnswer>) => void) | null,
    onerror: null as ((event: ErrorEvent) => void) | null,
    postMessage: (asked: WorkerOrder) => { taken.push(asked) },
  }
  const finish = (): void => {
    const asked = taken.at(-1)!
    const data: WorkerAnswer = !('width' in asked)
      ? { slot: asked.slot, shares: [{ lightId: 'a', share: 1, channels: [1, 1, 1] }] }
      : { slot: asked.slot, width: asked.width, height: asked.height, rgba: null, linear: null, letters: [], trouble: '' }
    made.onmessage!({ data } as MessageEvent<WorkerAnswer>)
  }
  return { made, taken, finish }
}

describe('orders of pictures', () => {
  it('one at a time; of a slot only the newest waits, and the Frame goes first', () => {
    const { made, taken, finish } = maker()
    const desk = new PictureDesk(made)
    const done: string[] = []
    desk.order(order('s1', 'single', 'a'), () => done.push('s1 old'))
    desk.order(order('s2', 'single', 'b'), () => done.push('s2'))
    desk.order(order('f', 'frame', 'x'), () => done.push('frame old'))
    desk.order(order('f', 'frame'), () => done.push('frame'))
    desk.order(order('s1', 'single', 'c'), () => done.push('s1'))
    expect(taken.map(({ slot }) => slot)).toEqual(['s1'])
    for (let i = 0; i < 4; i++) finish()
    expect(taken.map((asked) => [asked.slot, 'soloLightId' in asked && asked.soloLightId])).toEqual([['s1', 'a'], ['f', null], ['s2', 'b'], ['s1', 'c']])
    expect(done).toEqual(['s1 old', 'frame', 's2', 's1'])
  })

  it('under a hand one order lies ready behind the one at work, and no more', () => {
    const { made, taken } = maker()
    const desk = new PictureDesk(made)
    const done: string[] = []
    for (const light of ['a', 'b', 'c', 'd']) desk.order({ ...order('f', 'frame', light), kind: 'hand' }, () => done.push(light))
    const solo = (asked: WorkerOrder) => 'soloLightId' in asked && asked.soloLightId
    expect(taken.map(solo)).toEqual(['a', 'b'])
    const answer = () => made.onmessage!({ data: { slot: 'f', width: 4, height: 6, rgba: null, linear: null, letters: [], trouble: '' } } as unknown as MessageEvent<WorkerAnswer>)
    answer()
    expect(taken.map(solo)).toEqual(['a', 'b', 'd'])
    answer()
    answer()
    expect(done).toEqual(['a', 'b', 'd'])
  })

  it('on an empty page what goes with the Frame waits for its first picture', () => {
    const { made, taken, finish } = maker()
    const desk = new PictureDesk(made, true)
    desk.order(order('s', 'single'), () => undefined)
    expect(taken).toEqual([])
    desk.order(order('f', 'frame'), () => undefined)
    finish()
    expect(taken.map(({ slot }) => slot)).toEqual(['f', 's'])
  })

  it('but not for ever where no Frame is looked at', () => {
    vi.useFakeTimers()
    const { made, taken } = maker()
    new PictureDesk(made, true).order(order('s', 'single'), () => undefined)
    vi.runAllTimers()
    vi.useRealTimers()
    expect(taken.map(({ slot }) => slot)).toEqual(['s'])
  })

  it('a slot that nobody looks at is not drawn', () => {
    const { made, taken, finish } = maker()
    const desk = new PictureDesk(made)
    desk.order(order('f', 'frame'), () => undefined)
    desk.order(order('s', 'single'), () => undefined)
    desk.forget('s')
    finish()
    expect(taken).toHaveLength(1)
  })
})

describe('who lights a place', () => {
  it('is asked after the Frame and before the Singles', () => {
    const { made, taken, finish } = maker()
    const desk = new PictureDesk(made)
    const found: (string | null)[] = []
    desk.order(order('first', 'single'), () => undefined)
    desk.order(order('s', 'single'), () => undefined)
    desk.askShares({ slot: 'who', kind: 'shares', frameX: 0.5, frameY: 0.5 }, (shares) => found.push(...shares.map(({ lightId }) => lightId)))
    desk.order(order('f', 'frame'), () => undefined)
    for (let i = 0; i < 4; i++) finish()
    expect(taken.map(({ slot }) => slot)).toEqual(['first', 'f', 'who', 's'])
    expect(found).toEqual(['a'])
  })
})

describe('a worker that breaks', () => {
  it('leaves nobody waiting, now or later', () => {
    const { made, taken } = maker()
    const desk = new PictureDesk(made)
    const troubles: string[] = []
    desk.order(order('f', 'frame'), ({ rgba, trouble }) => troubles.push(`${rgba === null} ${trouble}`))
    desk.order(order('s', 'single'), ({ trouble }) => troubles.push(trouble))
    made.onerror!({} as ErrorEvent)
    desk.order(order('f', 'frame'), ({ trouble }) => troubles.push(trouble))
    expect(troubles).toEqual(['true This browser cannot draw the picture.', ...Array<string>(2).fill('This browser cannot draw the picture.')])
    expect(taken).toHaveLength(1)
  })
})

describe('a plan that came through a message', () => {
  it('is the plan before, where nothing changed', () => {
    expect(shareStructure(demoPlan, structuredClone(demoPlan))).toBe(demoPlan)
  })

  it('keeps every branch but those on the way to the change', () => {
    const changed = structuredClone(applyEdit(demoPlan, { name: 'test', changes: [{ path: ['looks', 'dusk', 'lights', 'a', 'energyJoules'], set: 99 }] }))
    const shared = shareStructure(demoPlan, changed)
    expect(shared).toEqual(changed)
    expect(shared.gels).toBe(demoPlan.gels)
    expect(shared.looks['first-light']).toBe(demoPlan.looks['first-light'])
    expect(shared.looks['dusk']!.lights['b']).toBe(demoPlan.looks['dusk']!.lights['b'])
    expect(shared.looks['dusk']!.lights['a']!.place).toBe(demoPlan.looks['dusk']!.lights['a']!.place)
    expect(shared.looks['dusk']!.lights['a']).not.toBe(demoPlan.looks['dusk']!.lights['a'])
  })

  it('sees what was taken out and what was put in', () => {
    expect(shareStructure({ a: 1, b: { c: 2 } }, { b: { c: 2 } })).toEqual({ b: { c: 2 } })
    expect(shareStructure({ a: [1, 2] }, { a: [1, 2, 3] })).toEqual({ a: [1, 2, 3] })
  })
})

describe('a plan sent in parts', () => {
  const withPower = (plan: Plan, energyJoules: number) =>
    applyEdit(plan, { name: 'test', changes: [{ path: ['looks', 'dusk', 'lights', 'a', 'energyJoules'], set: energyJoules }] })
  const across = (before: Plan | null, plan: Plan): PlanParcel => structuredClone(packPlan(before, plan))

  it('arrives whole the first time', () => {
    expect(unpackPlan(null, across(null, demoPlan))).toEqual(demoPlan)
  })

  it('costs nothing when it is the same', () => {
    expect(packPlan(demoPlan, demoPlan)).toBeNull()
    expect(unpackPlan(demoPlan, null)).toBe(demoPlan)
  })

  it('carries what a hand changed and leaves the rest the objects they were', () => {
    const moved = withPower(demoPlan, 99)
    const parcel = across(demoPlan, moved)
    expect(JSON.stringify(parcel).length).toBeLessThan(JSON.stringify(moved).length / 20)
    const arrived = unpackPlan(demoPlan, parcel)
    expect(arrived).toEqual(moved)
    expect(arrived.looks['dusk']!.lights['b']).toBe(demoPlan.looks['dusk']!.lights['b'])
    expect(arrived.looks['dusk']!.lights['a']!.place).toBe(demoPlan.looks['dusk']!.lights['a']!.place)
  })

  it('arrives as it left whatever came, went, changed its kind or its order', () => {
    const branch: fc.Arbitrary<unknown> = fc.letrec((tie) => ({
      tree: fc.oneof({ maxDepth: 4 }, fc.integer(), fc.string(), fc.constant(null), fc.array(fc.integer(), { maxLength: 3 }),
        fc.dictionary(fc.constantFrom('a', 'b', 'c', '__proto__', 'keys', 'value'), tie('tree'), { noNullPrototype: true })),
    })).tree
    fc.assert(fc.property(branch, branch, branch, (first, second, third) => {
      let left: Plan | null = null
      let arrived: Plan | null = null
      // Of the second, parts are the very objects of the first, as an edit leaves them.
      for (const plan of [{ first }, { over: first, and: second }, { and: second, over: third }] as unknown as Plan[]) {
        arrived = unpackPlan(arrived, across(left, plan))
        left = plan
        expect(arrived).toEqual(plan)
        if (typeof plan === 'object' && plan !== null) expect(Object.keys(arrived)).toEqual(Object.keys(plan))
      }
    }), { seed: 3, numRuns: 300 })
  })
})

describe('a hand and the Frame', () => {
  it('waits while a picture of an earlier move waits, and goes on with the next answer', () => {
    const { made, finish } = maker()
    const desk = new PictureDesk(made)
    const hand = () => desk.order({ ...order('frame', 'frame'), kind: 'hand' }, () => undefined)
    let shown = 0
    const ask = () => desk.whenRoomForHand(() => shown++)
    hand()
    hand()
    ask()
    expect(shown).toBe(1)
    hand()
    ask()
    expect(shown).toBe(1)
    finish()
    expect(shown).toBe(2)
  })

  it('goes on without the Frame where that is slow', () => {
    vi.useFakeTimers()
    try {
      const { made, finish } = maker()
      const desk = new PictureDesk(made)
      for (let i = 0; i < 3; i++) desk.order({ ...order('frame', 'frame'), kind: 'hand' }, () => undefined)
      let shown = 0
      desk.whenRoomForHand(() => shown++)
      vi.advanceTimersByTime(60)
      expect(shown).toBe(1)
      finish()
      expect(shown).toBe(1)
    } finally {
      vi.useRealTimers()
    }
  })
})
