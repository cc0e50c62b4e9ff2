import { describe, expect, it } from 'vitest'
import { AskBench } from '../../client/ask/askBench.ts'
import type { Explained, FromWorker } from '../../client/ask/askOrders.ts'
import { startExplainer } from '../../client/explain/explainer.ts'
import type { PlanSeenChange } from '../../client/session/planSeenChange.ts'
import { applyEdit } from '../../shared-core/plan/edit.ts'
import { demoLookId as lookId, demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { changeLight, setPower } from '../../shared-core/plan/edits/lights.ts'
import type { EditResult } from '../../shared-core/plan/edits/changing.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'

/** Edits by hand, time by hand, and a worker that answers when it is told to. */
function rig() {
  let change = (_: PlanSeenChange): void => undefined
  let due: (() => void) | null = null
  const waiting: { readonly question: { readonly number: number; readonly before: Plan; readonly plan: Plan; readonly lookId: string }; readonly told: (found: Explained) => void }[] = []
  const explainer = startExplainer({
    onPlanChange: (listener) => {
      change = listener
      return () => void (change = () => undefined)
    },
    lookId: () => lookId,
    explain: (question, told) => void waiting.push({ question, told }),
    after: (_, run) => {
      due = run
      return () => void (due = null)
    },
    nowMs: () => 0,
  })
  let plan = demoPlan
  return {
    waiting,
    explainer,
    told: () => explainer.told.getState().map(({ who, line }) => [who, line]),
    edit(made: (plan: Plan) => EditResult, names: readonly string[] | null = null) {
      const result = made(plan)
      if (!result.ok) throw new Error(result.message)
      const before = plan
      plan = applyEdit(plan, result.edit)
      change({ before, after: plan, isOwn: names === null, names: names ?? [] })
    },
    rest: () => due?.(),
    /** What a worker would say, by the board's own bench. */
    answer() {
      for (const { question, told } of waiting.splice(0)) {
        const heard: FromWorker[] = []
        const bench = new AskBench((message) => heard.push(message))
        bench.hear({ do: 'take', number: 1, order: structuredClone({ slot: 'explain', kind: 'explain' as const, ...question }) })
        while (bench.step());
        const last = heard.at(-1)!
        if (last.is !== 'answer') throw new Error('no answer')
        told(last.answer as Explained)
      }
    },
  }
}

const power = (lightId: string, joules: number) => (plan: Plan) => setPower(plan, lookId, lightId, joules)
const rename = (plan: Plan) => changeLight(plan, lookId, 'a', { note: 'sandbag' })

describe('one line for each edit', () => {
  it('says what was done and what it did, and nothing while the hand goes on', () => {
    const { edit, rest, waiting, answer, told } = rig()
    const joules = demoPlan.looks[lookId]!.lights.a!.energyJoules
    edit(power('a', joules * 1.4))
    edit(power('a', joules * 2))
    expect(waiting).toHaveLength(0)
    rest()
    expect(waiting).toHaveLength(1)
    answer()
    // Twice the joules are one stop.
    expect(told()).toEqual([[null, expect.stringMatching(/^A power \+1\.0: \+\d\.\d on the /)]])
  })

  it('keeps apart what different people did, with their names', () => {
    const { edit, rest, answer, told } = rig()
    edit(power('a', 200))
    edit(power('d', 60), ['Tobin'])
    edit(power('b', 300), [])
    rest()
    answer()
    expect(told()).toEqual([
      ['Somebody', expect.stringMatching(/^B power /)],
      ['Tobin', expect.stringMatching(/^D power /)],
      [null, expect.stringMatching(/^A power /)],
    ])
  })

  it('is quiet about what no light knows of, and about what was taken back meanwhile', () => {
    const { edit, rest, answer, told } = rig()
    edit(rename)
    rest()
    answer()
    expect(told()).toEqual([])
    const joules = demoPlan.looks[lookId]!.lights.a!.energyJoules
    edit(power('a', joules * 2))
    edit(power('a', joules))
    rest()
    answer()
    expect(told()).toEqual([])
  })

  it('lines stand in the order of the edits, however late they are answered; stopped, it hears nothing more', () => {
    const { edit, rest, waiting, told, explainer } = rig()
    edit(power('a', 200))
    rest()
    edit(power('b', 300))
    rest()
    const [first, second] = waiting
    second!.told({ line: 'second' })
    first!.told({ line: 'first' })
    expect(told()).toEqual([[null, 'second'], [null, 'first']])
    explainer.stop()
    edit(power('c', 100))
    rest()
    expect(waiting).toHaveLength(2)
  })
})
