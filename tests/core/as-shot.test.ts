import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { demoPlan as plan } from '../../shared-core/plan/demo/demoPlan.ts'
import { createPredictor } from '../../shared-core/predict/predict.ts'
import { planAsShot, plannedNumbers, shotWords, whereTapesMeet } from '../../shared-core/notebook/asShot.ts'
import { strikeList } from '../../shared-core/notebook/strikeList.ts'
import { asShotKey, type AsShot, type StandNumbers } from '../../shared-core/rig/asShot.ts'
import { readRigEntry } from '../../shared-core/rig/rig.ts'
import { marksOf, tapedFrom } from '../../shared-core/stands/marks.ts'
import { standsOf } from '../../shared-core/stands/stand.ts'

const stands = standsOf(plan, 'dusk', createPredictor()(plan, 'dusk'))
const stand = (name: string) => stands.find((one) => one.name === name)!
const entry = (name: string, shot: Partial<StandNumbers>): AsShot => {
  const planned = plannedNumbers(stand(name))
  return { lookId: 'dusk', standId: stand(name).id, by: { name: 'Tobin', atMs: 1 }, planned, shot: { ...planned, ...shot }, note: '' }
}
const recorded = (one: AsShot) => planAsShot(plan, 'dusk', stands, { [asShotKey('dusk', one.standId)]: one })

describe('a look as shot', () => {
  it('stands beside what was planned, number by number', () => {
    const [one, other] = plannedNumbers(stand('A')).tapesMetres
    const words = shotWords(entry('A', { frontToMetres: 1.2, tapesMetres: [one + 0.06, other], gelIds: ['straw'] }), stand('A'), plan, 'metric')
    // The plan's own key-to-nose distance, by Pythagoras in space on the prediction's place of the nose.
    const { place } = plan.looks['dusk']!.lights['a']!
    const [x, y, z] = createPredictor()(plan, 'dusk').areas.find(({ id }) => id === 'nose')!.place
    const planned = Math.hypot(x - place.xMetres, y - place.yMetres, z - place.zMetres).toFixed(2)
    expect(words).toContain(`front to the nose: planned ${planned} m, as shot 1.20 m`)
    expect(words).toContain('gel: planned clear, as shot Straw')
    expect(words).toHaveLength(3)
    expect(shotWords(entry('A', {}), stand('A'), plan, 'metric')).toEqual([])
  })

  it('is kept as an entry of the day that can be read again, and changes nothing of the plan', () => {
    const before = JSON.stringify(plan)
    for (const { name } of stands) expect(readRigEntry('asShot', JSON.parse(JSON.stringify(entry(name, {}))))).not.toBeNull()
    expect(recorded(entry('B', {})).looks['dusk']!.lights).toEqual(plan.looks['dusk']!.lights)
    recorded(entry('B', { heightMetres: 1, energyJoules: 500 }))
    expect(JSON.stringify(plan)).toBe(before)
  })

  it('becomes a plan whose stands are found by the tapes that were read', () => {
    const marks = marksOf(plan, plan.looks['dusk']!)
    const planned = plan.looks['dusk']!.lights['b']!.place
    fc.assert(fc.property(fc.double({ min: -0.3, max: 0.3, noNaN: true }), fc.double({ min: -0.3, max: 0.3, noNaN: true }), (dx, dy) => {
      const [x, y] = [planned.xMetres + dx, planned.yMetres + dy]
      // Tapes from the same two marks to where it really stands: Pythagoras.
      const tapes = stand('B').taped.from.map(({ mark }) => Math.hypot(x - mark.xMetres, y - mark.yMetres)) as [number, number]
      const { lights } = recorded(entry('B', { tapesMetres: tapes, heightMetres: 1.9 })).looks['dusk']!
      expect(Math.hypot(lights['b']!.place.xMetres - x, lights['b']!.place.yMetres - y)).toBeLessThan(0.012)
      expect(lights['b']!.place.zMetres).toBe(1.9)
      expect(lights['a']).toEqual(plan.looks['dusk']!.lights['a'])
    }))
    expect(whereTapesMeet(tapedFrom(marks, 1, 1), [0.1, 0.1], { xMetres: 1, yMetres: 1 })).toBeNull()
  })
})

describe('the strike list', () => {
  // Reverse of set-up, caps, hot heads, two on a boom: common practice, no source.
  it('takes down in reverse, the background last, with care for hot heads, caps and lifting', () => {
    const lines = strikeList(plan, 'dusk')
    expect(lines.map(({ name }) => name)).toEqual(stands.map(({ name }) => name).reverse())
    expect(lines.at(-1)!.name).toBe('D')
    expect(lines.find(({ name }) => name === 'D')!.words.join()).toContain('Moss back to the sleeve')
    for (const line of lines.filter(({ name }) => name.length === 1)) expect(line.cautions.join(' ')).toMatch(/cool.*cap/i)
    const { dusk } = plan.looks
    const hot = { ...plan, looks: { dusk: { ...dusk!, lights: { a: { ...dusk!.lights['a']!, headId: 'old-head-1000', support: 'boom' as const } } } } }
    const a = strikeList(hot, 'dusk').find(({ name }) => name === 'A')!.cautions.join(' ')
    expect(a).toMatch(/Hot.*gloves/)
    expect(a).toContain('Two people lower the boom')
    expect(strikeList(plan, 'first-light').find(({ name }) => name.startsWith('Scrim'))!.cautions.join()).toContain('Two people')
  })
})
