import { describe, expect, it } from 'vitest'
import * as Y from 'yjs'
import { applyEditToDocument } from '../../shared-core/document/applyEdit.ts'
import { readPlanFromDocument } from '../../shared-core/document/readPlan.ts'
import { createUndo } from '../../shared-core/document/undo.ts'
import { writePlanToDocument } from '../../shared-core/document/writePlan.ts'
import { applyEdit, type PlanEdit } from '../../shared-core/plan/edit.ts'
import type { EditResult } from '../../shared-core/plan/edits/changing.ts'
import { mirrorLook } from '../../shared-core/plan/edits/mirror.ts'
import { acceptSnag, reopenSnag } from '../../shared-core/plan/edits/snags.ts'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { readJobFile, writeJobFile } from '../../shared-core/plan/read.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { isStillAccepted } from '../../shared-core/predict/acceptance.ts'
import { createPredictor } from '../../shared-core/predict/predict.ts'

const DUSK = 'dusk'
const KEY = 'spill:a:cheek-right'
const predict = createPredictor()
const snag = predict(demoPlan, DUSK).snags.find(({ key }) => key === KEY)!

function editOf(result: EditResult): PlanEdit {
  if (!result.ok) throw new Error(result.message)
  return result.edit
}

const accepted = applyEdit(demoPlan, editOf(acceptSnag(demoPlan, DUSK, snag, 'Pell Oduya', 1_764_000_000_000)))

describe('an accepted snag', () => {
  it('stops speaking and stays on record with name, time and value', () => {
    const after = predict(accepted, DUSK)
    expect(after.snags.map(({ key }) => key)).not.toContain(KEY)
    expect(after.accepted).toHaveLength(1)
    expect(after.accepted[0]).toMatchObject({ key: KEY, acceptance: { by: 'Pell Oduya', atMs: 1_764_000_000_000, value: snag.value } })
    // Nothing else changed: the other snags are as they were.
    expect(after.snags).toEqual(predict(demoPlan, DUSK).snags.filter(({ key }) => key !== KEY))
  })

  it('speaks again when it is worse by a visible step, and not before', () => {
    // 0.3 stop, the least that shows (common practice, no source). Fewer stops under is worse.
    const { acceptance } = predict(accepted, DUSK).accepted[0]!
    const at = (value: number) => isStillAccepted({ ...snag, value }, acceptance)
    expect([at(snag.value + 1), at(snag.value - 0.29), at(snag.value - 0.31)]).toEqual([true, true, false])
    expect(isStillAccepted({ ...snag, severity: 'stop' }, acceptance)).toBe(false)
    const c = demoPlan.looks[DUSK]!.lights['c']!.energyJoules
    const dimmer = (stops: number) => applyEdit(accepted, {
      name: 'test', changes: [{ path: ['looks', DUSK, 'lights', 'c', 'energyJoules'], set: c * Math.pow(2, -stops) }],
    })
    const speaks = (plan: Plan) => predict(plan, DUSK).snags.some(({ key }) => key === KEY)
    expect([speaks(dimmer(0.2)), speaks(dimmer(0.4))]).toEqual([false, true])
  })

  it('is taken back by reopening, and goes to the other side with the set', () => {
    const reopened = applyEdit(accepted, editOf(reopenSnag(accepted, DUSK, KEY)))
    expect(reopened).toEqual(demoPlan)
    const mirrored = applyEdit(accepted, editOf(mirrorLook(accepted, DUSK)))
    expect(Object.keys(mirrored.looks[DUSK]!.accepted)).toEqual(['spill:a:cheek-left'])
    expect(applyEdit(mirrored, editOf(mirrorLook(mirrored, DUSK)))).toEqual(accepted)
  })

  it('wants a name and a key that a check could have', () => {
    expect(acceptSnag(demoPlan, DUSK, snag, ' ', 1).ok).toBe(false)
    expect(acceptSnag(demoPlan, DUSK, { ...snag, key: '__proto__' }, 'Ines', 1).ok).toBe(false)
    expect(acceptSnag(demoPlan, 'gone', snag, 'Ines', 1).ok).toBe(false)
  })

  it('travels in a job file', () => {
    const reading = readJobFile(writeJobFile(accepted))
    expect(reading.ok && reading.plan).toEqual(accepted)
  })

  it('merges with what another accepts at the same moment, and each undoes their own', () => {
    const [here, there] = [new Y.Doc(), new Y.Doc()]
    writePlanToDocument(here, demoPlan)
    Y.applyUpdate(there, Y.encodeStateAsUpdate(here))
    const other = predict(demoPlan, DUSK).snags.find(({ key }) => key !== KEY)!
    const ines = createUndo(here, { by: 'person', seatId: 'ines' })
    applyEditToDocument(here, editOf(acceptSnag(demoPlan, DUSK, snag, 'Ines', 1)), { by: 'person', seatId: 'ines' })
    applyEditToDocument(there, editOf(acceptSnag(demoPlan, DUSK, other, 'Tobin', 2)), { by: 'person', seatId: 'tobin' })
    Y.applyUpdate(there, Y.encodeStateAsUpdate(here))
    Y.applyUpdate(here, Y.encodeStateAsUpdate(there))
    const byNames = () => Object.values(readPlanFromDocument(here).plan!.looks[DUSK]!.accepted).map(({ by }) => by).sort()
    expect(byNames()).toEqual(['Ines', 'Tobin'])
    ines.undo()
    expect(byNames()).toEqual(['Tobin'])
  })
})
