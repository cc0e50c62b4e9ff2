import { cosine, radiansFromDegrees, sine } from '../../arithmetic/portable.ts'
import type { Piece } from '../../plan/schema/look.ts'
import type { Place } from '../../plan/schema/quantities.ts'
import type { Plan } from '../../plan/schema/plan.ts'
import type { LightPair } from './lightMoves.ts'
import { coolingMinutes } from './moveMinutes.ts'
import type { Dependency, Move } from './move.ts'
import type { HandOver } from './pairs.ts'
import type { PiecePair } from './pieceMoves.ts'

/** Nearer than this on the floor two stands are in each other's way. Common practice, no source. */
const IN_THE_WAY_METRES = 0.4

interface Ordered {
  readonly plan: Plan
  readonly moves: readonly Move[]
  readonly lights: readonly LightPair[]
  readonly pieces: readonly PiecePair[]
  readonly handOvers: readonly HandOver[]
}

/** What has to wait for what. What may wait (room on the floor, a flag for its light) is left out where it would run in a circle. */
export function dependenciesOf(ordered: Ordered): readonly Dependency[] {
  const kept = mustWait(ordered)
  for (const one of mayWait(ordered)) if (!leads(kept, one.after, one.before)) kept.push(one)
  return kept
}

function mustWait({ plan, moves, lights, handOvers }: Ordered): Dependency[] {
  const dependencies: Dependency[] = []
  const ids = new Set(moves.map(({ id }) => id))
  const wait = (before: string, after: string, why: string, lagMinutes = 0): void => {
    if (ids.has(before) && ids.has(after) && before !== after) dependencies.push({ before, after, lagMinutes, why })
  }
  for (const { thing, from } of lights) {
    const chain = ['power-down', 'undress', 'refit', 'build', 'place', 'power'].map((kind) => `${thing}.${kind}`).filter((id) => ids.has(id))
    for (const [i, after] of chain.entries()) {
      if (i === 0) continue
      const before = chain[i - 1]!
      const cools = before.endsWith('.power-down') && /\.(undress|refit)$/.test(after)
      wait(before, after, cools ? 'power down, discharge and let it cool first' : 'one thing after the other on one light',
        cools ? coolingMinutes(from === null ? undefined : plan.heads[from.headId]?.modellingLamp) : 0)
    }
  }
  for (const { giver, taker, what } of handOvers) {
    const before = ids.has(`${giver}.undress`) ? `${giver}.undress` : `${giver}.strike`
    const after = ids.has(`${taker}.refit`) ? `${taker}.refit` : `${taker}.build`
    wait(before, after, `the ${what} comes off it`)
  }
  for (const { id, kind } of moves) {
    if (kind === 'place' || kind === 'build' || kind === 'piece-up' || kind === 'piece-moved') {
      wait('marks', id, 'taped from the T')
      wait('backdrop', id, 'the backdrop first')
    }
  }
  return dependencies
}

function mayWait({ moves, lights, pieces }: Ordered): readonly Dependency[] {
  const dependencies: Dependency[] = []
  const find = (thing: string, kinds: readonly string[]): string | undefined => moves.find((move) => move.thing === thing && kinds.includes(move.kind))?.id
  const leaving = [
    ...lights.flatMap(({ thing, from }) => (from === null ? [] : [{ id: find(thing, ['place', 'strike']), line: pointOf(from.place), name: from.letter }])),
    ...pieces.flatMap(({ thing, from }) => (from === null ? [] : [{ id: find(thing, ['piece-moved', 'piece-away']), line: lineOf(from), name: from.label }])),
  ]
  const coming = [
    ...lights.flatMap(({ thing, to }) => (to === null ? [] : [{ id: find(thing, ['place', 'build']), line: pointOf(to.place) }])),
    ...pieces.flatMap(({ thing, to }) => (to === null ? [] : [{ id: find(thing, ['piece-moved', 'piece-up']), line: lineOf(to) }])),
  ]
  // Boards, flags and frames are put up where the light then is: flag after its light.
  for (const { thing, to } of pieces) {
    if (to === null || to.kind !== 'flag') continue
    const flag = find(thing, ['piece-moved', 'piece-up'])
    const nearest = lights.filter((light) => light.to !== null).sort((a, b) => floorMetres(a.to!.place, to.place) - floorMetres(b.to!.place, to.place))[0]
    const light = nearest === undefined ? undefined : find(nearest.thing, ['place', 'build'])
    if (flag !== undefined && light !== undefined) dependencies.push({ before: light, after: flag, lagMinutes: 0, why: `a flag after its light ${nearest!.to!.letter}` })
  }
  for (const left of leaving) {
    for (const came of coming) {
      if (left.id === undefined || came.id === undefined || left.id === came.id || apart(left.line, came.line) >= IN_THE_WAY_METRES) continue
      dependencies.push({ before: left.id, after: came.id, lagMinutes: 0, why: `${left.name} stands there before` })
    }
  }
  return dependencies
}

function leads(dependencies: readonly Dependency[], from: string, to: string): boolean {
  const seen = new Set<string>()
  const open = [from]
  for (let id = open.pop(); id !== undefined; id = open.pop()) {
    if (id === to) return true
    if (seen.has(id)) continue
    seen.add(id)
    for (const one of dependencies) if (one.before === id) open.push(one.after)
  }
  return false
}

type Line = readonly [readonly [number, number], readonly [number, number]]

function pointOf({ xMetres, yMetres }: Place): Line {
  return [[xMetres, yMetres], [xMetres, yMetres]]
}

/** A piece from above: across the way it faces. */
function lineOf({ place: { xMetres, yMetres }, widthMetres, facingDegrees }: Piece): Line {
  const angle = radiansFromDegrees(facingDegrees)
  const [dx, dy] = [(cosine(angle) * widthMetres) / 2, (sine(angle) * widthMetres) / 2]
  return [[xMetres - dx, yMetres - dy], [xMetres + dx, yMetres + dy]]
}

/** Between two lines by points along them, close enough for what is in the way of what. */
function apart(one: Line, other: Line): number {
  let least = Infinity
  for (let i = 0; i <= 8; i++) {
    for (let j = 0; j <= 8; j++) {
      const [x1, y1] = along(one, i / 8)
      const [x2, y2] = along(other, j / 8)
      least = Math.min(least, Math.sqrt((x1 - x2) * (x1 - x2) + (y1 - y2) * (y1 - y2)))
    }
  }
  return least
}

function along([[x1, y1], [x2, y2]]: Line, share: number): readonly [number, number] {
  return [x1 + (x2 - x1) * share, y1 + (y2 - y1) * share]
}

function floorMetres(one: Place, other: Place): number {
  const [x, y] = [one.xMetres - other.xMetres, one.yMetres - other.yMetres]
  return Math.sqrt(x * x + y * y)
}
