import { describe, expect, it } from 'vitest'
import { driftsOfLook } from '../../shared-core/ask/driftMeasures.ts'
import { driftScore } from '../../shared-core/ask/driftScore.ts'
import { driftWords, whatMatters, type Drift, type ThingDrifts } from '../../shared-core/ask/whatMatters.ts'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { applyEdit } from '../../shared-core/plan/edit.ts'
import type { Light, Look } from '../../shared-core/plan/schema/look.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { createPredictor } from '../../shared-core/predict/predict.ts'

const predictor = createPredictor()
const at = (xMetres: number, yMetres: number, zMetres: number) => ({ xMetres, yMetres, zMetres })

/** One small hard light from the front in a black hall, far from every wall and with nothing behind. */
function alone(distanceMetres: number): Plan {
  const base = demoPlan.looks['dusk']!
  const light: Light = {
    ...base.lights.d!, letter: 'A', place: at(0, -distanceMetres, 1.56), aim: at(0, 0, 1.56), gelIds: [], plane: 'front',
    serves: 'nose', energyJoules: 20,
  }
  const look: Look = { ...base, lights: { a: light }, pieces: {}, backdrop: { ...base.backdrop, kind: 'none' } }
  const black = Object.fromEntries(Object.keys(demoPlan.room.surfaces).map((key) => [key, '#000000']))
  const room = {
    ...demoPlan.room, widthMetres: 30, lengthMetres: 30, heightMetres: 15, markFromLeftWallMetres: 15, markFromRearWallMetres: 15,
    surfaces: black as Plan['room']['surfaces'],
  }
  return { ...demoPlan, room, looks: { dusk: look } }
}

function driftOf(things: readonly ThingDrifts[], name: string, measure: Drift['measure']): Drift {
  return things.find((thing) => thing.name === name)!.drifts.find((drift) => drift.measure === measure)!
}

describe('what matters', () => {
  it('a small light alone may drift by what the inverse square says is a third of a stop', () => {
    // A third of a stop is a factor 2^(1/6) of distance (inverse square law): 12.2 % farther, 10.9 % nearer. The body is
    // not a point: its parts lie up to some 10 cm nearer or farther than the T that the two metres are taped from.
    const distance = driftOf([...whatMatters(alone(2), 'dusk', predictor)], 'A', 'distance')
    expect(distance.more.amount).toBeGreaterThan(2 * 0.122 * 0.9)
    expect(distance.more.amount).toBeLessThan(2 * 0.122 * 1.1)
    expect(distance.less.amount).toBeGreaterThan(2 * 0.109 * 0.9)
    expect(distance.less.amount).toBeLessThan(2 * 0.109 * 1.1)
    expect(distance.more.first!.by).toBe('level')
  })

  it('its power may drift by a third of a stop, and nothing of it matters to one who is far', () => {
    const power = driftOf([...whatMatters(alone(2), 'dusk', predictor)], 'A', 'power')
    expect(power.less.amount).toBeCloseTo(1 / 3, 2)
    expect(power.more.amount).toBeCloseTo(1 / 3, 2)
    // At five metres half a metre is 10 %: 0.28 stop farther, under a third (inverse square law).
    expect(driftOf([...whatMatters(alone(5), 'dusk', predictor)], 'A', 'distance').more).toMatchObject({ amount: 0.5, isMore: true })
  })

  it('holds in the demo: inside the drift nothing shows, a little past it something does', () => {
    const lookId = 'dusk-draft-1'
    const before = predictor(demoPlan, lookId)
    const measures = driftsOfLook(demoPlan, lookId)
    let counted = 0
    for (const { thing, id, name, drifts } of whatMatters(demoPlan, lookId, predictor)) {
      for (const drift of drifts) {
        const { edit } = measures.find((each) => each.thing === thing && each.id === id)!.measures.find(({ measure }) => measure === drift.measure)!
        for (const [sign, end] of [[-1, drift.less], [1, drift.more]] as const) {
          const scoreAt = (amount: number) => driftScore(before, predictor(applyEdit(demoPlan, edit(sign * amount)!), lookId)).score
          expect(scoreAt(0.85 * end.amount), `${name} ${drift.measure} ${sign}`).toBeLessThan(1)
          // Past the end of its shadow a flag that moves on changes little more, or gives some of it back: within a third past it shows.
          if (!end.isMore) expect(Math.max(...[1.1, 1.2, 1.33].map((times) => scoreAt(times * end.amount))), `${name} ${drift.measure} ${sign}`).toBeGreaterThan(1)
          counted++
        }
      }
    }
    expect(counted).toBeGreaterThan(50)
  })

  it('writes it as a tape takes it, the delicate first', () => {
    const things = [...whatMatters(demoPlan, 'dusk-draft-1', predictor)]
    expect(things.map(({ name }) => name).slice(0, 4).sort()).toEqual(['A', 'B', 'C', 'D'])
    for (const drift of things.flatMap(({ drifts }) => drifts)) {
      expect(driftWords(drift, 'metric')).toMatch(/^\w+ (more than )?±\d+(\.\d)?( cm|°| stop)$/)
      expect(driftWords(drift, 'imperial')).toMatch(/^\w+ (more than )?±((\d+')?(\d+½?|[½¼])?"?|\d+(\.\d)?(°| stop))$/)
    }
  })

  it.each([
    // One inch is 25.4 mm exactly (international yard and pound agreement, 1959); a tolerance is rounded down, never up.
    [0.0254, '±1"'], [0.0381, '±1½"'], [0.03, '±1"'], [0.3048, "±1'"], [0.5, `±1'7½"`], [0.012, '±¼"'],
  ])('writes %s m for who measures in inches as %s', (amount, words) => {
    const end = { amount, isMore: false, first: null }
    expect(driftWords({ measure: 'distance', unit: 'metres', less: end, more: end }, 'imperial')).toBe(`distance ${words}`)
  })

  it('can be stopped between two things', () => {
    let asked = 0
    const counting = (plan: Plan, lookId: string) => (asked++, predictor(plan, lookId))
    const search = whatMatters(demoPlan, 'dusk-draft-1', counting)
    search.next()
    const afterOne = asked
    search.return()
    expect(afterOne).toBeLessThan(80)
    expect(asked).toBe(afterOne)
  })
})
