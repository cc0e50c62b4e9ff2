import { describe, expect, it } from 'vitest'
import type { AskOrder } from '../../client/ask/askOrders.ts'
import { AreaPull, type AreaPullParts, type PulledArea } from '../../client/ladder/areaPull.ts'
import { areaKey } from '../../client/ladder/areaKeys.ts'
import { ask } from '../../shared-core/ask/ask.ts'
import { demoLookId as lookId, demoPlan as plan } from '../../shared-core/plan/demo/demoPlan.ts'
import type { PlanEdit } from '../../shared-core/plan/edit.ts'
import { createPredictor } from '../../shared-core/predict/predict.ts'

const predictor = createPredictor()
const prediction = predictor(plan, lookId)
const noseNow = Math.round(prediction.areas.find(({ id }) => id === 'nose')!.meter.stops! * 10) / 10

/** A hand on a board that keeps what is laid over it, with a desk that answers when it is told to. */
function handOnBoard() {
  const orders: AskOrder<'ask'>[] = []
  let answer: (() => void) | null = null
  let laidOver: PlanEdit | null = null
  let pulled: PulledArea | null = null
  const desk = {
    order: (order: AskOrder<'ask'>, waiting: { answered: (found: ReturnType<typeof ask>) => void }) => {
      orders.push(order)
      answer = () => waiting.answered(ask(plan, lookId, order.wants, { predictor, isPowersOnly: true }))
    },
    cancel: () => { answer = null },
  }
  const hand = new AreaPull({
    board: () => ({ plan, lookId, prediction, hold: (edit) => { laidOver = edit } }),
    desk: () => desk as unknown as ReturnType<AreaPullParts['desk']>,
    wantsWith: (_, want) => [{ kind: 'iso', isoSpeed: 200 }, want],
    changed: (now) => { pulled = now },
  })
  const answered = () => {
    const due = answer
    answer = null
    due?.()
  }
  const asked = () => orders.map(({ wants }) => wants.flatMap((want) => (want.kind === 'area-level' ? [want.stops] : []))[0]!)
  return { hand, answered, asked, orders, laidOver: () => laidOver, pulled: () => pulled }
}

describe('a hand that pulls an area to a level', () => {
  it('has one question open, and asks next where it is by then', () => {
    const { hand, answered, asked, orders, laidOver, pulled } = handOnBoard()
    for (const stops of [-0.1, -0.2, -0.3, -0.4]) hand.pull('nose', stops)
    expect(asked()).toHaveLength(1)
    expect(asked()[0]).toBeCloseTo(noseNow - 0.1, 9)
    answered()
    expect(asked()).toHaveLength(2)
    expect(asked()[1]).toBeCloseTo(noseNow - 0.4, 9)
    answered()
    expect(asked()).toHaveLength(2)
    expect(laidOver()?.changes.length).toBeGreaterThan(0)
    expect(pulled()?.words).toMatch(/^Powers: /)
    expect(orders[0]).toMatchObject({ isUnderHand: true, isPowersOnly: true })
    // What is wanted beside is asked with it.
    expect(orders[0]!.wants[0]).toEqual({ kind: 'iso', isoSpeed: 200 })
  })

  it('put back, the board is as it was and a late answer changes nothing', () => {
    const { hand, answered, laidOver, pulled } = handOnBoard()
    hand.pull('nose', -0.5)
    answered()
    hand.pull('nose', -0.6)
    expect(hand.cancel()).toBe(true)
    answered()
    expect(laidOver()).toBeNull()
    expect(pulled()).toBeNull()
    expect(hand.cancel()).toBe(false)
  })

  it('let go, what was found stays laid over the board; another area begins anew', () => {
    const { hand, answered, laidOver } = handOnBoard()
    hand.pull('nose', -0.5)
    answered()
    expect(hand.letGo()?.wantedStops).toBeCloseTo(noseNow - 0.5, 9)
    expect(laidOver()).not.toBeNull()
    hand.nudge('lips', 0.1)
    hand.nudge('nose', 0.1)
    expect(hand.letGo()).toMatchObject({ areaId: 'nose', wantedStops: expect.closeTo(noseNow + 0.1, 9) })
  })

  it('keys pull by the head’s step, a third or a stop; who may not change the plan goes from area to area', () => {
    const key = (name: string, held = {}, mayEdit = true) =>
      areaKey({ key: name, shiftKey: false, altKey: false, ctrlKey: false, metaKey: false, ...held }, 0.1, mayEdit)
    expect(key('ArrowUp')).toEqual({ does: 'raise', stops: 0.1 })
    expect(key('ArrowDown', { shiftKey: true })).toEqual({ does: 'raise', stops: -1 / 3 })
    expect(key('ArrowDown', { altKey: true })).toEqual({ does: 'raise', stops: -1 })
    expect(key('ArrowDown', {}, false)).toEqual({ does: 'go', to: 'next' })
    expect(key('5')).toEqual({ does: 'type', start: '5' })
    expect(key('5', {}, false)).toBeNull()
    expect(key('z', { ctrlKey: true })).toBeNull()
  })
})
