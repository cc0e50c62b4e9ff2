import { SEES_PLAINLY } from '../../client/session/board.ts'
import { describe, expect, it, vi } from 'vitest'
import { changeCamera } from '../../shared-core/plan/edits/look.ts'
import { removeLook } from '../../shared-core/plan/edits/looks.ts'
import { demoLookId, demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import type { PlanEdit } from '../../shared-core/plan/edit.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import type { Prediction } from '../../shared-core/predict/prediction.ts'
import type { Person, Role } from '../../client/session/board.ts'
import { createBoardStore } from '../../client/session/boardStore.ts'
import { noCompany, type Company, type OwnPresence } from '../../client/session/company.ts'
import type { PlanSeenChange } from '../../client/session/planSeenChange.ts'
import { HandClock } from './handClock.ts'
import { createLocalPlan } from './localPlan.ts'

const aperture = (plan: Plan, fNumber: number): PlanEdit => {
  const made = changeCamera(plan, demoLookId, { fNumber })
  if (!made.ok) throw new Error(made.message)
  return made.edit
}

const somebody = (part: Partial<Person>): Person => ({
  seatId: 'other', name: 'Ines', role: 'photographer', isSelf: false, hasPen: true, pointer: null, selection: null, inHand: null, lookId: null, sees: SEES_PLAINLY, ...part,
})

/** A board with everything outside it in the test's hands. `predict` only tells what it was asked for. */
function boardOf(role: Role, firstPeople: readonly Person[] = [], predictingMs = 0) {
  const told: OwnPresence[] = []
  const clock = new HandClock()
  const frames: (() => void)[] = []
  const predicted: number[] = []
  let people = firstPeople
  let failing = false
  let peopleChanged = () => undefined as void
  const company: Company = {
    people: () => people,
    tell: (presence) => void told.push(presence),
    handPenTo: () => undefined,
    takePenBack: () => undefined,
    onChange: (listener) => {
      peopleChanged = listener
      return () => undefined
    },
  }
  const store = createBoardStore({
    plan: createLocalPlan(demoPlan), company, role, connection: { state: 'live', words: 'Live', notKept: null },
    predict: (plan, lookId) => {
      if (failing) {
        failing = false
        throw new Error('for the test')
      }
      clock.moveOn(predictingMs)
      predicted.push(plan.looks[lookId]?.camera.fNumber ?? Number.NaN)
      return { lookId } as unknown as Prediction
    },
    onNextFrame: (callback) => void frames.push(callback),
    units: 'metric', keepUnits: () => undefined, clock,
  })
  return {
    store, told, predicted, clock,
    failNext: () => {
      failing = true
      vi.spyOn(console, 'error').mockImplementationOnce(() => undefined)
    },
    board: () => store.getState(),
    drawFrame: () => frames.splice(0).forEach((callback) => callback()),
    setPeople: (next: readonly Person[]) => {
      people = next
      peopleChanged()
    },
  }
}

describe('the board store', () => {
  it('opens on the first look in the job’s own order', () => {
    expect(boardOf('photographer').board().lookId).toBe(demoLookId)
  })

  it('writes an edit, predicts it at once, and takes it back as one step', () => {
    const { board, predicted } = boardOf('photographer')
    board().edit(aperture(demoPlan, 11))
    expect(board().plan.looks[demoLookId]?.camera.fNumber).toBe(11)
    expect(predicted).toEqual([8, 11])
    board().undo()
    expect(board().plan.looks[demoLookId]?.camera.fNumber).toBe(8)
    expect(board().canRedo).toBe(true)
  })

  it('predicts many moves of a hand once a frame, with the latest', () => {
    const { board, drawFrame, predicted } = boardOf('photographer')
    for (const fNumber of [9, 10, 12]) board().hold(aperture(demoPlan, fNumber))
    expect(predicted).toEqual([8])
    drawFrame()
    expect(predicted).toEqual([8, 12])
  })

  it('moves what is in a hand every frame, and slow numbers after it as fast as drawing lets them, the last ones always', () => {
    const { board, drawFrame, predicted, clock } = boardOf('photographer', [], 10)
    const drag = (fNumber: number) => {
      board().hold(aperture(demoPlan, fNumber))
      drawFrame()
      expect(board().shown.looks[demoLookId]?.camera.fNumber).toBe(fNumber)
    }
    for (const fNumber of [9, 10, 11, 12]) drag(fNumber)
    expect(predicted).toEqual([8, 9])
    clock.moveOn(70)
    expect(predicted).toEqual([8, 9, 12])
    clock.moveOn(1_000)
    expect(predicted).toEqual([8, 9, 12])
  })

  it('changes quick numbers no faster than they can be read', () => {
    const { board, drawFrame, predicted, clock } = boardOf('photographer', [], 1)
    for (const fNumber of [9, 10, 11]) {
      board().hold(aperture(demoPlan, fNumber))
      drawFrame()
      clock.moveOn(8)
    }
    expect(predicted).toEqual([8, 9])
    clock.moveOn(33)
    expect(predicted).toEqual([8, 9, 11])
  })

  it('has the numbers of what is written at once, however slow they are', () => {
    const { board, drawFrame, predicted, clock } = boardOf('photographer', [], 10)
    for (const fNumber of [9, 10]) {
      board().hold(aperture(demoPlan, fNumber))
      drawFrame()
    }
    board().edit(aperture(demoPlan, 11))
    expect(predicted).toEqual([8, 9, 11])
    expect(board().shown).toBe(board().plan)
    clock.moveOn(1_000)
    expect(predicted).toEqual([8, 9, 11])
  })

  it('shows a held edit without writing it, and lets go of it', () => {
    const { board, drawFrame, told } = boardOf('photographer')
    board().hold(aperture(demoPlan, 11))
    drawFrame()
    expect(board().shown.looks[demoLookId]?.camera.fNumber).toBe(11)
    expect(board().plan).toBe(demoPlan)
    expect(told.at(-1)?.inHand).not.toBeNull()
    board().hold(null)
    drawFrame()
    expect(board().shown).toBe(demoPlan)
    expect(told.at(-1)?.inHand).toBeNull()
  })

  it('shows what others have in hand, if they may write', () => {
    const { board, drawFrame, setPeople } = boardOf('assistant')
    setPeople([somebody({ inHand: aperture(demoPlan, 16) })])
    drawFrame()
    expect(board().shown.looks[demoLookId]?.camera.fNumber).toBe(16)
    setPeople([somebody({ role: 'client', hasPen: false, inHand: aperture(demoPlan, 22) })])
    drawFrame()
    expect(board().shown.looks[demoLookId]?.camera.fNumber).toBe(8)
  })

  it('does not follow a hand that makes half a light out of one that is gone', () => {
    const { board, drawFrame, setPeople } = boardOf('assistant')
    const inHand: PlanEdit = { name: 'moveLight', changes: [{ path: ['looks', demoLookId, 'lights', 'gone', 'place', 'xMetres'], set: 1 }] }
    setPeople([somebody({ inHand })])
    drawFrame()
    expect(board().shown).toBe(board().plan)
  })

  it('does not follow a hand that takes away the look on the board', () => {
    const { board, drawFrame, setPeople } = boardOf('assistant')
    const made = removeLook(demoPlan, demoLookId)
    if (!made.ok) throw new Error(made.message)
    setPeople([somebody({ inHand: made.edit })])
    drawFrame()
    expect(board().shown.looks[demoLookId]).toBeDefined()
  })

  it('goes to another look when the one on the board is removed', () => {
    const { board } = boardOf('photographer')
    const made = removeLook(demoPlan, demoLookId)
    if (!made.ok) throw new Error(made.message)
    board().edit(made.edit)
    expect(board().lookId).not.toBe(demoLookId)
    expect(board().plan.looks[board().lookId]).toBeDefined()
  })

  it('refuses a client without the pen, in words, and nothing changes', () => {
    const { board, told } = boardOf('client', [somebody({})])
    expect(board().mayNotBecause).toBe('Ines holds the pen')
    board().edit(aperture(demoPlan, 11))
    board().hold(aperture(demoPlan, 11))
    board().undo()
    expect(board().plan).toBe(demoPlan)
    expect(board().lastWords).toContain('Ines holds the pen')
    expect(told.every((presence) => presence.inHand === null)).toBe(true)
  })

  it('lets a client write from the moment the pen comes, and no longer', () => {
    const { board, setPeople } = boardOf('client')
    setPeople([somebody({ role: 'client', isSelf: true, hasPen: true })])
    board().edit(aperture(demoPlan, 11))
    expect(board().plan.looks[demoLookId]?.camera.fNumber).toBe(11)
    setPeople([somebody({ role: 'client', isSelf: true, hasPen: false })])
    board().edit(aperture(board().plan, 16))
    expect(board().plan.looks[demoLookId]?.camera.fNumber).toBe(11)
  })

  it('drops what a client has in hand when the pen is taken back', () => {
    const { board, drawFrame, setPeople, told } = boardOf('client', [somebody({ role: 'client', isSelf: true, hasPen: true })])
    board().hold(aperture(demoPlan, 11))
    setPeople([somebody({ role: 'client', isSelf: true, hasPen: false })])
    drawFrame()
    expect(board().shown).toBe(demoPlan)
    expect(told.at(-1)?.inHand).toBeNull()
  })

  it('does not predict again for pointers and people that come and go', () => {
    const { setPeople, drawFrame, predicted } = boardOf('assistant')
    const inHand = aperture(demoPlan, 16)
    setPeople([somebody({ inHand })])
    drawFrame()
    setPeople([somebody({ inHand, pointer: { xMetres: 1, yMetres: 1 } }), somebody({ seatId: 'third' })])
    drawFrame()
    expect(predicted).toEqual([8, 16])
  })

  it('lets go of a picked light that somebody takes out', () => {
    const { board } = boardOf('photographer')
    const lightId = Object.keys(demoPlan.looks[demoLookId]?.lights ?? {})[0] ?? ''
    board().select({ kind: 'light', id: lightId })
    board().edit({ name: 'removeLight', changes: [{ path: ['looks', demoLookId, 'lights', lightId], remove: true }] })
    expect(board().selection).toBeNull()
  })

  it('tells the others selection, pointer and look', () => {
    const { board, told } = boardOf('assistant')
    board().select({ kind: 'camera' })
    board().point({ xMetres: 1, yMetres: 2 })
    expect(told.at(-1)).toEqual({ selection: { kind: 'camera' }, pointer: { xMetres: 1, yMetres: 2 }, inHand: null, lookId: demoLookId, sees: SEES_PLAINLY })
  })

  it('keeps the last picture and says so when a plan cannot be computed', () => {
    const { store, board, failNext } = boardOf('assistant')
    const before = board().prediction
    failNext()
    board().edit(aperture(demoPlan, 11))
    expect(board().prediction).toBe(before)
    expect(board().lastWords).toMatch(/could not be computed/)
    expect(board().plan.looks[demoLookId]?.camera.fNumber).toBe(11)
    store.close()
  })

  it('says the same words twice as two events', () => {
    const { store, board } = boardOf('assistant')
    store.say('Undone')
    const first = board().lastWords
    store.say('Undone')
    expect(board().lastWords).not.toBe(first)
    expect(board().lastWords.trim()).toBe('Undone')
  })

  it('stays on its look when asked for one that is not there', () => {
    const { board } = boardOf('assistant')
    board().showLook('nowhere')
    expect(board().lookId).toBe(demoLookId)
  })

  it('shows what was kept read-only, while the shared plan goes on, and goes back to that', () => {
    const { store, board, told, setPeople, drawFrame, predicted } = boardOf('photographer')
    board().edit(aperture(demoPlan, 11))
    const changes: PlanSeenChange[] = []
    store.onPlanChange((change) => changes.push(change))
    const meant = { plan: demoPlan, lookId: demoLookId, words: 'lock 1, Violet', kept: { kind: 'lock' as const, id: 'l1' } }
    board().hold(aperture(demoPlan, 16))
    board().reopen(meant)
    expect(board().plan).toEqual(demoPlan)
    expect([board().shown, board().reopened, told.at(-1)?.inHand]).toEqual([board().plan, meant, null])
    expect([board().mayEdit, board().mayNotBecause]).toEqual([false, 'You are looking at lock 1, Violet. Go back to the plan to change it'])

    // Nobody's hand or edit reaches what was kept, and one's own are refused in words.
    setPeople([somebody({ inHand: aperture(demoPlan, 4) })])
    drawFrame()
    board().hold(aperture(demoPlan, 4))
    board().edit(aperture(demoPlan, 4))
    board().undo()
    drawFrame()
    expect(board().lastWords).toMatch(/lock 1/)
    expect([board().shown.looks[demoLookId]?.camera.fNumber, predicted.at(-1)]).toEqual([demoPlan.looks[demoLookId]?.camera.fNumber, demoPlan.looks[demoLookId]?.camera.fNumber])
    expect(changes).toEqual([])

    setPeople([])
    board().reopen(null)
    expect([board().plan.looks[demoLookId]?.camera.fNumber, predicted.at(-1), board().reopened, board().mayEdit]).toEqual([11, 11, null, true])
  })

  it('hears what others change while something kept is looked at', () => {
    const plan = createLocalPlan(demoPlan)
    const store = createBoardStore({
      plan, company: noCompany, role: 'client', connection: { state: 'live', words: 'Live', notKept: null },
      predict: (_plan, lookId) => ({ lookId }) as unknown as Prediction, onNextFrame: () => undefined, units: 'metric', keepUnits: () => undefined,
    })
    const heard: (number | undefined)[] = []
    store.onPlanChange(({ before, after }) => heard.push(before.looks[demoLookId]?.camera.fNumber, after.looks[demoLookId]?.camera.fNumber))
    store.getState().reopen({ plan: demoPlan, lookId: demoLookId, words: 'lock 1', kept: { kind: 'lock', id: 'l1' } })
    plan.write(aperture(demoPlan, 11))
    expect(heard).toEqual([demoPlan.looks[demoLookId]?.camera.fNumber, 11])
    expect(store.getState().plan).toEqual(demoPlan)
    store.getState().reopen(null)
    expect(store.getState().plan.looks[demoLookId]?.camera.fNumber).toBe(11)
  })

  it('reopens a look that the shared plan no longer has, never shows it in a plan without it, and comes back to its own', () => {
    const { store, board } = boardOf('assistant')
    const made = removeLook(demoPlan, demoLookId)
    if (!made.ok) throw new Error(made.message)
    board().edit(made.edit)
    const own = board().lookId
    store.subscribe(({ shown, plan, lookId }) => expect([shown.looks[lookId], plan.looks[lookId]]).not.toContain(undefined))
    board().reopen({ plan: demoPlan, lookId: demoLookId, words: 'lock 1', kept: { kind: 'lock', id: 'l1' } })
    expect([board().lookId, own === demoLookId]).toEqual([demoLookId, false])
    board().reopen({ plan: demoPlan, lookId: 'nowhere', words: 'lock 2', kept: { kind: 'lock', id: 'l2' } })
    expect(board().reopened?.words).toBe('lock 1')
    board().reopen(null)
    expect([board().lookId, board().plan.looks[demoLookId]]).toEqual([own, undefined])
  })
})
