import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { applyEdit, type PlanEdit } from '../../shared-core/plan/edit.ts'
import { addGel, changeGel, changeHead, removeGel, removeHead, removeModifier } from '../../shared-core/plan/edits/kit.ts'
import { addLight, changeLight, chooseHead, duplicateLight, removeLight, setGels, setPower } from '../../shared-core/plan/edits/lights.ts'
import { changeCamera } from '../../shared-core/plan/edits/look.ts'
import { addLook, duplicateLook, removeLook } from '../../shared-core/plan/edits/looks.ts'
import { addPoint, removePoint } from '../../shared-core/plan/edits/points.ts'
import { crossChecks } from '../../shared-core/plan/reading/crossChecks.ts'
import { LIMITS, planSchema, type Plan } from '../../shared-core/plan/schema/plan.ts'
import { randomEdit, randomFrom } from './randomEdits.ts'

type Made<Fields> = ({ readonly ok: true; readonly edit: PlanEdit } & Fields) | { readonly ok: false; readonly message: string }

function done<Fields>(made: Made<Fields>): { readonly edit: PlanEdit } & Fields {
  if (!made.ok) throw new Error(made.message)
  return made
}
const after = (plan: Plan, made: Made<unknown>): Plan => applyEdit(plan, done(made).edit)
const refusal = (made: Made<unknown>): string => (made.ok ? 'not refused' : made.message)

const place = { xMetres: 1, yMetres: 1, zMetres: 1 }
const newLight = { headId: 'head-1000', modifierId: 'octa-100', place, aim: place }

describe('edits of lights', () => {
  it('gives a new light the next free letter and a place at the end of the set-up', () => {
    const { edit, lightId } = done(addLight(demoPlan, 'dusk', newLight))
    const light = applyEdit(demoPlan, edit).looks['dusk']?.lights[lightId]
    expect(light).toMatchObject({ letter: 'E', setUpOrder: 4, on: true, gelIds: [] })
  })

  it('fills a gap in the letters first', () => {
    const without = after(demoPlan, removeLight(demoPlan, 'dusk', 'b'))
    const { edit, lightId } = done(duplicateLight(without, 'dusk', 'c'))
    expect(applyEdit(without, edit).looks['dusk']?.lights[lightId]?.letter).toBe('B')
  })

  it('changes one leaf for each value that differs, and none for those that do not', () => {
    const { edit } = done(changeLight(demoPlan, 'dusk', 'a', { rollDegrees: 5, on: true, place: { xMetres: 0.1 } }))
    expect(edit.changes).toEqual([
      { path: ['looks', 'dusk', 'lights', 'a', 'rollDegrees'], set: 5 },
      { path: ['looks', 'dusk', 'lights', 'a', 'place', 'xMetres'], set: 0.1 },
    ])
  })

  it('leaves every branch it does not touch the same object', () => {
    const changed = after(demoPlan, setPower(demoPlan, 'dusk', 'a', 250))
    expect(changed.looks['dusk']?.lights['b']).toBe(demoPlan.looks['dusk']?.lights['b'])
    expect(changed.looks['first-light']).toBe(demoPlan.looks['first-light'])
    expect(changed.gels).toBe(demoPlan.gels)
  })

  it('brings numbers within bounds and refuses what is no number', () => {
    const camera = after(demoPlan, changeCamera(demoPlan, 'dusk', { fNumber: 500, isoSpeed: -3 })).looks['dusk']?.camera
    expect(camera).toMatchObject({ fNumber: 128, isoSpeed: 6 })
    expect(refusal(changeCamera(demoPlan, 'dusk', { fNumber: NaN }))).toContain('wants a number')
  })

  it('refuses a letter that is taken, kit that is not there, and a light that is gone', () => {
    expect(refusal(changeLight(demoPlan, 'dusk', 'a', { letter: 'B' }))).toContain('Letter B')
    expect(refusal(changeLight(demoPlan, 'dusk', 'a', { headId: 'none' }))).toContain('not in the kit')
    expect(refusal(setGels(demoPlan, 'dusk', 'a', ['none']))).toContain('not in the drawer')
    expect(refusal(setPower(demoPlan, 'dusk', 'z', 100))).toContain('no longer')
    expect(refusal(setPower(demoPlan, 'dusk', 'constructor', 100))).toContain('no longer')
  })

  it('sets power on a step of the head, and keeps what the head cannot give', () => {
    // Nine stops in tenths from 1000 J: -4.1 is 58.3 J (2^-4.1 = 0.05831, by hand).
    expect(after(demoPlan, setPower(demoPlan, 'dusk', 'a', 58)).looks['dusk']?.lights['a']?.energyJoules).toBeCloseTo(58.31, 1)
    expect(after(demoPlan, setPower(demoPlan, 'dusk', 'a', 1_414)).looks['dusk']?.lights['a']?.energyJoules).toBeCloseTo(1_414.2, 0)
  })

  it('brings the power within the range of another head', () => {
    const changed = after(demoPlan, chooseHead(demoPlan, 'dusk', 'd', 'old-head-1000'))
    expect(changed.looks['dusk']?.lights['d']).toMatchObject({ headId: 'old-head-1000', energyJoules: 31.25 })
  })

  it('stops at the limit of lights', () => {
    let plan = demoPlan
    for (let count = 4; count < LIMITS.lightsPerLook; count += 1) plan = after(plan, addLight(plan, 'dusk', newLight))
    expect(Object.keys(plan.looks['dusk']?.lights ?? {})).toHaveLength(LIMITS.lightsPerLook)
    expect(refusal(addLight(plan, 'dusk', newLight))).toContain('40')
  })
})

describe('edits of kit, points and looks', () => {
  it('refuses to remove what is in use, and says where', () => {
    expect(refusal(removeHead(demoPlan, 'head-1000'))).toMatch(/A of “Look/)
    expect(refusal(removeModifier(demoPlan, 'strip-35x140'))).toMatch(/B of “Look/)
    expect(refusal(removeGel(demoPlan, 'moss'))).toMatch(/D of “Look/)
    expect(after(demoPlan, removeGel(demoPlan, 'teal')).gels['teal']).toBeUndefined()
  })

  it('keeps the lowest power of a head below its full power', () => {
    expect(refusal(changeHead(demoPlan, 'head-1000', { lowestEnergyJoules: 1_000 }))).toContain('below its full power')
  })

  it('takes a gel’s source as one thing', () => {
    const { edit, gelId } = done(addGel(demoPlan, { name: 'Mine', source: { from: 'neutral', lossStops: 1 }, sheets: 0 }))
    const plan = applyEdit(demoPlan, edit)
    const changed = done(changeGel(plan, gelId, { source: { from: 'mired', shiftMired: 100 } }))
    expect(changed.edit.changes).toEqual([{ path: ['gels', gelId, 'source'], set: { from: 'mired', shiftMired: 100 } }])
  })

  it('keeps a point that a light is metered at', () => {
    const { edit, pointId } = done(addPoint(demoPlan, 'dusk', { place }))
    const withPoint = applyEdit(demoPlan, edit)
    const served = after(withPoint, changeLight(withPoint, 'dusk', 'c', { serves: pointId }))
    expect(refusal(removePoint(served, 'dusk', pointId))).toContain('Light C')
    expect(after(withPoint, removePoint(withPoint, 'dusk', pointId)).looks['dusk']?.points).toEqual({})
  })

  it('copies a look with the same lights, and keeps the last look', () => {
    const { edit, lookId } = done(duplicateLook(demoPlan, 'dusk', 'Other'))
    const copied = applyEdit(demoPlan, edit)
    expect(copied.looks[lookId]?.lights).toEqual(demoPlan.looks['dusk']?.lights)
    const { edit: bare } = done(addLook(demoPlan))
    expect(bare.changes).toHaveLength(1)
    const one: Plan = { ...demoPlan, looks: { only: demoPlan.looks['dusk']! } }
    expect(refusal(removeLook(one, 'only'))).toContain('at least one look')
  })

  it('changes nothing when what an edit is for was removed meanwhile', () => {
    const { edit } = done(changeLight(demoPlan, 'dusk', 'c', { rollDegrees: 9 }))
    const without = after(demoPlan, removeLight(demoPlan, 'dusk', 'c'))
    expect(applyEdit(without, edit)).toBe(without)
  })
})

it('any row of edits leaves a plan that the schema and the cross checks pass', () => {
  fc.assert(
    fc.property(fc.integer(), (start) => {
      const random = randomFrom(start)
      let plan = demoPlan
      for (let step = 0; step < 60; step += 1) {
        const edit = randomEdit(plan, random)
        if (edit) plan = applyEdit(plan, edit)
      }
      expect(planSchema.safeParse(plan).error?.issues).toBeUndefined()
      expect(crossChecks(plan)).toEqual([])
    }),
    { numRuns: 60 },
  )
})
