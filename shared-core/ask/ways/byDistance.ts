import { add, direction, distance, scale, subtract, type Vector } from '../../arithmetic/vector.ts'
import { vectorOf } from '../../set/emitter.ts'
import type { Limit } from '../answer.ts'
import { changed, lightOf, type Draft } from '../draft.ts'
import type { Excess } from '../limits.ts'
import { placeChange } from '../lightChanges.ts'
import { solvePowers, type PowerSolution } from '../powers.ts'
import { inTheWayOf, lacking, lettersOf, NOT_TRIED, type Trial, type TriedWays } from './trial.ts'

/** A stand is moved by so much at a time; finer is lost in the taping. */
const STEP_METRES = 0.05
const NEAREST_METRES = 0.3
const MOST_STEPS = 100

interface Stand {
  readonly steps: number
  readonly draft: Draft
  /** Solved without ends to the ranges: what power it would take there. */
  readonly solution: PowerSolution
  /** Stops still lacking in the direction of the move; met at 0 and below. */
  readonly lacking: number
  readonly inTheWay: readonly Limit[]
}

/** Moves the lights that run out along their own axes, as far as it takes, with the real areas of their fronts. */
export function byDistance(trial: Trial): TriedWays {
  let draft = trial.base
  const limits: Limit[] = []
  for (const excess of trial.excesses) {
    const stand = standFor(trial, draft, excess)
    limits.push(...stand.limits)
    draft = stand.draft
  }
  if (draft === trial.base) return { ...NOT_TRIED, limits }
  const solution = solvePowers(trial.task, draft)
  return { best: { by: 'distance', title: titleOf(trial, solution), solution }, limits }
}

function titleOf({ excesses, original }: Trial, { prediction }: PowerSolution): string {
  const ids = excesses.map(({ lightId }) => lightId)
  const metres = prediction.lights.find(({ id }) => id === ids[0])?.distanceMetres ?? 0
  const isNearer = excesses[0]!.stops > 0
  if (ids.length > 1) return `Move ${lettersOf(ids, original)} ${isNearer ? 'in' : 'back'}`
  return `${isNearer ? 'Bring' : 'Move'} ${lettersOf(ids, original)} ${isNearer ? 'in' : 'back'} to ${metres.toFixed(2)} m`
}

/** The nearest stand that gives enough; where something is in the way before that, the last free one and what it is. */
function standFor(trial: Trial, draft: Draft, excess: Excess): { draft: Draft; limits: readonly Limit[] } {
  const tried = new Map<number, Stand>()
  const at = (steps: number): Stand => {
    let stand = tried.get(steps)
    if (!stand) tried.set(steps, (stand = standAt(trial, draft, excess, steps)))
    return stand
  }
  const isFar = ({ steps }: Stand): boolean => steps >= MOST_STEPS || reach(draft, excess, steps + 1) < NEAREST_METRES
  let low = 0
  let high = 1
  while (at(high).lacking > 0 && at(high).inTheWay.length === 0 && !isFar(at(high))) {
    low = high
    high = Math.min(high * 2, MOST_STEPS, lastStep(draft, excess))
    if (high === low) break
  }
  if (at(high).lacking > 0 && at(high).inTheWay.length === 0) return { draft: at(high).draft, limits: [] }
  const isEnd = (stand: Stand): boolean => stand.lacking <= 0 || stand.inTheWay.length > 0
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2)
    if (isEnd(at(middle))) high = middle
    else low = middle
  }
  const end = at(high)
  if (end.inTheWay.length === 0) return { draft: end.draft, limits: [] }
  return { draft: low === 0 ? draft : at(low).draft, limits: end.inTheWay.slice(0, 1) }
}

function standAt(trial: Trial, draft: Draft, excess: Excess, steps: number): Stand {
  const moved = changed(draft, [placeChange(draft.lookId, excess.lightId, 'place', placeAt(draft, excess, steps))])
  const solution = solvePowers(trial.task, moved, 'anything')
  const missing = lacking(excess, solution.draft)
  return {
    steps, draft: moved, solution,
    lacking: excess.stops > 0 ? missing : -missing,
    inTheWay: inTheWayOf(excess.lightId, trial, solution.prediction),
  }
}

/** In towards its aim for a light that gives too little, back for one that gives too much. */
function placeAt(draft: Draft, { lightId, stops }: Excess, steps: number): Vector {
  const light = lightOf(draft, lightId)
  const place = vectorOf(light.place)
  const axis = direction(subtract(vectorOf(light.aim), place))
  return add(place, scale(axis, (stops > 0 ? 1 : -1) * steps * STEP_METRES))
}

function reach(draft: Draft, excess: Excess, steps: number): number {
  if (excess.stops < 0) return Infinity
  const light = lightOf(draft, excess.lightId)
  return distance(vectorOf(light.place), vectorOf(light.aim)) - steps * STEP_METRES
}

function lastStep(draft: Draft, excess: Excess): number {
  return excess.stops < 0 ? MOST_STEPS : Math.max(1, Math.floor((reach(draft, excess, 0) - NEAREST_METRES) / STEP_METRES))
}
