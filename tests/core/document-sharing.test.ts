import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import * as Y from 'yjs'
import { applyEditToDocument } from '../../shared-core/document/applyEdit.ts'
import { jsonFromShared } from '../../shared-core/document/branches.ts'
import { planRoot } from '../../shared-core/document/planRoot.ts'
import { readPlanFromDocument, watchPlan } from '../../shared-core/document/readPlan.ts'
import { writePlanToDocument } from '../../shared-core/document/writePlan.ts'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { applyEdit, type PlanEdit } from '../../shared-core/plan/edit.ts'
import { changeLight, removeLight, setPower } from '../../shared-core/plan/edits/lights.ts'
import { moveLight } from '../../shared-core/plan/edits/placing.ts'
import { inPlanOrder } from '../../shared-core/plan/schema/order.ts'
import { SCHEMA_VERSION } from '../../shared-core/plan/schema/plan.ts'

const ines = { by: 'person', seatId: 'ines' } as const
const tobin = { by: 'person', seatId: 'tobin' } as const

function demoDocument(): Y.Doc {
  const doc = new Y.Doc()
  writePlanToDocument(doc, demoPlan)
  return doc
}

function copyOf(doc: Y.Doc): Y.Doc {
  const copy = new Y.Doc()
  Y.applyUpdate(copy, Y.encodeStateAsUpdate(doc), { by: 'relay' })
  return copy
}

function merge(a: Y.Doc, b: Y.Doc): void {
  Y.applyUpdate(a, Y.encodeStateAsUpdate(b, Y.encodeStateVector(a)), { by: 'relay' })
  Y.applyUpdate(b, Y.encodeStateAsUpdate(a, Y.encodeStateVector(b)), { by: 'relay' })
}

function editOf(made: { readonly ok: true; readonly edit: PlanEdit } | { readonly ok: false; readonly message: string }): PlanEdit {
  if (!made.ok) throw new Error(made.message)
  return made.edit
}

const planIn = (doc: Y.Doc) => readPlanFromDocument(doc).plan!

describe('a plan in a document', () => {
  it('comes back as it was written, and order of keys apart, to the byte', () => {
    const { plan, repairs } = readPlanFromDocument(copyOf(demoDocument()))
    expect(repairs).toEqual([])
    expect(JSON.stringify(plan)).toBe(JSON.stringify(inPlanOrder(demoPlan)))
  })

  it('is not there yet in an empty document', () => {
    expect(readPlanFromDocument(new Y.Doc())).toEqual({ plan: null, repairs: [] })
  })

  it('written again adds nothing', () => {
    const doc = demoDocument()
    const before = Y.encodeStateAsUpdate(doc)
    writePlanToDocument(doc, demoPlan)
    expect(Y.encodeStateAsUpdate(doc)).toEqual(before)
  })

  it('takes the place of another plan, down to what that one had more', () => {
    const doc = demoDocument()
    const { 'first-light': firstLight } = demoPlan.looks
    const other = { ...demoPlan, title: 'Other', looks: { only: firstLight! } }
    writePlanToDocument(doc, other)
    expect(planIn(doc)).toEqual(other)
  })

  it('from a newer version is not shown, and why is said', () => {
    const doc = demoDocument()
    planRoot(doc).set('schemaVersion', SCHEMA_VERSION + 1)
    const { plan, repairs } = readPlanFromDocument(doc)
    expect(plan).toBeNull()
    expect(repairs.join()).toContain('newer version')
  })

  const frozenFolder = new URL('../frozen-plans/', import.meta.url)
  it.each(readdirSync(frozenFolder).filter((name) => name.endsWith('.ydoc')))('%s still opens', (name) => {
    const doc = new Y.Doc()
    Y.applyUpdate(doc, new Uint8Array(readFileSync(new URL(name, frozenFolder))))
    const { plan, repairs } = readPlanFromDocument(doc)
    expect(repairs).toEqual([])
    expect(plan?.title).toBe('Late Harvest')
    expect(plan?.looks['dusk']?.lights['c']?.place).toEqual({ xMetres: 2, yMetres: -0.25, zMetres: 1.7 })
  })
})

describe('snapshots', () => {
  it('keep every branch that did not change', () => {
    const doc = demoDocument()
    const before = planIn(doc)
    applyEditToDocument(doc, editOf(setPower(before, 'dusk', 'a', 250)), ines)
    const after = planIn(doc)
    expect(after.looks['dusk']?.lights['a']?.energyJoules).toBeCloseTo(250, 6)
    expect(after.looks['dusk']?.lights['a']?.place).toBe(before.looks['dusk']?.lights['a']?.place)
    expect(after.looks['dusk']?.lights['b']).toBe(before.looks['dusk']?.lights['b'])
    expect(after.looks['first-light']).toBe(before.looks['first-light'])
    expect(after.heads).toBe(before.heads)
    expect(readPlanFromDocument(doc).plan).toBe(after)
  })

  it('keep them through repairs too', () => {
    const doc = demoDocument()
    applyEditToDocument(doc, editOf(changeLight(planIn(doc), 'dusk', 'c', { letter: 'Q' })), ines)
    const map = (planRoot(doc).get('looks') as Y.Map<Y.Map<Y.Map<Y.Map<unknown>>>>).get('dusk')!.get('lights')!
    map.get('c')!.set('letter', 'A')
    const before = planIn(doc)
    applyEditToDocument(doc, editOf(setPower(before, 'first-light', 'a', 250)), ines)
    const after = planIn(doc)
    expect(readPlanFromDocument(doc).repairs).toHaveLength(1)
    expect(after.looks['dusk']).toBe(before.looks['dusk'])
    expect(after.looks['first-light']?.lights['b']).toBe(before.looks['first-light']?.lights['b'])
  })

  it('keep them when the kit itself is repaired', () => {
    const doc = demoDocument()
    const heads = planRoot(doc).get('heads') as Y.Map<Y.Map<unknown>>
    heads.get('head-1000')!.set('lowestEnergyJoules', 5_000)
    const before = planIn(doc)
    expect(before.heads['head-1000']?.lowestEnergyJoules).toBe(1_000 / 32)
    applyEditToDocument(doc, editOf(setPower(before, 'first-light', 'a', 250)), ines)
    expect(planIn(doc).heads).toBe(before.heads)
    expect(planIn(doc).looks['dusk']).toBe(before.looks['dusk'])
  })

  it('share with a plan that came from elsewhere', () => {
    const ordered = inPlanOrder(demoPlan)
    expect(readPlanFromDocument(demoDocument(), ordered).plan).toBe(ordered)
  })

  it('are the present in the middle of a transaction and in any observer', () => {
    const doc = demoDocument()
    const seen: (string | undefined)[] = []
    planRoot(doc).observe(() => seen.push(readPlanFromDocument(doc).plan?.title))
    expect(planIn(doc).title).toBe('Late Harvest')
    doc.transact(() => {
      planRoot(doc).set('title', 'One')
      seen.push(readPlanFromDocument(doc).plan?.title)
      planRoot(doc).set('title', 'Two')
      seen.push(readPlanFromDocument(doc).plan?.title)
    })
    expect(seen).toEqual(['One', 'Two', 'Two'])
  })
})

describe('what is not a plan’s way of writing', () => {
  it.each([
    ['a text type', () => new Y.Text('x')],
    ['a list type', () => Y.Array.from([1])],
    ['bytes', () => new Uint8Array([1])],
    ['a group that is not a map', () => ({ fNumber: 8 })],
    ['a big integer', () => 8n],
  ])('%s is not read', (_what, make) => {
    const map = new Y.Doc().getMap<unknown>('any')
    map.set('kept', 1)
    map.set('odd', make())
    expect(jsonFromShared(map)).toEqual({ kept: 1 })
  })
})

describe('watching', () => {
  it('tells each change once, with its origin, until it is let go', () => {
    const doc = demoDocument()
    const told: [string | undefined, unknown][] = []
    const stop = watchPlan(doc, ({ plan }, origin) => told.push([plan?.title, origin]))
    const edit = { name: 'renameJob', changes: [{ path: ['title'], set: 'One' }, { path: ['brief'], set: 'Two' }] }
    applyEditToDocument(doc, edit, ines)
    applyEditToDocument(doc, edit, ines)
    doc.getMap('something-else').set('a', 1)
    stop()
    applyEditToDocument(doc, { name: 'renameJob', changes: [{ path: ['title'], set: 'Three' }] }, ines)
    expect(told).toEqual([['One', ines]])
  })
})

describe('edits in a document', () => {
  it('do what the preview of the same edit showed', () => {
    const doc = demoDocument()
    const before = planIn(doc)
    const edit = editOf(moveLight(before, 'dusk', 'b', { xMetres: 1.2, zMetres: 1.5 }))
    applyEditToDocument(doc, edit, ines)
    expect(planIn(doc)).toEqual(applyEdit(before, edit))
  })

  it('to different leaves of one light both survive', () => {
    const a = demoDocument()
    const b = copyOf(a)
    applyEditToDocument(a, editOf(moveLight(planIn(a), 'dusk', 'c', { xMetres: 1.9 })), ines)
    applyEditToDocument(b, editOf(moveLight(planIn(b), 'dusk', 'c', { zMetres: 1.8 })), tobin)
    merge(a, b)
    expect(planIn(a).looks['dusk']?.lights['c']?.place).toEqual({ xMetres: 1.9, yMetres: -0.25, zMetres: 1.8 })
    expect(planIn(b)).toEqual(planIn(a))
  })

  it('never bring back half of what another has removed', () => {
    const a = demoDocument()
    const b = copyOf(a)
    const late = editOf(setPower(planIn(a), 'dusk', 'c', 500))
    applyEditToDocument(b, editOf(removeLight(planIn(b), 'dusk', 'c')), tobin)
    applyEditToDocument(a, late, ines)
    merge(a, b)
    expect(Object.keys(planIn(a).looks['dusk']?.lights ?? {})).toEqual(['a', 'b', 'd'])
    // The same edit, made from a screen that had not drawn the removal yet.
    expect(applyEditToDocument(a, late, ines)).toMatchObject({ done: [], missed: late.changes.map(({ path }) => path) })
    expect(readPlanFromDocument(a)).toMatchObject({ repairs: [] })
    expect(Object.keys(planIn(a).looks['dusk']?.lights ?? {})).toEqual(['a', 'b', 'd'])
  })

  it('find nothing to do in a document without a plan', () => {
    const doc = new Y.Doc()
    const { missed } = applyEditToDocument(doc, { name: 'renameJob', changes: [{ path: ['title'], set: 'One' }] }, ines)
    expect(missed).toEqual([['title']])
    expect(readPlanFromDocument(doc).plan).toBeNull()
  })
})
