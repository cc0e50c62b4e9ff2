import { describe, expect, it } from 'vitest'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { judgeTestFrame, type TestFrameVerdict } from '../../shared-core/testFrame/judge.ts'
import { testFrameModel } from '../../shared-core/testFrame/model.ts'
import { randomOf } from './random.ts'
import { asPlanned, faultsOf, riggings, shotOf, showsBy, withFault, type Fault } from './testFrameShots.ts'

// What must be named is what was done to the set: nothing here is read off the program beforehand. What a set is off by
// though nothing is wrong (3 cm a stand, a tenth of a stop a head) is common practice, no source.

/** A fault that shows less than this nobody would look for: two areas by a CIEDE2000 of 4, twice what anybody sees. */
const SHOWS = 4

/** One look in three variants rigged by hand; the powers of the demo, and others by up to half a stop. */
const looks = ['dusk', 'dusk-draft-1', 'first-light'].map((lookId, i) => {
  const random = randomOf(100 + i)
  const plan = i === 1 ? otherPowers(lookId, random) : demoPlan
  return { lookId, model: testFrameModel(plan, lookId), rigged: riggings(plan, lookId, 3, random), faults: faultsOf(plan, lookId) }
})

function otherPowers(lookId: string, random: () => number): typeof demoPlan {
  const look = demoPlan.looks[lookId]!
  const lights = Object.fromEntries(Object.entries(look.lights).map(([id, light]) => [id, { ...light, energyJoules: light.energyJoules * 2 ** (random() - 0.5) }]))
  return { ...demoPlan, looks: { ...demoPlan.looks, [lookId]: { ...look, lights } } }
}

/** The same words in any order: who was swapped with whom has none. */
const sameKey = (one: string, other: string) => one.split(/[ :]/).sort().join() === other.split(/[ :]/).sort().join()

interface Judged { readonly fault: Fault; readonly shows: number; readonly verdict: TestFrameVerdict }

function photographed(start: number, pick: (faults: (typeof looks)[number]['faults'], random: () => number) => Fault): Judged {
  const random = randomOf(start)
  const { lookId, model, rigged, faults } = looks[Math.floor(random() * looks.length)]!
  const fault = pick(faults, random)
  const rig = rigged[Math.floor(random() * rigged.length)]!
  const noise = Math.floor(random() * 2 ** 31)
  const plan = withFault(rig, lookId, fault)
  const seen = shotOf(model, rig.predictor(plan, lookId), plan, randomOf(noise))
  const clean = fault === asPlanned ? seen : shotOf(model, rig.predictor(rig.plan, lookId), rig.plan, randomOf(noise))
  return { fault, shows: showsBy(clean, seen), verdict: judgeTestFrame(model, seen) }
}

const oneOf = <T>(list: readonly T[], random: () => number): T => list[Math.floor(random() * list.length)]!

/** A hundred photographs of sets with one fault that shows: in turns a gel missing, a head a stop down, a light swapped. */
const wrong: readonly Judged[] = (() => {
  const found: Judged[] = []
  for (let start = 1; found.length < 100; start++) {
    const one = photographed(start, ({ gels, powers, swaps }, random) => oneOf([gels, powers, swaps][found.length % 3]!, random))
    if (one.shows >= SHOWS) found.push(one)
  }
  return found
})()
const right: readonly Judged[] = Array.from({ length: 40 }, (_, i) => photographed(5_000 + i, () => asPlanned))

describe('a test frame with one thing wrong', () => {
  it.each(['gel-missing', 'power:', 'swapped'])('%s is named first in at least 9 of 10', (kind) => {
    const those = wrong.filter(({ fault }) => fault.key.includes(kind))
    expect(those.length).toBeGreaterThan(30)
    const missed = those.filter(({ fault, verdict }) => !sameKey(verdict.suspects[0]!.key, fault.key)).map(({ fault, verdict }) => `${fault.key}: ${verdict.words}`)
    expect(missed.length / those.length, missed.join('\n')).toBeLessThanOrEqual(0.1)
  })

  it('is never said to be all well', () => {
    expect(wrong.filter(({ verdict }) => verdict.kind === 'all-well').map(({ fault, shows }) => `${fault.key} ${shows}`)).toEqual([])
  })

  it('says by how much a head is down, within 0.35 stop', () => {
    const heads = wrong.filter(({ fault, verdict }) => fault.key.startsWith('power') && verdict.suspects[0]!.key === fault.key)
    for (const { fault, verdict } of heads) expect(Math.abs(verdict.suspects[0]!.amount! + 1), fault.key).toBeLessThan(0.35)
  })
})

describe('a test frame of a set as planned', () => {
  it('is all well in at least 9 of 10, and accused of nothing in the rest', () => {
    const kinds = right.map(({ verdict }) => verdict.kind)
    expect(kinds.filter((kind) => kind === 'all-well').length).toBeGreaterThanOrEqual(0.9 * right.length)
    expect(kinds).not.toContain('one-thing')
  })
})

describe('what the verdict says', () => {
  const model = looks[0]!.model
  const shot = (fault: Fault) => {
    const { lookId, rigged: [rig] } = looks[0]!
    const plan = withFault(rig!, lookId, fault)
    return shotOf(model, rig!.predictor(plan, lookId), plan, randomOf(3))
  }

  it('names the light, what is wrong and one thing to do', () => {
    const verdict = judgeTestFrame(model, shot({ key: '', lights: { c: { gelIds: [] } } }))
    expect(verdict.kind).toBe('one-thing')
    expect(verdict.words).toContain('C\'s violet gel is missing')
    expect(verdict.action).toBe('Look at C\'s gel first.')
    const cheek = verdict.differences.find(({ id }) => id === 'cheek-right')!
    expect(cheek.stops).toBeGreaterThan(0.5)
    expect(cheek.words).toMatch(/brighter.* instead of /)
  })

  it('says both where two causes cannot be told apart: a neutral sheet missing, or the power that much up', () => {
    // Neutral density takes all colours alike (what neutral means): without it a head is as good as turned up.
    const grey = { ...demoPlan.gels['moss']!, name: 'Grey', source: { from: 'neutral' as const, lossStops: 1 } }
    const dusk = demoPlan.looks['dusk']!
    const lights = { ...dusk.lights, c: { ...dusk.lights['c']!, gelIds: ['violet', 'grey'], energyJoules: 2 * dusk.lights['c']!.energyJoules } }
    const plan = { ...demoPlan, gels: { ...demoPlan.gels, grey }, looks: { ...demoPlan.looks, dusk: { ...dusk, lights } } }
    const [rig] = riggings(plan, 'dusk', 1, randomOf(11))
    const without = withFault(rig!, 'dusk', { key: '', lights: { c: { gelIds: ['violet'] } } })
    const verdict = judgeTestFrame(testFrameModel(plan, 'dusk'), shotOf(model, rig!.predictor(without, 'dusk'), without, randomOf(12)))
    expect(verdict.alike, JSON.stringify(verdict.suspects.slice(0, 4))).toBe(2)
    expect(verdict.words).toMatch(/C is about (0\.[89]|1\.[0-2]) stop high/)
    expect(verdict.words).toContain('one sheet of C\'s gel is missing, grey')
    expect(verdict.words).toContain(', or ')
  })

  it('does not put two wrong things down to one', () => {
    const verdict = judgeTestFrame(model, shot({ key: '', lights: { c: { gelIds: [] }, d: { energyJoules: demoPlan.looks['dusk']!.lights['d']!.energyJoules * 8 } } }))
    expect(verdict.kind).toBe('more-than-one')
  })

  it('asks for more of the set where too few areas are in the photograph', () => {
    const verdict = judgeTestFrame(model, shot(asPlanned).slice(0, 3))
    expect(verdict.kind).toBe('too-little')
    expect(verdict.words).toContain('3 of the areas')
  })

  it('tells a frame exposed otherwise and a white balance set otherwise from a light', () => {
    const exposed = shot(asPlanned).map(({ index, linear }) => ({ index, linear: [linear[0] / 2.5, linear[1] / 2.5, linear[2] / 2.5] as const }))
    expect(judgeTestFrame(model, exposed).suspects[0]!.kind).toBe('exposure')
    const warm = shot(asPlanned).map(({ index, linear }) => ({ index, linear: [Math.min(1, linear[0] * 1.35), linear[1], linear[2] / 1.35] as const }))
    expect(judgeTestFrame(model, warm).suspects[0]!.kind).toBe('white-balance')
  })
})
