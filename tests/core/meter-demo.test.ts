import { describe, expect, it } from 'vitest'
import { learn } from '../../shared-core/meter/learn.ts'
import { questionsOf } from '../../shared-core/meter/questions.ts'
import { turnFor } from '../../shared-core/meter/turn.ts'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { predict } from '../../shared-core/predict/predict.ts'
import { exactFNumber, questionsAlone, readAlone, stopsBetween, taught } from './meterTaking.ts'

// The readings of the demo job's script, typed from there: what the meter shows, and what to turn. A reads 8 and 0 and is
// right; B reads 8 and 6 and wants 8 and 2; C reads 2.8 and 9 and wants 4 and 0; D reads 4 and 9 and wants 5.6 and 5.
const script = [
  { letter: 'D', read: exactFNumber(4, 9), wants: exactFNumber(5.6, 5), turn: 0.6 },
  { letter: 'B', read: exactFNumber(8, 6), wants: exactFNumber(8, 2), turn: -0.4 },
  { letter: 'C', read: exactFNumber(2.8, 9), wants: exactFNumber(4, 0), turn: 0.1 },
  { letter: 'A', read: exactFNumber(8, 0), wants: exactFNumber(8, 0), turn: 0 },
] as const
const readings = readAlone(demoPlan, script.map(({ letter }) => letter), (letter) => script.find((one) => one.letter === letter)!.read)
const learned = learn(demoPlan, readings)

describe('the scripted readings', () => {
  it('are asked for background gel first, then in set-up order, then all together at the key', () => {
    const asked = questionsOf(demoPlan, 'dusk', learn(demoPlan, {}))
    expect(asked.filter(({ state }) => state === 'ask').map(({ fires, letters }) => [fires, letters.join('')])).toEqual(
      [['alone', 'D'], ['alone', 'B'], ['alone', 'C'], ['alone', 'A'], ['together', 'DBCA'], ['together', 'DBCA'], ['together', 'DBCA'], ['together', 'DBCA']])
  })

  it.each(script)('$letter wants what was agreed, and is turned by $turn', ({ letter, read, wants, turn }) => {
    const question = questionsAlone(demoPlan).get(letter)!
    expect(stopsBetween(question.plannedFNumber, wants)).toBeCloseTo(0, 6)
    const light = Object.values(demoPlan.looks['dusk']!.lights).find((one) => one.letter === letter)!
    const turned = turnFor(demoPlan.heads[light.headId]!, light.energyJoules, read, question.plannedFNumber)
    expect(turned.stops).toBeCloseTo(turn, 6)
    expect(Math.log2(turned.energyJoules / light.energyJoules)).toBeCloseTo(turn, 1)
  })

  it('all fit: no head of the script is further off than heads are', () => {
    expect(learned.readings.map(({ state }) => state)).toEqual(['learned', 'learned', 'learned', 'learned'])
  })

  it('after them each light is predicted as it reads, to a tenth', () => {
    const after = predict(taught(demoPlan, readings), 'dusk')
    for (const { letter, read } of script) {
      expect(Math.abs(stopsBetween(after.lights.find((one) => one.letter === letter)!.level.fNumber, read))).toBeLessThanOrEqual(0.1)
    }
  })

  it('say most of the strip and of the reflector, and trust the key and the shade', () => {
    const stops = (key: string) => learned.corrections.find((one) => one.key === key)!.stops
    expect(stops('modifier:strip-35x140')).toBeGreaterThan(0.3)
    expect(stops('modifier:reflector-65')).toBeLessThan(-0.4)
    expect(Math.abs(stops('modifier:octa-100'))).toBeLessThan(0.15)
  })

  it('leave nothing but the reading of all together to take', () => {
    const after = taught(demoPlan, readings)
    const open = questionsOf(after, 'dusk', learn(after, readings)).filter(({ state }) => state === 'ask' || state === 'again')
    expect(open.map(({ id }) => id)).toEqual(['dusk.together.nose'])
  })
})
