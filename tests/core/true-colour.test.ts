import { differenceCiede2000 } from 'culori'
import { expect, it } from 'vitest'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { applyEdit } from '../../shared-core/plan/edit.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { predict } from '../../shared-core/predict/predict.ts'
import { trueColour, type TrueColour } from '../../shared-core/predict/trueColour.ts'

const LOOK = 'dusk-draft-1'

function lipsOf(plan: Plan): TrueColour {
  const { areas, lights, taking } = predict(plan, LOOK)
  return trueColour(areas.find(({ id }) => id === 'lips')!, lights, taking, plan.looks[LOOK]!.finish)
}

const set = (changes: Readonly<Record<string, boolean | number | readonly string[]>>): Plan => applyEdit(demoPlan, {
  name: 'test', changes: Object.entries(changes).map(([path, value]) => ({ path: ['looks', LOOK, ...path.split('/')], set: value })),
})
const clearAlone = { 'lights/b/on': false, 'lights/c/on': false, 'lights/d/on': false }

it('by clear light alone is the area\'s own, at any level', () => {
  for (const energyJoules of [30, 120]) {
    const { shiftStops, spreadStops, difference } = lipsOf(set({ ...clearAlone, 'lights/a/energyJoules': energyJoules }))
    for (const shift of shiftStops!) expect(Math.abs(shift)).toBeLessThan(0.02)
    expect(spreadStops).toBeLessThan(0.03)
    expect(difference).toBeLessThan(0.6)
  }
})

it('is pushed to red and blue by violet light, which holds green back, and the more the stronger it is', () => {
  // The story's own draft: C in violet at 45 degrees on lips that must read true fails them.
  const asDrafted = lipsOf(demoPlan)
  const [red, green, blue] = asDrafted.shiftStops!
  expect(green).toBeLessThan(0)
  expect(blue).toBeGreaterThan(0)
  expect(red + green + blue).toBeCloseTo(0, 9)
  expect(asDrafted.spreadStops).toBeCloseTo(Math.max(red, green, blue) - Math.min(red, green, blue), 9)
  const stronger = lipsOf(set({ 'lights/c/energyJoules': demoPlan.looks[LOOK]!.lights['c']!.energyJoules * 2 }))
  expect(stronger.spreadStops!).toBeGreaterThan(asDrafted.spreadStops!)
  expect(stronger.difference!).toBeGreaterThan(asDrafted.difference!)
})

it('is as far from clear light as a general library says of the two patches that are shown', () => {
  const { shown, byClearLight, difference } = lipsOf(demoPlan)
  expect(difference).toBeCloseTo(differenceCiede2000()(shown, byClearLight!), 2)
})

it('has no clear light to be held against where none is on', () => {
  expect(lipsOf(set({ 'lights/a/on': false }))).toMatchObject({ shiftStops: null, difference: null, byClearLight: null })
})
