import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { Rehearsal } from '../../client/frame/picture/rehearsal.ts'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { LookPicture, type Picture } from '../../shared-core/predict/lookPicture.ts'
import type { SubjectAsset } from '../../shared-core/subject/asset/format.ts'

/** Nothing is drawn here: what would be is written down. */
const drawn: Plan[] = []
const asset = {} as SubjectAsset

beforeEach(() => {
  vi.useFakeTimers()
  drawn.length = 0
  vi.spyOn(LookPicture.prototype, 'draw').mockImplementation((plan) => {
    drawn.push(plan)
    return {} as Picture
  })
})
afterEach(() => {
  vi.useRealTimers()
  vi.restoreAllMocks()
})

function begun(): Rehearsal {
  const rehearsal = new Rehearsal()
  rehearsal.takeUp(demoPlan, 'dusk')
  rehearsal.begin(asset)
  rehearsal.handIsNear()
  return rehearsal
}

describe('a rehearsal', () => {
  it('waits for the subject, and for quiet', () => {
    const rehearsal = new Rehearsal()
    rehearsal.takeUp(demoPlan, 'dusk')
    rehearsal.handIsNear()
    vi.advanceTimersByTime(10_000)
    expect(drawn).toHaveLength(0)
    rehearsal.begin(asset)
    vi.advanceTimersByTime(300)
    expect(drawn).toHaveLength(0)
    vi.advanceTimersByTime(10_000)
    expect(drawn.length).toBeGreaterThan(3)
  })

  it('is none where nobody is near who may move a light', () => {
    const rehearsal = new Rehearsal()
    rehearsal.takeUp(demoPlan, 'dusk')
    rehearsal.begin(asset)
    vi.advanceTimersByTime(10_000)
    expect(drawn).toHaveLength(0)
    rehearsal.handIsNear()
    vi.advanceTimersByTime(10_000)
    expect(drawn.length).toBeGreaterThan(3)
  })

  it('draws lights on the move, each time elsewhere, and leaves the plan as it is', () => {
    const before = structuredClone(demoPlan)
    begun()
    vi.advanceTimersByTime(10_000)
    const places = drawn.map((plan) => plan.looks['dusk']!.lights['c']!.place.xMetres)
    expect(new Set(places).size).toBe(places.length)
    expect(places).not.toContain(before.looks['dusk']!.lights['c']!.place.xMetres)
    expect(demoPlan).toEqual(before)
  })

  it('ends', () => {
    const rehearsal = begun()
    vi.advanceTimersByTime(60_000)
    const count = drawn.length
    rehearsal.takeUp(demoPlan, 'dusk')
    vi.advanceTimersByTime(60_000)
    expect(drawn).toHaveLength(count)
    expect(vi.getTimerCount()).toBe(0)
  })

  it('gives way to every order, and goes on when it is quiet again', () => {
    const rehearsal = begun()
    vi.advanceTimersByTime(402)
    const count = drawn.length
    expect(count).toBeGreaterThan(0)
    for (let i = 0; i < 20; i++) {
      rehearsal.giveWay()
      vi.advanceTimersByTime(100)
    }
    expect(drawn).toHaveLength(count)
    vi.advanceTimersByTime(1_000)
    expect(drawn.length).toBeGreaterThan(count)
  })
})
