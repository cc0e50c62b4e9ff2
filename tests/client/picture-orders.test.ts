import { describe, expect, it } from 'vitest'
import { PictureDesk } from '../../client/frame/picture/pictureDesk.ts'
import type { DrawnPicture, PictureOrder } from '../../client/frame/picture/pictureOrders.ts'
import { shareBranches } from '../../client/frame/picture/shareBranches.ts'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { applyEdit } from '../../shared-core/plan/edit.ts'

function order(slot: string, kind: 'frame' | 'single', soloLightId: string | null = null): PictureOrder {
  return { slot, kind, plan: demoPlan, lookId: 'dusk', width: 4, height: 6, soloLightId, coarse: false, view: 'picture', space: 'srgb' }
}

/** A maker that draws when told to. */
function maker() {
  const taken: PictureOrder[] = []
  const made = {
    onmessage: null as ((event: MessageEvent<DrawnPicture>) => void) | null,
    postMessage: (asked: PictureOrder) => { taken.push(asked) },
  }
  const finish = (): void => {
    const { slot, width, height } = taken.at(-1)!
    made.onmessage!({ data: { slot, width, height, rgba: null, linear: null, trouble: '' } } as MessageEvent<DrawnPicture>)
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
    expect(taken.map(({ slot, soloLightId }) => [slot, soloLightId])).toEqual([['s1', 'a'], ['f', null], ['s2', 'b'], ['s1', 'c']])
    expect(done).toEqual(['s1 old', 'frame', 's2', 's1'])
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
