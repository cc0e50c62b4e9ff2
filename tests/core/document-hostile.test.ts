import { describe, expect, it } from 'vitest'
import { readPlanFromDocument } from '../../shared-core/document/readPlan.ts'
import { crossChecks } from '../../shared-core/plan/reading/crossChecks.ts'
import { writeJobFile, readJobFile } from '../../shared-core/plan/read.ts'
import { planSchema } from '../../shared-core/plan/schema/plan.ts'
import { hostileDocuments } from './hostileDocuments.ts'

describe.each(hostileDocuments)('$name', ({ make, poison }) => {
  const state = readPlanFromDocument(make())

  it('reads as a plan that holds together, or as none', () => {
    if (state.plan === null) return expect(state.repairs).toEqual([])
    expect(planSchema.safeParse(state.plan).error?.issues).toBeUndefined()
    expect(crossChecks(state.plan)).toEqual([])
    expect(readJobFile(writeJobFile(state.plan))).toMatchObject({ ok: true, repairs: [] })
    return undefined
  })

  it('says what was done, in a few short sentences', () => {
    if (state.plan === null || state.plan.looks['dusk']?.name.startsWith('<img')) return
    expect(state.repairs).not.toEqual([])
    expect(state.repairs.length).toBeLessThanOrEqual(41)
    for (const words of state.repairs) expect(words).toMatch(/^.{10,300}\.$/u)
  })

  it('shows nothing of what was put in', () => {
    if (poison === undefined) return
    expect(JSON.stringify(state)).not.toContain(poison)
    expect(({} as Record<string, unknown>)['polluted']).toBeUndefined()
  })

  it('reads the same on every device', () => {
    expect(JSON.stringify(readPlanFromDocument(make()))).toBe(JSON.stringify(state))
  })
})

describe('what is mended and what is left out', () => {
  const read = (name: string) => {
    const found = hostileDocuments.find((one) => one.name === name)
    if (!found) throw new Error(`no document called ${name}`)
    const { plan, repairs } = readPlanFromDocument(found.make())
    return { dusk: plan!.looks['dusk']!, plan: plan!, repairs }
  }

  it('leaves out a light without a power, and no other', () => {
    const { dusk, repairs } = read('a text where a number belongs')
    expect(Object.keys(dusk.lights)).toEqual(['a', 'b', 'd'])
    expect(repairs).toEqual(['One of the lights of “Look 1, Dusk in an orchard” could not be read and is left out.'])
  })

  it('shows what is out of range at the nearest bound', () => {
    const { dusk, plan, repairs } = read('numbers out of all bounds')
    expect(dusk.camera.isoSpeed).toBe(819_200)
    expect(plan.room.heightMetres).toBe(0.01)
    expect(dusk.lights['a']?.rollDegrees).toBe(-360)
    expect(repairs).toContain('The roll degrees of light A of “Look 1, Dusk in an orchard” was out of range and is shown at the nearest allowed value.')
  })

  it('gives a camera that cannot be read the usual leaf', () => {
    const { dusk, repairs } = read('infinity in a camera')
    expect(dusk.camera.fNumber).toBe(8)
    expect(repairs).toEqual(['The f number of the camera of “Look 1, Dusk in an orchard” could not be read and is shown at its usual value.'])
  })

  it('keeps lights whose kit is gone, on what there is', () => {
    const { dusk, repairs } = read('kit that is gone')
    expect(Object.keys(dusk.lights)).toEqual(['a', 'b', 'c', 'd'])
    expect(dusk.lights['a']?.headId).toBe('old-head-1000')
    expect(dusk.lights['c']?.gelIds).toEqual([])
    expect(repairs.some((words) => words.includes('no longer in the drawer'))).toBe(true)
  })

  it('letters clashing lights apart, the first set up keeping its letter', () => {
    const { dusk } = read('clashing letters everywhere')
    // Set up in the order D, B, C, A.
    expect(Object.entries(dusk.lights).map(([id, { letter }]) => id + letter)).toEqual(['aD', 'bB', 'cC', 'dA'])
  })

  it('shows an empty look when there is none', () => {
    const { plan, repairs } = read('no looks at all')
    expect(Object.keys(plan.looks)).toEqual(['look'])
    expect(repairs).toEqual(['No look of this job could be read: an empty one is shown.'])
  })
})
