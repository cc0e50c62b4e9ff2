import { describe, expect, it } from 'vitest'
import * as Y from 'yjs'
import { applyEditToDocument } from '../../shared-core/document/applyEdit.ts'
import { readPlanFromDocument } from '../../shared-core/document/readPlan.ts'
import { createUndo } from '../../shared-core/document/undo.ts'
import { writePlanToDocument } from '../../shared-core/document/writePlan.ts'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { applyEdit } from '../../shared-core/plan/edit.ts'
import { readPlan } from '../../shared-core/plan/read.ts'
import { newPlan } from '../../client/session/newPlan.ts'
import { replacePlan } from '../../client/session/replacePlan.ts'

const another = newPlan('Another job')

describe('another job in the place of this one', () => {
  it('a new job is a plan that the reader takes without a problem', () => {
    expect(readPlan(another)).toMatchObject({ ok: true, repairs: [] })
  })

  it('is exactly the other job', () => {
    expect(applyEdit(demoPlan, replacePlan(demoPlan, another))).toEqual(another)
    expect(replacePlan(demoPlan, structuredClone(demoPlan)).changes).toEqual([])
  })

  it('touches only what differs', () => {
    const renamed = { ...demoPlan, title: 'Early Harvest' }
    expect(replacePlan(demoPlan, renamed).changes).toEqual([{ path: ['title'], set: 'Early Harvest' }])
  })

  it('is one step to undo in a shared document', () => {
    const doc = new Y.Doc()
    writePlanToDocument(doc, demoPlan)
    const undo = createUndo(doc, { by: 'person', seatId: 'me' })
    applyEditToDocument(doc, replacePlan(demoPlan, another), { by: 'person', seatId: 'me' })
    expect(readPlanFromDocument(doc)).toEqual({ plan: another, repairs: [] })
    expect(undo.undo().ok).toBe(true)
    expect(readPlanFromDocument(doc)).toEqual({ plan: demoPlan, repairs: [] })
    expect(undo.canUndo).toBe(false)
  })
})
