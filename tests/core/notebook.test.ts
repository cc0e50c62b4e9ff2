import { describe, expect, it } from 'vitest'
import { newPage, pagesFound, readNotebook, readPage, writeNotebook, coloursOf } from '../../shared-core/notebook/page.ts'
import { rebuild } from '../../shared-core/notebook/rebuild.ts'
import { learnedFrom, rebuiltEdit } from '../../shared-core/notebook/rebuiltEdit.ts'
import { applyEdit } from '../../shared-core/plan/edit.ts'
import { demoPlan as plan } from '../../shared-core/plan/demo/demoPlan.ts'
import { readPlan } from '../../shared-core/plan/readPlan.ts'
import { createPredictor } from '../../shared-core/predict/predict.ts'

const lookIds = Object.keys(plan.looks)
const page = newPage('one', 1_700_000_000_000, plan, 'dusk', 'The strip wants a longer arm', { plan, words: ['B: height: planned 1.75 m, as shot 1.81 m'] })
const other = newPage('two', 1_800_000_000_000, plan, lookIds.find((id) => id !== 'dusk' && plan.looks[id]!.name.includes('light')) ?? lookIds[1]!, '', null)

describe('a page of the notebook', () => {
  it('holds one look of the job, and is read again as it was', () => {
    expect(Object.keys(page.plan.looks)).toEqual(['dusk'])
    expect(readPage(JSON.parse(JSON.stringify(page)))).toEqual(page)
    expect(() => newPage('x', 0, plan, 'no such look', '', null)).toThrow(RangeError)
  })

  it('of an older plan is led up to this version', () => {
    const { schemaVersion: _now, ...rest } = page.plan
    const bare = (kit: Record<string, object>) => Object.fromEntries(Object.entries(kit).map(([id, { learnedStops: _none, ...thing }]: [string, { learnedStops?: number }]) => [id, thing]))
    const old = { ...page, plan: { ...rest, schemaVersion: 2, modifiers: bare(rest.modifiers), gels: bare(rest.gels) } }
    expect(readPage(old)).toEqual(page)
    // What stood otherwise is of no use without its plan, but the page is.
    expect(readPage({ ...page, shotPlan: { schemaVersion: 99 } })).toEqual({ ...page, shotPlan: null })
  })

  it('that is none is left out of a file and counted, and a file that is none is refused', () => {
    const file = JSON.parse(writeNotebook([page, other])) as { pages: unknown[] }
    file.pages.push({ id: 'bad' }, null)
    expect(readNotebook(JSON.stringify(file))).toEqual({ pages: [page, other], unread: 2 })
    for (const text of ['', '[]', '{"halfstopNotebook":2,"pages":[]}', JSON.stringify(plan)]) expect(readNotebook(text)).toBeNull()
  })

  it('is found by look, colour, room and note, whatever the case and accents, the latest first', () => {
    const found = (sought: string) => pagesFound([page, other], sought).map(({ id }) => id)
    expect(found('')).toEqual(['two', 'one'])
    expect(found('DUSK')).toEqual(['one'])
    expect(found('violét long')).toEqual(['one'])
    expect(found('arm strip')).toEqual(['one'])
    expect(found('no such word')).toEqual([])
    expect(coloursOf(page)).toMatch(/violet/i)
  })
})

describe('a kept look', () => {
  it('comes into another job as a look of its own with the kit it lacks, and nothing else is touched', () => {
    const job = { ...plan, gels: {}, looks: { other: plan.looks[lookIds.find((id) => id !== 'dusk')!]! } }
    const bare = { ...job, looks: { other: { ...job.looks.other, lights: {} } } }
    const rebuilt = rebuild(page.plan, 'dusk', { room: bare.room, mayMoveMark: false, kit: bare }, createPredictor())
    const made = rebuiltEdit(bare, rebuilt, 'dusk', 'Dusk, rebuilt')
    if (!made.ok) throw new Error(made.message)
    const now = applyEdit(bare, made.edit)
    expect(readPlan(now).ok).toBe(true)
    expect(now.looks['other']).toEqual(bare.looks.other)
    expect(now.room).toEqual(bare.room)
    const added = Object.values(now.looks).find(({ name }) => name === 'Dusk, rebuilt')!
    for (const { gelIds } of Object.values(added.lights)) for (const id of gelIds) expect(now.gels[id]).toMatchObject({ sheets: 0 })
  })

  it('lends what the meter taught of pieces of the same name that have learned nothing here', () => {
    const [id, strip] = Object.entries(plan.modifiers)[0]!
    const taught = { ...plan, modifiers: { ...plan.modifiers, [id]: { ...strip, learnedStops: 0.4 } } }
    const { edit, words } = learnedFrom(plan, taught)
    expect(words).toEqual([`${strip.name} +0.4`])
    expect(applyEdit(plan, edit).modifiers[id]!.learnedStops).toBe(0.4)
    expect(learnedFrom({ ...plan, modifiers: { ...plan.modifiers, [id]: { ...strip, learnedStops: -0.1 } } }, taught).words).toEqual([])
  })
})
