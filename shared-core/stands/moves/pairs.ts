import type { Plan } from '../../plan/schema/plan.ts'
import { leastCostPairs } from './assignment.ts'
import { lightMoves, type LightPair } from './lightMoves.ts'
import { lightWork } from './lightWork.ts'
import type { Move } from './move.ts'
import type { MoveContext } from './moveContext.ts'
import { carriedMetres, isSameThing, pieceMove, type PiecePair } from './pieceMoves.ts'
import type { RiggedLight, RiggedSet } from './rigged.ts'

/** Far below a quarter minute: of equal work the shorter way and the same letter count. */
const PER_METRE = 1e-2
const OTHER_ID = 1e-3

/** Which light becomes which, and what is carried in and out, at the least person-minutes in all. */
export function pairLights(from: RiggedSet, to: RiggedSet, context: MoveContext): readonly LightPair[] {
  const [had, wanted] = [Object.entries(from.lights), Object.entries(to.lights)]
  const pair = (one: readonly [string, RiggedLight] | null, other: readonly [string, RiggedLight] | null): LightPair => ({
    thing: one?.[0] ?? newThing(other![0]), fromId: one?.[0] ?? null, toId: other?.[0] ?? null, from: one?.[1] ?? null, to: other?.[1] ?? null,
    givesModifier: false, givesHead: false,
  })
  const becomes = leastCostPairs(
    had.map((one) => work(lightMoves(pair(one, null), context))),
    wanted.map((one) => work(lightMoves(pair(null, one), context))),
    (i, j) => {
      const [one, other] = [had[i]!, wanted[j]!]
      return work(lightMoves(pair(one, other), context)) + lightWork(one[1], other[1]).carriedMetres * PER_METRE + (one[0] === other[0] ? 0 : OTHER_ID)
    },
  )
  const taken = new Set(becomes)
  return handedOver([
    ...had.map((one, i) => pair(one, becomes[i] === null ? null : wanted[becomes[i]!]!)),
    ...wanted.filter((_, j) => !taken.has(j)).map((one) => pair(null, one)),
  ], context.plan).pairs
}

export function pairPieces(from: RiggedSet, to: RiggedSet, context: MoveContext): readonly PiecePair[] {
  const [had, wanted] = [Object.entries(from.pieces), Object.entries(to.pieces)]
  const cost = (pair: PiecePair): number => {
    const move = pieceMove(pair, context)
    return move === null ? 0 : work([move])
  }
  const becomes = leastCostPairs(
    had.map(([thing, one]) => cost({ thing, from: one, to: null })),
    wanted.map(([id, one]) => cost({ thing: newThing(id), from: null, to: one })),
    (i, j) => {
      const [[thing, one], [id, other]] = [had[i]!, wanted[j]!]
      if (!isSameThing(one, other)) return Infinity
      return cost({ thing, from: one, to: other }) + carriedMetres(one, other) * PER_METRE + (thing === id ? 0 : OTHER_ID)
    },
  )
  const taken = new Set(becomes)
  return [
    ...had.map(([thing, one], i): PiecePair => ({ thing, from: one, to: becomes[i] === null ? null : wanted[becomes[i]!]![1] })),
    ...wanted.filter((_, j) => !taken.has(j)).map(([id, one]): PiecePair => ({ thing: newThing(id), from: null, to: one })),
  ]
}

/** One light waits for what another has on. */
export interface HandOver {
  readonly giver: string
  readonly taker: string
  readonly what: string
}

/**
 * Who takes a modifier or head over from whom. What lies in the case goes first, since nobody waits for it; then what
 * other lights give up.
 */
export function handedOver(pairs: readonly LightPair[], plan: Plan): { readonly pairs: readonly LightPair[]; readonly handOvers: readonly HandOver[] } {
  const handOvers: HandOver[] = []
  const giving = { modifierId: new Set<string>(), headId: new Set<string>() }
  for (const part of ['modifierId', 'headId'] as const) {
    const kit = part === 'modifierId' ? plan.modifiers : plan.heads
    for (const id of Object.keys(kit).sort()) {
      const inUse = pairs.filter(({ from }) => from?.[part] === id).length
      let inCase = Math.max(0, kit[id]!.count - inUse)
      const givers = pairs.filter(({ from, to }) => from?.[part] === id && to?.[part] !== id)
      // Whoever is taken off the set gives before whoever is built anew has to be undressed for it.
      givers.sort((a, b) => Number(a.to !== null) - Number(b.to !== null))
      for (const taker of pairs.filter(({ from, to }) => to?.[part] === id && from?.[part] !== id)) {
        if (inCase > 0) inCase--
        else {
          const giver = givers.shift()
          if (giver === undefined) continue
          handOvers.push({ giver: giver.thing, taker: taker.thing, what: kit[id]!.name })
          if (giver.to !== null) giving[part].add(giver.thing)
        }
      }
    }
  }
  return {
    handOvers,
    pairs: pairs.map((pair) => ({ ...pair, givesModifier: giving.modifierId.has(pair.thing), givesHead: giving.headId.has(pair.thing) })),
  }
}

function newThing(id: string): string {
  return `new-${id}`
}

function work(moves: readonly Move[]): number {
  return moves.reduce((total, { minutes, people }) => total + minutes * people, 0)
}
