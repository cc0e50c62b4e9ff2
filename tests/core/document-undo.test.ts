import { describe, expect, it } from 'vitest'
import * as Y from 'yjs'
import { applyEditToDocument } from '../../shared-core/document/applyEdit.ts'
import { readPlanFromDocument } from '../../shared-core/document/readPlan.ts'
import { createUndo } from '../../shared-core/document/undo.ts'
import { writePlanToDocument } from '../../shared-core/document/writePlan.ts'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import type { PlanEdit } from '../../shared-core/plan/edit.ts'
import { duplicateLight, removeLight, setPower, switchLight } from '../../shared-core/plan/edits/lights.ts'
import { moveLight } from '../../shared-core/plan/edits/placing.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { randomEdit, randomFrom } from './randomEdits.ts'

const ines = { by: 'person', seatId: 'ines' } as const
const tobin = { by: 'person', seatId: 'tobin' } as const
type Person = typeof ines | typeof tobin
type Made = { readonly ok: true; readonly edit: PlanEdit } | { readonly ok: false; readonly message: string }

function board() {
  const doc = new Y.Doc()
  writePlanToDocument(doc, demoPlan)
  const undo = createUndo(doc, ines)
  const plan = () => readPlanFromDocument(doc).plan!
  const edit = (make: (plan: Plan) => Made, person: Person = ines) => {
    const made = make(plan())
    if (!made.ok) throw new Error(made.message)
    return applyEditToDocument(doc, made.edit, person)
  }
  return { doc, undo, plan, edit, start: plan() }
}

const power = (plan: Plan, lightId = 'a') => Math.round(plan.looks['dusk']?.lights[lightId]?.energyJoules ?? -1)

describe('undo and redo', () => {
  it('take back and bring back each edit as one step', () => {
    const { undo, plan, edit, start } = board()
    expect(undo.canUndo).toBe(false)
    edit((now) => moveLight(now, 'dusk', 'a', { xMetres: -1, yMetres: -1 }))
    edit((now) => setPower(now, 'dusk', 'a', 250))
    const end = plan()
    expect(undo.undo()).toEqual({ ok: true, words: 'Undone: set power.' })
    expect(power(plan())).toBe(power(start))
    expect(undo.undo().ok).toBe(true)
    expect(plan()).toEqual(start)
    expect(undo.canUndo).toBe(false)
    expect(undo.redo().ok && undo.redo().ok).toBe(true)
    expect(plan()).toEqual(end)
    expect(undo.canRedo).toBe(false)
  })

  it('say so when there is nothing of one’s own', () => {
    const { undo, edit } = board()
    edit((now) => setPower(now, 'dusk', 'a', 250), tobin)
    expect(undo.canUndo).toBe(false)
    expect(undo.undo()).toEqual({ ok: false, message: 'There is nothing of yours to undo.' })
  })

  it('bring back a removed light whole', () => {
    const { undo, plan, edit, start } = board()
    edit((now) => removeLight(now, 'dusk', 'c'))
    expect(plan().looks['dusk']?.lights['c']).toBeUndefined()
    undo.undo()
    expect(plan()).toEqual(start)
  })

  it('leave alone a number that another has changed since', () => {
    const { undo, plan, edit } = board()
    edit((now) => setPower(now, 'dusk', 'a', 250))
    edit((now) => setPower(now, 'dusk', 'a', 500), tobin)
    const refused = undo.undo()
    expect(refused.ok ? '' : refused.message).toContain('Somebody else')
    expect(power(plan())).toBe(500)
    expect(undo.canUndo).toBe(false)
    expect(undo.canRedo).toBe(false)
  })

  it('take back one’s own part of an edit and leave the part another has changed', () => {
    const { undo, plan, edit, start } = board()
    edit((now) => moveLight(now, 'dusk', 'a', { xMetres: -1, yMetres: -1 }))
    edit((now) => moveLight(now, 'dusk', 'a', { yMetres: -1.5 }), tobin)
    const done = undo.undo()
    expect(done.ok && done.words).toContain('stays theirs')
    expect(plan().looks['dusk']?.lights['a']?.place).toEqual({ ...start.looks['dusk']?.lights['a']?.place, yMetres: -1.5 })
  })

  it('never remove a light that another has worked on since', () => {
    const { undo, plan, edit } = board()
    edit((now) => duplicateLight(now, 'dusk', 'a'))
    const added = Object.keys(plan().looks['dusk']!.lights).find((id) => !['a', 'b', 'c', 'd'].includes(id))!
    edit((now) => setPower(now, 'dusk', added, 500), tobin)
    expect(undo.undo().ok).toBe(false)
    expect(power(plan(), added)).toBe(500)
  })

  it('never bring back half a light that another has removed', () => {
    const { undo, plan, edit } = board()
    edit((now) => setPower(now, 'dusk', 'c', 500))
    edit((now) => removeLight(now, 'dusk', 'c'), tobin)
    expect(undo.undo().ok).toBe(false)
    expect(plan().looks['dusk']?.lights['c']).toBeUndefined()
  })

  it('forget what could be redone once something new is done', () => {
    const { undo, edit } = board()
    edit((now) => setPower(now, 'dusk', 'a', 250))
    undo.undo()
    edit((now) => switchLight(now, 'dusk', 'b', false))
    expect(undo.canRedo).toBe(false)
  })

  it('tell when they become possible, until closed', () => {
    const { undo, edit } = board()
    let told = 0
    undo.onChange(() => { told += 1 })
    edit((now) => setPower(now, 'dusk', 'a', 250))
    undo.undo()
    expect(told).toBe(2)
    undo.close()
    edit((now) => setPower(now, 'dusk', 'a', 300))
    expect(told).toBe(2)
  })

  it('lead all the way back through any row of one’s own edits, and forth again', () => {
    for (let start = 1; start <= 20; start += 1) {
      const { doc, undo, plan, start: before } = board()
      const random = randomFrom(start)
      for (let step = 0; step < 40; step += 1) {
        const edit = randomEdit(plan(), random)
        if (edit) applyEditToDocument(doc, edit, ines)
      }
      const end = plan()
      while (undo.canUndo) expect(undo.undo().ok).toBe(true)
      expect(plan()).toEqual(before)
      while (undo.canRedo) expect(undo.redo().ok).toBe(true)
      expect(plan()).toEqual(end)
    }
  })
})
