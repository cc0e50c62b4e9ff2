import { describe, expect, it } from 'vitest'
import { createStore } from 'zustand/vanilla'
import type { Board } from '../../client/session/board.ts'
import { followUnhurried, takingTurns } from '../../client/session/followUnhurried.ts'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { HandClock } from './handClock.ts'

/** Only the fields that these checks move. */
function boardStore() {
  return createStore<Board>()(() => ({ plan: demoPlan, shown: demoPlan, selection: null, people: [] }) as unknown as Board)
}

const moved = (): Plan => ({ ...demoPlan })

describe('a part of the page that is not under the hand', () => {
  it('sees everything at once while nothing is in a hand', () => {
    const store = boardStore()
    const part = followUnhurried(store, () => false, takingTurns(new HandClock()))
    part.follow()
    store.setState({ selection: { kind: 'camera' } })
    expect(part.getState()).toBe(store.getState())
  })

  it('sees a hand’s moves in its turn, the latest of them, and is told once', () => {
    const store = boardStore()
    const clock = new HandClock()
    const part = followUnhurried(store, () => false, takingTurns(clock))
    part.follow()
    let told = 0
    part.subscribe(() => told++)
    for (let i = 0; i < 5; i++) store.setState({ shown: moved() })
    expect(part.getState().shown).toBe(demoPlan)
    clock.moveOn(1_000)
    expect(part.getState()).toBe(store.getState())
    expect(told).toBe(1)
  })

  it('sees the end at once: the hand that opens, and what it wrote', () => {
    const store = boardStore()
    const clock = new HandClock()
    const part = followUnhurried(store, () => false, takingTurns(clock))
    part.follow()
    store.setState({ shown: moved() })
    const written = moved()
    store.setState({ plan: written, shown: written })
    expect(part.getState()).toBe(store.getState())
    clock.moveOn(1_000)
    expect(part.getState()).toBe(store.getState())
  })

  it('sees at once what somebody picks meanwhile', () => {
    const store = boardStore()
    const part = followUnhurried(store, () => false, takingTurns(new HandClock()))
    part.follow()
    store.setState({ shown: moved() })
    store.setState({ selection: { kind: 'camera' } })
    expect(part.getState()).toBe(store.getState())
  })

  it('sees every move when the hand is on it', () => {
    const store = boardStore()
    const part = followUnhurried(store, () => true, takingTurns(new HandClock()))
    part.follow()
    store.setState({ shown: moved() })
    expect(part.getState()).toBe(store.getState())
  })

  it('takes its turn with a move of the hand, and by itself only when none comes', () => {
    const store = boardStore()
    const clock = new HandClock()
    const part = followUnhurried(store, () => false, takingTurns(clock))
    part.follow()
    const seenAtMs: number[] = []
    part.subscribe(() => seenAtMs.push(clock.nowMs()))
    for (let i = 0; i < 10; i++) {
      store.setState({ shown: moved() })
      clock.moveOn(33)
    }
    const movesAtMs = Array.from({ length: 10 }, (_, i) => 33 * i)
    expect(seenAtMs.length).toBeGreaterThan(3)
    for (const atMs of seenAtMs) expect(movesAtMs).toContain(atMs)
    clock.moveOn(1_000)
    expect(part.getState()).toBe(store.getState())
  })

  it('waits while numbers come with the move', () => {
    const store = boardStore()
    const clock = new HandClock()
    const part = followUnhurried(store, () => false, takingTurns(clock))
    part.follow()
    store.setState({ shown: moved() })
    clock.moveOn(30)
    store.setState({ shown: moved(), prediction: {} as Board['prediction'] })
    expect(part.getState().shown).toBe(demoPlan)
    clock.moveOn(10)
    store.setState({ shown: moved() })
    expect(part.getState()).toBe(store.getState())
  })

  it('never draws in the same breath as another', () => {
    const store = boardStore()
    const clock = new HandClock()
    const turns = takingTurns(clock)
    const drawnAtMs = [0, 1, 2].map(() => {
      const times: number[] = []
      const part = followUnhurried(store, () => false, turns)
      part.follow()
      part.subscribe(() => times.push(clock.nowMs()))
      return times
    })
    for (let i = 0; i < 30; i++) {
      store.setState({ shown: moved() })
      clock.moveOn(16)
    }
    const all = drawnAtMs.flat()
    expect(new Set(all).size).toBe(all.length)
    for (const times of drawnAtMs) expect(times.length).toBeGreaterThan(3)
  })
})
