import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { applyEdit } from '../../shared-core/plan/edit.ts'
import { replaceJob } from '../../shared-core/plan/edits/job.ts'
import { setPower } from '../../shared-core/plan/edits/lights.ts'
import { fitToHead, onHeadStep } from '../../shared-core/plan/fitToHead.ts'
import { nextLetter } from '../../shared-core/plan/letters.ts'
import { newId } from '../../shared-core/plan/newId.ts'
import { previewEdit } from '../../shared-core/plan/previewEdit.ts'
import { readEdit } from '../../shared-core/plan/readEdit.ts'
import { crossChecks } from '../../shared-core/plan/reading/crossChecks.ts'
import { planSchema } from '../../shared-core/plan/schema/plan.ts'
import { idText } from '../../shared-core/plan/schema/quantities.ts'
import { randomEdit, randomFrom } from './randomEdits.ts'

describe('edits from another device', () => {
  it('come through as they are when they are sound', () => {
    const random = randomFrom(7)
    let come = 0
    for (let step = 0; step < 200; step += 1) {
      const edit = randomEdit(demoPlan, random)
      if (!edit) continue
      expect(readEdit(JSON.parse(JSON.stringify(edit)))).toEqual(edit)
      come += 1
    }
    expect(come).toBeGreaterThan(100)
  })

  const energy = ['looks', 'dusk', 'lights', 'a', 'energyJoules']
  it.each([
    ['no edit', null],
    ['a text', 'setPower'],
    ['a value of another kind', { name: 'x', changes: [{ path: energy, set: 'much' }] }],
    ['a value out of bounds', { name: 'x', changes: [{ path: energy, set: 1e9 }] }],
    ['half a light', { name: 'x', changes: [{ path: ['looks', 'dusk', 'lights', 'e'], set: { letter: 'E' } }] }],
    ['a place the plan does not have', { name: 'x', changes: [{ path: ['looks', 'dusk', 'smoke'], set: 1 }] }],
    ['a way into a prototype', { name: 'x', changes: [{ path: ['looks', '__proto__', 'name'], set: 'x' }] }],
    ['the removal of a leaf', { name: 'x', changes: [{ path: energy, remove: true }] }],
    ['the removal of the room', { name: 'x', changes: [{ path: ['room'], remove: true }] }],
    ['the whole plan', { name: 'x', changes: [{ path: [], set: {} }] }],
    ['too many changes', { name: 'x', changes: Array.from({ length: 501 }, () => ({ path: energy, set: 5 })) }],
    ['more than an edit', { name: 'x', changes: [], run: 'this' }],
  ])('that are %s are not shown', (_what, value) => {
    expect(readEdit(value)).toBeNull()
  })

  it('are not shown where they would leave a plan that does not hold together', () => {
    const noHead = readEdit({ name: 'x', changes: [{ path: ['looks', 'dusk', 'lights', 'a', 'headId'], set: 'gone' }] })
    expect(previewEdit(demoPlan, noHead!)).toBe(demoPlan)
    const noLook = readEdit({ name: 'x', changes: Object.keys(demoPlan.looks).map((id) => ({ path: ['looks', id], remove: true })) })
    expect(previewEdit(demoPlan, noLook!)).toBe(demoPlan)
    const light = demoPlan.looks['dusk']!.lights['a']!
    const crowd = { name: 'x', changes: Array.from({ length: 50 }, (_, index) => ({ path: ['looks', 'dusk', 'lights', `l${index}`], set: light })) }
    expect(previewEdit(demoPlan, readEdit(crowd)!)).toBe(demoPlan)
  })

  it('are shown as they would be written', () => {
    const made = setPower(demoPlan, 'dusk', 'a', 500)
    if (!made.ok) throw new Error(made.message)
    expect(previewEdit(demoPlan, made.edit)).toEqual(applyEdit(demoPlan, made.edit))
    expect(previewEdit(demoPlan, made.edit)).not.toBe(demoPlan)
  })

  it('can be anything at all, and what is shown is still a plan', () => {
    const path = fc.array(fc.constantFrom('looks', 'dusk', 'lights', 'a', 'heads', 'head-1000', 'count', 'place', 'xMetres', '__proto__', 'constructor'), { maxLength: 7 })
    const change = fc.oneof(fc.record({ path, set: fc.anything({ maxDepth: 3 }) }), fc.record({ path, remove: fc.constant(true) }))
    fc.assert(fc.property(fc.array(change, { maxLength: 3 }), (changes) => {
      const edit = readEdit({ name: 'x', changes })
      const plan = edit ? previewEdit(demoPlan, edit) : demoPlan
      expect(planSchema.safeParse(plan).success && crossChecks(plan).length === 0).toBe(true)
    }), { numRuns: 150 })
  })
})

it('another job takes the place of this one in a single edit', () => {
  const other = { ...demoPlan, title: 'Other', looks: { only: demoPlan.looks['dusk']! } }
  const made = replaceJob(demoPlan, other)
  if (!made.ok) throw new Error(made.message)
  expect(made.edit.changes.map(({ path }) => path)).toEqual([['title'], ['looks']])
  expect(applyEdit(demoPlan, made.edit)).toEqual(other)
})

describe('what edits are made of', () => {
  // Nine stops in tenths from 1000 J, and five stops in thirds: powers of two, by hand.
  const nine = { fullEnergyJoules: 1_000, lowestEnergyJoules: 2, stepStops: 0.1 }
  const five = { fullEnergyJoules: 1_000, lowestEnergyJoules: 31.25, stepStops: 1 / 3 }

  it.each([[nine, 260, 250 * 2 ** 0.1], [nine, 5_000, 1_000], [nine, 0.5, 2], [nine, NaN, 2], [five, 23, 31.25], [five, 420, 500 * 2 ** (-1 / 3)], [five, 980, 1_000]])(
    'fits a power to what the head can be set to', (head, asked, given) => expect(fitToHead(head, asked)).toBeCloseTo(given, 6),
  )

  it('puts a power on a step without bounding it', () => {
    expect(onHeadStep(five, 1_900)).toBeCloseTo(2_000, 6)
    expect(onHeadStep(five, 23)).toBeCloseTo(31.25 * 2 ** (-1 / 3), 6)
  })

  it('letters tapes from A, filling gaps, and goes on past Z', () => {
    expect(nextLetter([])).toBe('A')
    expect(nextLetter(['A', 'C'])).toBe('B')
    expect(nextLetter('ABCDEFGHIJKLMNOPQRSTUVWXYZ')).toBe('A1')
  })

  it('makes ids that the schema takes and that do not repeat', () => {
    const ids = new Set(Array.from({ length: 10_000 }, newId))
    expect(ids.size).toBe(10_000)
    for (const id of ids) expect(idText.safeParse(id).success).toBe(true)
  })
})
