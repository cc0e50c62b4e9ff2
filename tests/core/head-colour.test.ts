import { describe, expect, it } from 'vitest'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import type { Head } from '../../shared-core/plan/schema/kit.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { flashKelvin } from '../../shared-core/predict/lightColour.ts'
import { predict } from '../../shared-core/predict/predict.ts'

const [headId, anyHead] = Object.entries(demoPlan.heads)[0]!
const head: Head = { ...anyHead, fullEnergyJoules: 512, lowestEnergyJoules: 8, colourTemperatureKelvin: 5500, driftKelvinAtLowest: 300 }

describe('a head\'s colour over its power', () => {
  // Bluer, of more kelvin, the lower the power: common practice of heads that cut the tail, no source.
  it.each([[512, 5500], [64, 5650], [8, 5800], [4, 5800]])('at %d of 512 J it is %d K', (energyJoules, kelvin) => {
    expect(flashKelvin(head, energyJoules)).toBe(kelvin)
  })

  it('may get warmer instead', () => {
    expect(flashKelvin({ ...head, driftKelvinAtLowest: -200 }, 8)).toBe(5300)
  })
})

describe('what the meter taught of a head', () => {
  const taught = (learnedStops: number): Plan => ({ ...demoPlan, heads: { ...demoPlan.heads, [headId]: { ...anyHead, learnedStops } } })

  it('half a stop learned is half a stop more of every light of that head, everywhere', () => {
    const lights = demoPlan.looks['dusk']!.lights
    const [before, after] = [predict(taught(0), 'dusk'), predict(taught(0.5), 'dusk')]
    let asked = 0
    before.areas.forEach(({ byLight }, i) => byLight.forEach(({ lightId, channels }, k) => {
      const stops = lights[lightId]!.headId === headId ? 0.5 : 0
      if (channels[1] === 0) return
      if (stops > 0) asked++
      expect(Math.log2(after.areas[i]!.byLight[k]!.channels[1] / channels[1])).toBeCloseTo(stops, 9)
    }))
    expect(asked).toBeGreaterThan(5)
  })
})

describe('what the meter taught of modifier and sheets', () => {
  const before = predict(demoPlan, 'dusk')
  const moved = (plan: Plan) => predict(plan, 'dusk').lights.map(({ letter, level }, i) => [letter, level.stops! - before.lights[i]!.level.stops!] as const)
  const expectMoved = (plan: Plan, expected: Readonly<Record<string, number>>) =>
    moved(plan).forEach(([letter, stops]) => expect(stops).toBeCloseTo(expected[letter] ?? 0, 9))

  it('is added to every light that carries the modifier, and to no other', () => {
    expectMoved({ ...demoPlan, modifiers: { ...demoPlan.modifiers, 'strip-35x140': { ...demoPlan.modifiers['strip-35x140']!, learnedStops: 0.4 } } }, { B: 0.4 })
  })

  it('is added once for every sheet of a gel', () => {
    const violet = (gelIds: readonly string[], learnedStops: number): Plan => ({
      ...demoPlan,
      gels: { ...demoPlan.gels, violet: { ...demoPlan.gels['violet']!, learnedStops } },
      looks: { ...demoPlan.looks, dusk: { ...demoPlan.looks['dusk']!, lights: { ...demoPlan.looks['dusk']!.lights, c: { ...demoPlan.looks['dusk']!.lights['c']!, gelIds: [...gelIds] } } } },
    })
    expectMoved(violet(['violet'], -0.3), { C: -0.3 })
    const levelOfC = (plan: Plan) => predict(plan, 'dusk').lights.find(({ letter }) => letter === 'C')!.level.stops!
    expect(levelOfC(violet(['violet', 'violet'], -0.3)) - levelOfC(violet(['violet', 'violet'], 0))).toBeCloseTo(-0.6, 9)
  })
})
