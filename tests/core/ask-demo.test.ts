import { describe, expect, it } from 'vitest'
import { ask } from '../../shared-core/ask/ask.ts'
import { parseWants } from '../../shared-core/ask/parseWants.ts'
import type { Answer } from '../../shared-core/ask/answer.ts'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { applyEdit } from '../../shared-core/plan/edit.ts'
import { previewEdit } from '../../shared-core/plan/previewEdit.ts'
import { readEdit } from '../../shared-core/plan/readEdit.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { predict } from '../../shared-core/predict/predict.ts'
import { withLight } from './askLooks.ts'

/**
 * The questions of the demo job, asked of the core. The hand-made figures it was written with are named where the model
 * differs; its heads, umbrella and sheets are computed and not assumed, which moves powers by some tenths.
 */
const DRAFT_1 = 'dusk-draft-1'

function asked(text: string, lookId: string, plan: Plan = demoPlan): Answer {
  const wants = parseWants(text, plan, plan.looks[lookId]!)
  if (!wants.ok) throw new Error(wants.message)
  return ask(plan, lookId, wants.wants)
}

/** Every way is one edit that others' devices take, and its outcomes are those of the plan so changed. */
function expectHonest({ ways }: Answer, lookId: string, plan: Plan = demoPlan): void {
  expect(ways.length).toBeGreaterThan(0)
  expect(ways.length).toBeLessThanOrEqual(3)
  expect(new Set(ways.map(({ by }) => by)).size).toBe(ways.length)
  for (const way of ways) {
    expect(readEdit(JSON.parse(JSON.stringify(way.edit)))).not.toBeNull()
    expect(previewEdit(plan, way.edit)).toEqual(applyEdit(plan, way.edit))
    expect(predict(applyEdit(plan, way.edit), lookId)).toEqual(way.prediction)
  }
}

describe('the demo’s questions', () => {
  it('deeper violet on C: draft 1 takes it with little over half a stop in hand, and f/11 with it no longer', () => {
    // By hand: 0.6 stop short, from a sheet that loses 4.9 and C at −1.3; the drawer's sheet loses about 4.3, C stands at −1.7.
    const answer = asked('right cheek in deep violet', DRAFT_1)
    expectHonest(answer, DRAFT_1)
    const c = answer.ways[0]!.prediction.lights.find(({ id }) => id === 'c')!
    expect(c.gel.name).toBe('Deep violet')
    expect(Math.abs(c.level.stops! - c.wantedStops!)).toBeLessThanOrEqual(0.1)
    expect(c.stopsInHand).toBeGreaterThan(0.3)

    const stopped = asked('right cheek in deep violet, f/11', DRAFT_1)
    expectHonest(stopped, DRAFT_1)
    expect(stopped.limit).toMatchObject({ kind: 'power', aboutId: 'c' })
    const nearer = stopped.ways.find(({ by }) => by === 'distance')!
    expect(nearer.meetsAll).toBe(true)
    // Real areas: a point source would promise the same from further away (inverse square, ISO 2720's assumption for lamps).
    const was = predict(demoPlan, DRAFT_1).lights.find(({ id }) => id === 'c')!.distanceMetres
    const now = nearer.prediction.lights.find(({ id }) => id === 'c')!.distanceMetres
    const gained = stopped.limit!.byStops! + 0.3
    expect(now).toBeLessThan(was * 2 ** (-(gained - 0.1) / 2))
    expect(stopped.ways.map(({ by }) => by)).toContain('iso')
  })

  it('a cheek past what its own light can give: that light goes to full before another is turned for it', () => {
    // Common practice, no source: the light that was set for a plane is the one that is turned for it.
    const answer = asked('camera-right cheek +1.1', 'dusk')
    expectHonest(answer, 'dusk')
    const before = predict(demoPlan, 'dusk')
    const { lights } = answer.ways[0]!.prediction
    const [b, c] = ['b', 'c'].map((id) => lights.find((light) => light.id === id)!)
    expect(answer.ways[0]!.meetsAll).toBe(true)
    // Full, but for the steps of both heads that are tried around it.
    expect(c!.stopsInHand).toBeLessThan(0.35)
    expect(b!.level.stops! - before.lights.find(({ id }) => id === 'b')!.level.stops!).toBeLessThan(1)
    expect(lights.filter(({ id }) => id !== 'b' && id !== 'c').every(({ id, level }) => Math.abs(level.stops! - before.lights.find((light) => light.id === id)!.level.stops!) < 0.01)).toBe(true)
  })

  it('f/11 at ISO 200 passes; at ISO 100 C runs out', () => {
    const passes = asked('f/11', DRAFT_1)
    expectHonest(passes, DRAFT_1)
    expect(passes.limit).toBeNull()
    expect(passes.ways[0]).toMatchObject({ by: 'powers', meetsAll: true })
    // By hand: fails by 0.7 with C at −1.3; the model's umbrella gives 0.4 more, so C is 0.3 short.
    const fails = asked('f/11, iso 100', DRAFT_1)
    expectHonest(fails, DRAFT_1)
    expect(fails.limit).toMatchObject({ kind: 'power', aboutId: 'c' })
    expect(fails.ways.map(({ by }) => by)).not.toContain('iso')
    expect(fails.ways.every(({ meetsAll }) => meetsAll)).toBe(true)
  })

  it('D on the old head is too strong at its lowest: further back, or a neutral sheet', () => {
    // By hand: 0.4 too strong; the model's reflector needs 21 J where 23 were assumed, against the old head's 31.
    const old = withLight(DRAFT_1, 'd', { headId: 'old-head-1000', energyJoules: 31.25 })
    const answer = asked('D -0.5', DRAFT_1, old)
    expectHonest(answer, DRAFT_1, old)
    expect(answer.limit).toMatchObject({ kind: 'lowest-power', aboutId: 'd' })
    expect(answer.ways.find(({ by }) => by === 'distance')).toMatchObject({ meetsAll: true })
    expect(answer.ways.find(({ by }) => by === 'gel')?.title).toMatch(/Neutral, 1 stop on D/)
  })

  it('look 2 with orange is white only with a very hot rim', () => {
    const orange = ['b', 'd'].reduce((plan, id) => withLight('first-light', id, { gelIds: ['orange'] }, plan), demoPlan)
    const pistachio = asked('white behind', 'first-light')
    const hot = asked('white behind', 'first-light', orange)
    expectHonest(pistachio, 'first-light')
    expectHonest(hot, 'first-light', orange)
    // With orange the heads behind are at the very end of their power: the film speed may have to help.
    const rim = ({ ways }: Answer): number => ways[0]!.prediction.background.wrap!.stopsNow!
    for (const { ways } of [pistachio, hot]) expect(ways[0]!.prediction.background.verdict).toBe('white')
    // By hand +2.9 against +0.1; crossed reflectors spill more, so both rims lie higher, and so far apart.
    expect(rim(hot)).toBeGreaterThan(2)
    expect(rim(hot) - rim(pistachio)).toBeGreaterThan(2)
  })

  it('400 lux of house lights move no power: C is still what was agreed, and the note is the prediction’s', () => {
    const lit = { ...demoPlan, room: { ...demoPlan.room, ambientLux: 400 } }
    const answer = asked('C -2', 'dusk', lit)
    expectHonest(answer, 'dusk', lit)
    expect(answer.ways[0]!.moves).toEqual([])
    // By hand about 5.4 under at f/8, 1/160 s, ISO 200: N² C / S over E t (ISO 2720) is 105.6 over 2.5 lux seconds.
    expect(answer.ways[0]!.prediction.ambient.stops).toBeCloseTo(-Math.log2((64 * 330) / 200 / (400 / 160)), 2)
  })

  it('a marker dragged moves only the light it is about, and can be called off', () => {
    const answer = asked('paper -1.5', 'dusk')
    expectHonest(answer, 'dusk')
    expect(answer.ways[0]!.edit.changes.map(({ path }) => path.join('/'))).toEqual(['looks/dusk/lights/d/energyJoules'])
    const wants = parseWants('f/11, iso 100', demoPlan, demoPlan.looks[DRAFT_1]!)
    const calledOff = ask(demoPlan, DRAFT_1, wants.ok ? wants.wants : [], { isCancelled: () => true })
    expect(calledOff).toMatchObject({ isComplete: false })
  })
})
