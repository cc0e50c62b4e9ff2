import { describe, expect, it } from 'vitest'
import { applyEdit } from '../../shared-core/plan/edit.ts'
import type { EditResult } from '../../shared-core/plan/edits/changing.ts'
import { addCircuit, addColumn, changeCircuit, changeColumn, removeCircuit, removeColumn } from '../../shared-core/plan/edits/room.ts'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { planSchema, type Plan } from '../../shared-core/plan/schema/plan.ts'

function after(plan: Plan, result: EditResult): Plan {
  if (!result.ok) throw new Error(result.message)
  return planSchema.parse(applyEdit(plan, result.edit))
}

const column = { label: 'Iron column', xMetres: 1.4, yMetres: 0.5, widthMetres: 0.3, depthMetres: 0.3 }

describe('columns and circuits of the room', () => {
  it('a column is added, moved and taken away again, and nothing else is touched', () => {
    const added = addColumn(demoPlan, column)
    if (!added.ok) throw new Error(added.message)
    const withColumn = after(demoPlan, added)
    expect(withColumn.room.columns[added.columnId]).toEqual(column)
    const moved = after(withColumn, changeColumn(withColumn, added.columnId, { xMetres: -2 }))
    expect(moved.room.columns[added.columnId]).toEqual({ ...column, xMetres: -2 })
    expect(after(moved, removeColumn(moved, added.columnId))).toEqual(demoPlan)
  })

  it('a circuit likewise; two people may change its name and its breaker at once', () => {
    const added = addCircuit(demoPlan, { label: 'Wall', breakerAmps: 16 })
    if (!added.ok) throw new Error(added.message)
    const withCircuit = after(demoPlan, added)
    const renamed = changeCircuit(withCircuit, added.circuitId, { label: 'Rear wall' })
    const rated = changeCircuit(withCircuit, added.circuitId, { breakerAmps: 20 })
    const both = after(after(withCircuit, renamed), rated)
    expect(both.room.circuits[added.circuitId]).toEqual({ label: 'Rear wall', breakerAmps: 20 })
    expect(after(both, removeCircuit(both, added.circuitId))).toEqual(demoPlan)
  })

  it('refuses, in words, what is not there', () => {
    expect(removeColumn(demoPlan, 'gone').ok).toBe(false)
    expect(changeCircuit(demoPlan, 'gone', { breakerAmps: 10 }).ok).toBe(false)
  })
})
