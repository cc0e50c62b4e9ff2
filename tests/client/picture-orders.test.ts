import { describe, expect, it, vi } from 'vitest'
import { PictureDesk } from '../../client/frame/picture/pictureDesk.ts'
import type { PictureOrder, WorkerAnswer, WorkerOrder } from '../../client/frame/picture/pictureOrders.ts'
import { shareBranches } from '../../client/frame/picture/shareBranches.ts'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
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
    expect(shareBranches(demoPlan, structuredClone(demoPlan))).toBe(demoPlan)
  })

  it('keeps every branch but those on the way to the change', () => {
    const changed = structuredClone(applyEdit(demoPlan, { name: 'test', changes: [{ path: ['looks', 'dusk', 'lights', 'a', 'energyJoules'], set: 99 }] }))
    const shared = shareBranches(demoPlan, changed)
    expect(shared).toEqual(changed)
    expect(shared.gels).toBe(demoPlan.gels)
    expect(shared.looks['first-light']).toBe(demoPlan.looks['first-light'])
    expect(shared.looks['dusk']!.lights['b']).toBe(demoPlan.looks['dusk']!.lights['b'])
    expect(shared.looks['dusk']!.lights['a']!.place).toBe(demoPlan.looks['dusk']!.lights['a']!.place)
    expect(shared.looks['dusk']!.lights['a']).not.toBe(demoPlan.looks['dusk']!.lights['a'])
  })

  it('sees what was taken out and what was put in', () => {
    expect(shareBranches({ a: 1, b: { c: 2 } }, { b: { c: 2 } })).toEqual({ b: { c: 2 } })
    expect(shareBranches({ a: [1, 2] }, { a: [1, 2, 3] })).toEqual({ a: [1, 2, 3] })
  })
})
