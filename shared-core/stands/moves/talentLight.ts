import type { Light, Look } from '../../plan/schema/look.ts'
import type { Plan } from '../../plan/schema/plan.ts'
import type { LightPair } from './lightMoves.ts'
import { MINUTES } from './moveMinutes.ts'
import type { Dependency, Move } from './move.ts'

/**
 * What keeps the talent from standing in the dark. A lamp is any modelling lamp of a light that is not the background's.
 * It is dark from the beginning of its power-down (or of being taken away) to the end of its power-up.
 */
export type TalentLight =
  | { readonly by: 'kept'; readonly letters: readonly string[] }
  /** One goes down only once another is up. */
  | { readonly by: 'turns'; readonly up: string; readonly down: string; readonly dependency: Dependency }
  | { readonly by: 'working-light'; readonly moves: readonly Move[]; readonly dependencies: readonly Dependency[] }

/**
 * Every way to keep the talent lit. With no lamp kept throughout, one is up at every moment exactly when some lamp of the
 * next look is up before some lamp of this one goes down: up to then the last to go down is up, from then on the first
 * that rose. So each way is one dependency; or the studio's working light.
 */
export function waysToKeepLit(plan: Plan, from: Look, to: Look, pairs: readonly LightPair[], moves: readonly Move[]): readonly TalentLight[] {
  const isLamp = (light: Light | undefined): boolean => light !== undefined && light.on && light.plane !== 'background'
    && ['led', 'halogen'].includes(plan.heads[light.headId]?.modellingLamp ?? 'none')
  const find = (pair: LightPair, kinds: readonly string[]): Move | undefined => moves.find((move) => move.thing === pair.thing && kinds.includes(move.kind))
  const had = pairs.filter(({ fromId }) => fromId !== null && isLamp(from.lights[fromId])).map((pair) => ({ pair, down: find(pair, ['power-down', 'strike']) }))
  const kept = had.filter(({ down }) => down === undefined)
  if (kept.length > 0) return [{ by: 'kept', letters: kept.map(({ pair }) => pair.from!.letter) }]
  const rising = pairs.filter(({ toId }) => toId !== null && isLamp(to.lights[toId]))
    .flatMap((pair) => { const up = find(pair, ['power']); return up === undefined ? [] : [{ pair, up }] })
  const turns = rising.flatMap(({ pair, up }) => had.filter((one) => one.pair.thing !== pair.thing).map(({ pair: { from: last }, down }): TalentLight => ({
    by: 'turns', up: up.name, down: last!.letter,
    dependency: { before: up.id, after: down!.id, lagMinutes: 0, why: `${last!.letter} lights the talent until ${up.name} is up` },
  })))
  return [...turns, workingLight(moves, had.flatMap(({ down }) => (down === undefined ? [] : [down])), rising.map(({ up }) => up))]
}

function workingLight(moves: readonly Move[], downs: readonly Move[], ups: readonly Move[]): TalentLight {
  const why = 'the talent never stands in the dark'
  const move = (kind: 'working-light-on' | 'working-light-off', words: string): Move => ({
    id: kind, kind, name: 'Working light', thing: 'working-light', words: [words], minutes: MINUTES.workingLight, people: 1, cautions: [], change: {},
  })
  const on = move('working-light-on', 'On: no lamp of the set stays on the talent')
  const off = move('working-light-off', 'Off again')
  return {
    by: 'working-light',
    // Where the next look has no lamp on the talent it stays on until the frame.
    moves: ups.length > 0 ? [on, off] : [on],
    dependencies: [
      ...(downs.length > 0 ? downs : moves).map(({ id }): Dependency => ({ before: on.id, after: id, lagMinutes: 0, why })),
      ...ups.map(({ id }): Dependency => ({ before: id, after: off.id, lagMinutes: 0, why })),
      ...(ups.length > 0 ? [{ before: on.id, after: off.id, lagMinutes: 0, why }] : []),
    ],
  }
}
