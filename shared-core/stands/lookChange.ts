import type { Units } from '../plan/entry/length.ts'
import type { Plan } from '../plan/schema/plan.ts'
import { marksOf } from './marks.ts'
import { floorMoves } from './moves/floorMoves.ts'
import { lightMoves, type LightPair } from './moves/lightMoves.ts'
import type { Dependency, Move } from './moves/move.ts'
import { dependenciesOf } from './moves/moveOrder.ts'
import { handedOver, pairLights, pairPieces } from './moves/pairs.ts'
import { pieceMove } from './moves/pieceMoves.ts'
import { riggedSet } from './moves/rigged.ts'
import { scheduleForTwo, type Schedule } from './moves/schedule.ts'
import { waysToKeepLit, type TalentLight } from './moves/talentLight.ts'

/** Who does it: the first or second person, or both together. */
export type Hands = 'first' | 'second' | 'both'

export interface ScheduledMove extends Move {
  readonly hands: Hands
  readonly startMinutes: number
  readonly endMinutes: number
}

export interface LookChange {
  readonly fromId: string
  readonly toId: string
  /** In the order in which they begin. */
  readonly moves: readonly ScheduledMove[]
  readonly dependencies: readonly Dependency[]
  readonly talentLight: TalentLight
  /** Until the last move is done by two; and with all moves one after the other. */
  readonly minutes: number
  readonly serialMinutes: number
  /** No order for two is shorter: proven. Past some twenty moves the search gives up and this may be false. */
  readonly isShortest: boolean
  /** Which light of the one look became which of the other. */
  readonly lights: readonly LightPair[]
}

/**
 * The moves from one look to another of the same plan, for two people. First the least work: which stand becomes which,
 * by an exact assignment in person-minutes, then in metres carried. Then the order with the shortest time: who does what
 * when, past cooling, hand-overs and what stands in the way, with a lamp on the talent at every moment. What the looks have
 * in common is not touched. The demo's change from dusk to first light was guessed at about 10 moves and 18 minutes when
 * it was invented; `tests/core/look-change.test.ts` says what it comes to and why.
 *
 * @throws RangeError when the plan has not both looks
 */
export function lookChange(plan: Plan, fromId: string, toId: string, units: Units): LookChange {
  const [from, to] = [plan.looks[fromId], plan.looks[toId]]
  if (from === undefined || to === undefined) throw new RangeError(`The plan has not both looks ${fromId} and ${toId}`)
  const [was, shall] = [riggedSet(from), riggedSet(to)]
  const context = { plan, units, marks: marksOf(plan, to) }
  const lights = pairLights(was, shall, context)
  const pieces = pairPieces(was, shall, context)
  const { handOvers } = handedOver(lights, plan)
  const moves = [
    ...floorMoves(was, shall, context),
    ...lights.flatMap((pair) => lightMoves(pair, context)),
    ...pieces.flatMap((pair) => { const move = pieceMove(pair, context); return move === null ? [] : [move] }),
  ]
  const dependencies = dependenciesOf({ plan, moves, lights, pieces, handOvers })
  const best = shortest(moves, dependencies, moves.length === 0 ? [{ by: 'kept', letters: [] }] : waysToKeepLit(plan, from, to, lights, moves))
  return { fromId, toId, lights, ...best }
}

type Planned = Pick<LookChange, 'moves' | 'dependencies' | 'talentLight' | 'minutes' | 'serialMinutes' | 'isShortest'>

/** Of the ways to keep the talent lit the one that takes least time; of equal ones the set's own lamps. */
function shortest(moves: readonly Move[], dependencies: readonly Dependency[], ways: readonly TalentLight[]): Planned {
  let best: { readonly schedule: Schedule; readonly planned: Omit<Planned, 'isShortest'> } | null = null
  let isShortest = true
  for (const way of ways) {
    const all = way.by === 'working-light' ? [...moves, ...way.moves] : moves
    const order = [...dependencies, ...(way.by === 'turns' ? [way.dependency] : way.by === 'working-light' ? way.dependencies : [])]
    const number = new Map(all.map(({ id }, i) => [id, i]))
    const schedule = scheduleForTwo(all, order.map(({ before, after, lagMinutes }) => ({ before: number.get(before)!, after: number.get(after)!, lagMinutes })))
    if (schedule === null) continue
    isShortest &&= schedule.isShortest
    if (best !== null && schedule.minutes >= best.schedule.minutes - 1e-9) continue
    const scheduled = withHands(all, schedule.starts)
    best = { schedule, planned: { moves: scheduled, dependencies: order, talentLight: way, minutes: schedule.minutes, serialMinutes: serially(scheduled, order) } }
  }
  // The working light waits for nothing, so one way always stands.
  return { ...best!.planned, isShortest }
}

/** Who does each: whoever is free and was last at that stand, else whoever has done less. */
function withHands(moves: readonly Move[], starts: readonly number[]): readonly ScheduledMove[] {
  const free = { first: 0, second: 0 }
  const busy = { first: 0, second: 0 }
  const lastAt: { first: string; second: string } = { first: '', second: '' }
  const order = moves.map((_, i) => i).sort((a, b) => starts[a]! - starts[b]! || moves[b]!.people - moves[a]!.people || a - b)
  return order.map((i): ScheduledMove => {
    const [move, startMinutes] = [moves[i]!, starts[i]!]
    const endMinutes = startMinutes + move.minutes
    const able = (['first', 'second'] as const).filter((one) => free[one] <= startMinutes + 1e-9)
    able.sort((a, b) => Number(lastAt[b] === move.thing) - Number(lastAt[a] === move.thing) || busy[a] - busy[b])
    const doing = move.people === 2 ? (['first', 'second'] as const) : [able[0]!]
    for (const one of doing) {
      free[one] = endMinutes
      busy[one] += move.minutes
      lastAt[one] = move.thing
    }
    return { ...move, hands: move.people === 2 ? 'both' : doing[0]!, startMinutes, endMinutes }
  })
}

/** All moves one after the other in this order, each waiting for what cools. */
function serially(moves: readonly ScheduledMove[], dependencies: readonly Dependency[]): number {
  const ends = new Map<string, number>()
  let now = 0
  for (const { id, minutes } of moves) {
    for (const { before, after, lagMinutes } of dependencies) if (after === id) now = Math.max(now, (ends.get(before) ?? 0) + lagMinutes)
    now += minutes
    ends.set(id, now)
  }
  return now
}
