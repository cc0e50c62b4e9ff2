import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { causesOf } from '../../shared-core/meter/causes.ts'
import { meterModel } from '../../shared-core/meter/expected.ts'
import { learn } from '../../shared-core/meter/learn.ts'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import type { Light } from '../../shared-core/plan/schema/look.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { predict } from '../../shared-core/predict/predict.ts'
import { fullAndTenths } from '../../shared-core/exposure/aperture.ts'
import { exactFNumber, readAlone, stopsBetween, type Readings } from './meterTaking.ts'
import { randomOf } from './random.ts'

const LETTERS = ['D', 'B', 'C', 'A'] as const
const levelsOf = (plan: Plan) => new Map(predict(plan, 'dusk').lights.map(({ letter, level }) => [letter, level.fNumber]))
const planned = levelsOf(demoPlan)
const shown = (fNumber: number) => {
  const { fullFNumber, tenths } = fullAndTenths(fNumber)
  return exactFNumber(fullFNumber, tenths)
}
const lightOf = (letter: string) => Object.entries(demoPlan.looks['dusk']!.lights).find(([, light]) => light.letter === letter)!

function withLight(letter: string, changed: Partial<Light>, kit: Partial<Plan> = {}): Plan {
  const [id, light] = lightOf(letter)
  const look = demoPlan.looks['dusk']!
  return { ...demoPlan, ...kit, looks: { ...demoPlan.looks, dusk: { ...look, lights: { ...look.lights, [id]: { ...light, ...changed } } } } }
}

/** All lights read as planned, but for one that is off in the way of `slipped`, on heads that differ a little. */
function readWithSlip(letter: string, fNumber: number, start = 1): Readings {
  const random = randomOf(start)
  return readAlone(demoPlan, LETTERS, (one) => shown((one === letter ? fNumber : planned.get(one)!) * 2 ** ((random() - 0.5) * 0.5 / 2)))
}

function firstCause(readings: Readings, letter: string) {
  const learned = learn(demoPlan, readings)
  const judged = learned.readings.find(({ key }) => key === `r-${letter}`)!
  return { judged, causes: causesOf(demoPlan, learned, judged) }
}

describe('a reading that no head would differ by', () => {
  // The truth is a set predicted with the slip really in it.
  const slips: readonly (readonly [kind: string, letter: string, real: number, words: RegExp])[] = [
    ['gel-missing', 'C', levelsOf(withLight('C', { gelIds: [] })).get('C')!, /C without its violet gel/],
    ['gel-missing', 'D', levelsOf(withLight('D', { gelIds: [] })).get('D')!, /D without its moss gel/],
    ['gel-doubled', 'C', levelsOf(withLight('C', { gelIds: ['violet', 'violet'] })).get('C')!, /C with violet twice/],
    ['power-step', 'A', levelsOf(withLight('A', { energyJoules: lightOf('A')[1].energyJoules * 2 })).get('A')!, /A a stop too high/],
    ['power-step', 'B', levelsOf(withLight('B', { energyJoules: lightOf('B')[1].energyJoules / 2 })).get('B')!, /B a stop too low/],
  ]
  it.each(slips)('%s of %s is held back and named first', (kind, letter, real, words) => {
    // Heads that differ by half a stop hide what a half stop tells apart, such as a gel of 1.3 stops from a step of power.
    let named = 0
    let second = 0
    for (let start = 1; start <= 20; start++) {
      const { judged, causes } = firstCause(readWithSlip(letter, real, start), letter)
      if (judged.state === 'held-back' && causes[0]!.kind === kind && words.test(causes[0]!.words)) named++
      if (causes.slice(0, 2).some((cause) => words.test(cause.words))) second++
      expect(causes.some((cause) => cause.kind === 'this-head')).toBe(true)
      expect(causes.reduce((sum, { likelihood }) => sum + likelihood, 0)).toBeCloseTo(1, 9)
    }
    expect(named).toBeGreaterThanOrEqual(16)
    expect(second).toBe(20)
  })

  it('of another light that was on: which one is named', () => {
    // Exposures of flashes add (ISO 10157: a flash meter takes the integral over time).
    const cheek = meterModel(demoPlan, 'dusk').expect({ areaId: 'cheek-right', receptor: 'dome', pointed: 'light' })!
    const luxSeconds = (letter: string) => cheek.parts.find((part) => part.letter === letter)!.luxSeconds
    const { causes } = firstCause(readWithSlip('C', planned.get('C')! * Math.sqrt(1 + luxSeconds('B') / luxSeconds('C'))), 'C')
    expect(causes[0]!.words).toBe('B was on too')
  })

  it('is not learned from until somebody says that it is so', () => {
    const readings = readWithSlip('C', levelsOf(withLight('C', { gelIds: [] })).get('C')!)
    const umbrella = (of: Readings) => learn(demoPlan, of).corrections.find(({ key }) => key === 'modifier:umbrella-165')!.stops
    expect(Math.abs(umbrella(readings))).toBeLessThan(0.1)
    const accepted = { ...readings, 'r-C': { ...readings['r-C']!, accepted: { name: 'Ines', atMs: 9 } } }
    expect(umbrella(accepted)).toBeGreaterThan(1)
    const withdrawn = { ...accepted, 'r-C': { ...accepted['r-C']!, withdrawn: { name: 'Ines', atMs: 10 } } }
    expect(learn(demoPlan, withdrawn).readings.find(({ key }) => key === 'r-C')!.state).toBe('withdrawn')
    expect(umbrella(withdrawn)).toBeCloseTo(umbrella(readings), 1)
  })

  it('leaves the others where they were', () => {
    const without = learn(demoPlan, readAlone(demoPlan, LETTERS, (letter) => shown(planned.get(letter)!)))
    const withBad = learn(demoPlan, readWithSlip('C', planned.get('C')! * 2 ** (3 / 2), 4))
    for (const letter of ['A', 'B', 'D']) {
      const of = (learned: typeof without) => learned.lights.find((one) => one.lookId === 'dusk' && one.letter === letter)!.stops
      expect(Math.abs(of(withBad) - of(without))).toBeLessThan(0.3)
    }
  })
})

describe('what is learned', () => {
  const script = { D: exactFNumber(4, 9), B: exactFNumber(8, 6), C: exactFNumber(2.8, 9), A: exactFNumber(8, 0) }
  const readings = readAlone(demoPlan, LETTERS, (letter) => script[letter as keyof typeof script])

  it('does not depend on the order of the readings, bit for bit', () => {
    const expected = learn(demoPlan, readings)
    fc.assert(fc.property(fc.shuffledSubarray(Object.entries(readings), { minLength: 4, maxLength: 4 }), (entries) => {
      const other = learn(demoPlan, Object.fromEntries(entries))
      expect(other.corrections).toEqual(expected.corrections)
      expect(other.readings).toEqual(expected.readings)
    }), { numRuns: 24 })
  })

  it('gets surer with every reading, and never less sure', () => {
    let before = learn(demoPlan, {})
    for (let n = 1; n <= LETTERS.length; n++) {
      const now = learn(demoPlan, Object.fromEntries(Object.entries(readings).slice(0, n)))
      now.lights.forEach((light, i) => expect(light.plusMinusStops).toBeLessThanOrEqual(before.lights[i]!.plusMinusStops + 1e-12))
      const read = now.lights.find(({ lookId, letter }) => lookId === 'dusk' && letter === LETTERS[n - 1])!
      expect(read.plusMinusStops).toBeLessThan(0.2)
      expect(read.plusMinusBefore).toBeGreaterThanOrEqual(2 / 3 - 1e-9)
      before = now
    }
  })

  it('before any reading is as sure as the board says', () => {
    for (const light of predict(demoPlan, 'dusk').lights) {
      const doubt = learn(demoPlan, {}).lights.find(({ lookId, lightId }) => lookId === 'dusk' && lightId === light.id)!
      expect(doubt.plusMinusStops).toBeCloseTo(light.plusMinusStops, 1)
    }
  })

  it('one of three readings of a light that is a stop off does not count', () => {
    const [right, wrong] = [planned.get('A')!, planned.get('A')! * Math.SQRT2]
    const reading = readAlone(demoPlan, ['A'], () => right)['r-A']!
    const learned = learn(demoPlan, { one: reading, two: { ...reading, fNumber: wrong }, three: { ...reading, fNumber: right } })
    expect(Math.abs(learned.lights.find(({ lookId, letter }) => lookId === 'dusk' && letter === 'A')!.stops)).toBeLessThan(0.05)
    expect(learned.readings.map(({ key, state }) => [key, state])).toEqual([['one', 'learned'], ['three', 'learned'], ['two', 'held-back']])
  })

  it('once applied is not learned twice, and goes back when all readings are withdrawn', () => {
    const { edit } = learn(demoPlan, readings)
    const applied = edit!.changes.reduce<Plan>((plan, change) => {
      const [record, id] = change.path as ['heads' | 'modifiers' | 'gels', string]
      return { ...plan, [record]: { ...plan[record], [id]: { ...plan[record][id]!, learnedStops: 'set' in change ? change.set : 0 } } }
    }, demoPlan)
    expect(learn(applied, readings).edit).toBeNull()
    const withdrawn = Object.fromEntries(Object.entries(readings).map(([key, one]) => [key, { ...one, withdrawn: one.by }]))
    const back = learn(applied, withdrawn).edit!
    expect(back.changes.every((change) => 'set' in change && change.set === 0)).toBe(true)
    expect(back.changes.length).toBe(edit!.changes.length)
  })

  it('a reading made before the plan moved teaches the same after', () => {
    const moved = withLight('A', { energyJoules: 500, place: { xMetres: -1.2, yMetres: -1, zMetres: 2 } })
    const octa = (plan: Plan) => learn(plan, readings).corrections.find(({ key }) => key === 'modifier:octa-100')!.stops
    expect(octa(moved)).toBeCloseTo(octa(demoPlan), 12)
    expect(stopsBetween(levelsOf(moved).get('A')!, planned.get('A')!)).not.toBeCloseTo(0, 1)
  })
})
