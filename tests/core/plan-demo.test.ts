import { describe, expect, it } from 'vitest'
import { demoLookId, demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { readPlan } from '../../shared-core/plan/read.ts'
import type { Place } from '../../shared-core/plan/schema/quantities.ts'

// Figures of the commission the demo job is written from (its brief and its light plan): typed from there.
const dusk = demoPlan.looks['dusk']!
const draft = demoPlan.looks['dusk-draft-1']!
const first = demoPlan.looks['first-light']!

const apart = (a: Place, b: Place): number =>
  Math.sqrt((a.xMetres - b.xMetres) ** 2 + (a.yMetres - b.yMetres) ** 2 + (a.zMetres - b.zMetres) ** 2)

describe('the demo job', () => {
  it('is a plan that needs no repair', () => {
    expect(readPlan(demoPlan)).toEqual({ ok: true, plan: demoPlan, repairs: [] })
  })

  it('opens at draft 2, with draft 1 beside it', () => {
    const inOrder = Object.entries(demoPlan.looks).sort(([, a], [, b]) => a.order - b.order).map(([id]) => id)
    expect(inOrder).toEqual(['dusk', 'dusk-draft-1', 'first-light'])
    expect(demoLookId).toBe('dusk')
  })

  it('tapes the lights out at the planned distances', () => {
    const { a, b, d } = dusk.lights
    expect(Math.abs(apart(a!.place, a!.aim) - 1.14)).toBeLessThan(0.02)
    expect(Math.abs(apart(b!.place, b!.aim) - 1.39)).toBeLessThan(0.03)
    expect(Math.abs(apart(draft.lights['c']!.place, draft.lights['c']!.aim) - 2.14)).toBeLessThan(0.02)
    expect(Math.abs(apart(dusk.lights['c']!.place, dusk.lights['c']!.aim) - 1.96)).toBeLessThan(0.03)
    expect(Math.abs(apart(d!.place, d!.aim) - 1.72)).toBeLessThan(0.01)
  })

  it('asks for the agreed levels', () => {
    const wanted = (look: typeof dusk) => Object.values(look.lights).map(({ letter, wantedStops }) => [letter, wantedStops])
    expect(wanted(draft)).toEqual([['A', 0], ['B', -0.3], ['C', -1.7], ['D', -0.5]])
    expect(wanted(dusk)).toEqual([['A', 0], ['B', 0.2], ['C', -2], ['D', -0.5]])
  })

  it('keeps the umbrella inside the room: 0.6 m deep behind its face leaves about 20 cm', () => {
    const { widthMetres, markFromLeftWallMetres } = demoPlan.room
    const toRightWall = widthMetres - markFromLeftWallMetres - dusk.lights['c']!.place.xMetres
    expect(toRightWall - demoPlan.modifiers['umbrella-165']!.depthMetres).toBeCloseTo(0.2, 6)
  })

  it('lights a 1.8 m scrim behind the subject with two heads, C replaced by a white board', () => {
    expect(first.pieces['scrim']).toMatchObject({ kind: 'scrim', widthMetres: 1.8, heightMetres: 1.8, place: { yMetres: 0.75 } })
    expect(first.pieces['shade-board']?.place).toMatchObject({ xMetres: 2, yMetres: -0.25 })
    expect(Object.values(first.lights).map(({ letter }) => letter)).toEqual(['A', 'B', 'D'])
    for (const id of ['b', 'd']) {
      expect(first.lights[id]).toMatchObject({ gelIds: ['pistachio'], modifierId: 'reflector-65' })
      expect(Math.abs(first.lights[id]!.place.xMetres)).toBe(0.5)
    }
  })

  it('has the heads the light plan needs, a spare, and the old one', () => {
    expect(demoPlan.heads['head-1000']).toMatchObject({ count: 5, fullEnergyJoules: 1_000, lowestEnergyJoules: 2, stepStops: 0.1 })
    expect(demoPlan.heads['old-head-1000']?.lowestEnergyJoules).toBeCloseTo(31, 0)
  })

  it('never needs more of a modifier than the kit has', () => {
    for (const look of Object.values(demoPlan.looks)) {
      for (const [id, modifier] of Object.entries(demoPlan.modifiers)) {
        const used = Object.values(look.lights).filter(({ modifierId }) => modifierId === id).length
        expect(used).toBeLessThanOrEqual(modifier.count)
      }
    }
  })
})
