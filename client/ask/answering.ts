import { askInSteps } from '../../shared-core/ask/ask.ts'
import { explain } from '../../shared-core/ask/explain.ts'
import { fewerHeadsInSteps, type LookLeft } from '../../shared-core/ask/fewerHeads.ts'
import { matchingColour } from '../../shared-core/ask/matchColour.ts'
import { curesOf, loudSpills, type SpillCures } from '../../shared-core/ask/spillCures.ts'
import { whatMatters, type ThingDrifts } from '../../shared-core/ask/whatMatters.ts'
import { whiteBehindInSteps } from '../../shared-core/ask/whiteBehind.ts'
import { driftsOfLook } from '../../shared-core/ask/driftMeasures.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import type { Predictor } from '../../shared-core/predict/predict.ts'
import { standInLines } from '../agree/standIns/standInLines.ts'
import { shareStructure } from '../../shared-core/plan/reading/shareStructure.ts'
import type { AnswerFound, AnswerTo, AskOrder, Explained, LookFound, LooksFound, QuestionKind } from './askOrders.ts'

/** After a step: the share done, 0-1, and what is found so far where it can be told in parts. */
export interface Step {
  readonly share: number
  readonly soFar: AnswerTo[QuestionKind] | null
}

/** Steps to an answer; each takes whether to stop there, with the answer as far as it has come. */
export type Answering = Generator<Step, AnswerTo[QuestionKind], boolean>

/** The steps that answer an order. The plan may share branches with earlier ones, as the predictor likes it. */
export function answering(order: AskOrder, plan: Plan, predictor: Predictor): Answering {
  const { lookId } = order
  switch (order.kind) {
    case 'ask': return asked(askInSteps(plan, lookId, order.wants, { predictor, isPowersOnly: order.isPowersOnly }))
    case 'fewer-heads': return looksLeft(fewerHeadsInSteps(plan, lookId, order.lack, predictor))
    case 'white-behind': return whiteBehindInSteps(plan, lookId, predictor)
    case 'spill-cures': return cures(plan, lookId, predictor)
    case 'match-colour': return shares(matchingColour(plan, lookId, order.areaId, order.target, predictor, order.lightId))
    case 'what-matters': return drifts(plan, lookId, predictor)
    case 'stand-ins': return shares(standInLines(plan, lookId, predictor))
    case 'explain': return explained(shareStructure(plan, order.before), plan, lookId, predictor)
  }
}

function* asked(steps: ReturnType<typeof askInSteps>): Generator<Step, AnswerFound, boolean> {
  let isStopped = false
  for (;;) {
    const step = steps.next(isStopped)
    if (!step.done) isStopped = yield { share: step.value, soFar: null }
    else return { ...step.value, ways: step.value.ways.map(({ prediction: _, ...way }) => way) }
  }
}

function* looksLeft(steps: ReturnType<typeof fewerHeadsInSteps>): Generator<Step, LooksFound, boolean> {
  const found = ({ prediction: _, ...look }: LookLeft): LookFound => look
  let isStopped = false
  for (;;) {
    const step = steps.next(isStopped)
    if (!step.done) isStopped = yield { share: step.value, soFar: null }
    else return { best: step.value.best && found(step.value.best), others: step.value.others.map(found) }
  }
}

function* cures(plan: Plan, lookId: string, predictor: Predictor): Generator<Step, readonly SpillCures[], boolean> {
  const spills = loudSpills(predictor(plan, lookId))
  const found: SpillCures[] = []
  for (const spill of spills) {
    if (yield { share: found.length / spills.length, soFar: [...found] }) break
    found.push(curesOf(plan, lookId, spill, predictor))
  }
  return found
}

function* drifts(plan: Plan, lookId: string, predictor: Predictor): Generator<Step, readonly ThingDrifts[], boolean> {
  const count = driftsOfLook(plan, lookId).length
  const found: ThingDrifts[] = []
  for (const thing of whatMatters(plan, lookId, predictor)) {
    found.push(thing)
    if (yield { share: found.length / Math.max(1, count), soFar: [...found] }) break
  }
  return found
}

/** A look that came or went with the edit is no edit of it. */
function* explained(before: Plan, after: Plan, lookId: string, predictor: Predictor): Generator<Step, Explained, boolean> {
  if (!before.looks[lookId] || !after.looks[lookId]) return { line: null }
  const was = predictor(before, lookId)
  yield { share: 0.5, soFar: null }
  return { line: explain(before, after, lookId, was, predictor(after, lookId)) }
}

/** A search that has nothing to tell before its end: stopped, it goes on to it. */
function* shares<Found extends AnswerTo[QuestionKind]>(steps: Generator<number, Found>): Generator<Step, Found, boolean> {
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
    yield { share: step.value, soFar: null }
  }
}
