import { describe, expect, it } from 'vitest'
import { changeCamera } from '../../shared-core/plan/edits/look.ts'
import { demoLookId, demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import type { PlanEdit } from '../../shared-core/plan/edit.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import type { Prediction } from '../../shared-core/predict/prediction.ts'
import { planInFrame } from '../../client/frame/before/planInFrame.ts'
import { createBoardStore } from '../../client/session/boardStore.ts'
import { noCompany } from '../../client/session/company.ts'
import { HandClock } from './handClock.ts'
import { createLocalPlan } from './localPlan.ts'

function edited(plan: Plan, fNumber: number): PlanEdit {
  const made = changeCamera(plan, demoLookId, { fNumber })
  if (!made.ok) throw new Error(made.message)
  return made.edit
}

/** A board whose aperture is f/8. */
function boardAtEight() {
  const frames: (() => void)[] = []
  const store = createBoardStore({
    plan: createLocalPlan(demoPlan), company: noCompany, role: 'photographer', connection: { state: 'live', words: 'Live', notKept: null },
    predict: (_, lookId) => ({ lookId }) as unknown as Prediction,
    onNextFrame: (callback) => void frames.push(callback), units: 'metric', keepUnits: () => undefined, clock: new HandClock(),
  })
  const board = store.getState
  return { board, write: (fNumber: number) => board().edit(edited(board().plan, fNumber)), drawFrame: () => frames.splice(0).forEach((callback) => callback()) }
}

const inFrame = (board: Parameters<typeof planInFrame>[0]): number => planInFrame(board).looks[demoLookId]!.camera.fNumber

describe('Before', () => {
  it('is nothing until something has changed', () => {
    const { board } = boardAtEight()
    board().seeBefore(true)
    expect(board().seesBefore).toBe(false)
    expect(planInFrame(board())).toBe(board().plan)
  })

  it('shows the Frame before the last change for as long as it is held', () => {
    const { board, write } = boardAtEight()
    write(9)
    write(10)
    expect(inFrame(board())).toBe(10)
    board().seeBefore(true)
    expect(inFrame(board())).toBe(9)
    board().seeBefore(false)
    expect(inFrame(board())).toBe(10)
  })

  it('counts taking back and doing again as changes', () => {
    const { board, write } = boardAtEight()
    write(9)
    board().undo()
    board().seeBefore(true)
    expect(inFrame(board())).toBe(9)
    board().seeBefore(false)
    board().redo()
    board().seeBefore(true)
    expect(inFrame(board())).toBe(8)
  })

  it('stays at the moment that was kept, whatever changes after it, until it is let go', () => {
    const { board, write } = boardAtEight()
    write(9)
    board().keepBefore(true)
    expect(board().beforeKept).toBe(true)
    write(10)
    write(11)
    board().seeBefore(true)
    expect(inFrame(board())).toBe(9)
    board().keepBefore(false)
    expect(inFrame(board())).toBe(10)
    write(12)
    expect(inFrame(board())).toBe(11)
  })

  it('can keep the very first moment', () => {
    const { board, write } = boardAtEight()
    board().keepBefore(true)
    write(9)
    write(10)
    board().seeBefore(true)
    expect(inFrame(board())).toBe(8)
  })

  it('shows what hands hold where it is not asked for, and not where it is', () => {
    const { board, write, drawFrame } = boardAtEight()
    write(9)
    board().hold(edited(board().plan, 10))
    drawFrame()
    expect(inFrame(board())).toBe(10)
    board().seeBefore(true)
    expect(inFrame(board())).toBe(8)
  })

  it('shows the plan as it is in a look that was not there before', () => {
    const { board, write } = boardAtEight()
    write(9)
    board().seeBefore(true)
    const { [demoLookId]: _, ...looks } = board().before!.looks
    expect(inFrame({ ...board(), before: { ...board().before!, looks } })).toBe(9)
  })
})
