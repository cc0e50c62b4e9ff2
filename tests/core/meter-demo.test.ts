import { describe, expect, it } from 'vitest'
import { learn } from '../../shared-core/meter/learn.ts'
import { questionsOf } from '../../shared-core/meter/questions.ts'
import { turnFor } from '../../shared-core/meter/turn.ts'
import { applyEdit } from '../../shared-core/plan/edit.ts'
import { setPower } from '../../shared-core/plan/edits/lights.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
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

  it('and once all is turned as told, every light is predicted where it was wanted', () => {
    const turned = script.reduce<Plan>((plan, { letter, read }) => {
      const question = questionsAlone(demoPlan).get(letter)!
      const light = demoPlan.looks['dusk']!.lights[question.lightIds[0]!]!
      const { energyJoules } = turnFor(demoPlan.heads[light.headId]!, light.energyJoules, read, question.plannedFNumber)
      const edit = setPower(plan, 'dusk', question.lightIds[0]!, energyJoules)
      if (!edit.ok) throw new Error(edit.message)
      return applyEdit(plan, edit.edit)
    }, taught(demoPlan, readings))
    for (const { letter, wants } of script) {
      expect(Math.abs(stopsBetween(predict(turned, 'dusk').lights.find((one) => one.letter === letter)!.level.fNumber, wants))).toBeLessThanOrEqual(0.1)
    }
    const open = questionsOf(turned, 'dusk', learn(turned, readings)).filter(({ state }) => state === 'ask' || state === 'again')
    expect(open.map(({ id }) => id)).toEqual(['dusk.together.nose'])
  })
})

describe('a head at the end of its range', () => {
  const head = demoPlan.heads['head-1000']!
  it('is turned as far as it goes, and what is still missing is said', () => {
    const turn = turnFor(head, 900, exactFNumber(5.6, 0), exactFNumber(8, 0))
    expect(turn.energyJoules).toBe(1_000)
    // 1000 J over 900 J is 0.15 stop; of the one stop wanted 0.85 is left.
    expect(turn.leftStops).toBeCloseTo(1 - Math.log2(1_000 / 900), 9)
    expect(turn.words).toContain('full power is 0.8 stop short')
  })

  it('is too strong at its lowest', () => {
    const turn = turnFor(head, 2, exactFNumber(8, 5), exactFNumber(8, 0))
    expect(turn.energyJoules).toBe(2)
    expect(turn.words).toContain('0.5 stop too much')
  })

  it('is told in its own notation and steps', () => {
    expect(turnFor({ ...head, powerNotation: 'fraction' }, 250 * 2 ** 0.3, exactFNumber(5.6, 4), exactFNumber(5.6, 0)).words).toBe('down 0.4: 1/4+0.3 → 1/8+0.9')
  })
})
