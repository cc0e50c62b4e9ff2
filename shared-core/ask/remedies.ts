import { applyEdit, type PlanChange, type PlanEdit } from '../plan/edit.ts'
import { fitToHead } from '../plan/fitToHead.ts'
import { newId } from '../plan/newId.ts'
import type { Modifier } from '../plan/schema/kit.ts'
import type { Look } from '../plan/schema/look.ts'
import type { Plan } from '../plan/schema/plan.ts'
import { add, scale, subtract } from '../arithmetic/vector.ts'
import type { Predictor } from '../predict/predict.ts'
import { lightsInSetUpOrder } from '../predict/sceneOfLook.ts'
import { vectorOf } from '../set/emitter.ts'
import { betweenWalls } from './betweenWalls.ts'
import { boardInPlaceOf } from './boardInPlace.ts'
import { energyChange, gelChange, leafChange, placeChange } from './lightChanges.ts'
import { underCeiling } from './underCeiling.ts'

/** What there is less of than the plan was made for. */
export type Lack =
  /** "Two heads." */
  | { readonly kind: 'heads'; readonly count: number }
  /** "Without D": its head is gone; others may stand in for it. */
  | { readonly kind: 'light'; readonly lightId: string }
  /** "The octa is missing", or "there is only a 120": the one modifier that comes instead; null for whatever the kit has. */
  | { readonly kind: 'modifier'; readonly modifierId: string; readonly instead: Modifier | null }
  /** "The ceiling is at 2.7 m." */
  | { readonly kind: 'ceiling'; readonly heightMetres: number }
  /** "The room is 4 m wide." */
  | { readonly kind: 'walls'; readonly widthMetres: number }
  /** "D on the old head." */
  | { readonly kind: 'head'; readonly lightId: string; readonly headId: string }

/** One thing that can be done about it, powers not yet set anew. */
export interface Remedy {
  readonly title: string
  readonly edit: PlanEdit
}

const MOST_SUBSTITUTES = 4
/** Enough for every choice among six lights; of more, those set up first are the ones tried without. */
const MOST_REMEDIES = 40
const DISTANCES = [0.7, 0.85, 1.15, 1.3, 1.5]

/** Everything worth trying. */
export function remediesFor(plan: Plan, lookId: string, lack: Lack, predictor: Predictor): readonly Remedy[] {
  const look = plan.looks[lookId]
  if (!look) throw new RangeError(`The plan has no look called ${lookId}`)
  switch (lack.kind) {
    case 'heads': return withHeads(lookId, look, lack.count)
    case 'light': return withoutLight(lookId, look, lack.lightId)
    case 'modifier': return withoutModifier(plan, lookId, look, lack.modifierId, lack.instead)
    case 'ceiling': return underCeiling(plan, lookId, lack.heightMetres, predictor)
    case 'walls': return betweenWalls(plan, lookId, lack.widthMetres, predictor)
    case 'head': return onHead(plan, lookId, look, lack.lightId, lack.headId)
  }
}

/** Any lights may be the ones that are dropped: heads are carried from stand to stand. */
function withHeads(lookId: string, look: Look, count: number): readonly Remedy[] {
  const burning = lightsInSetUpOrder(look).filter(([, { on }]) => on).map(([id]) => id)
  const remedies: Remedy[] = []
  for (const ids of choices(burning, Math.max(0, burning.length - Math.max(0, Math.floor(count))))) {
    remedies.push(...dropped(lookId, look, ids, null))
    if (remedies.length >= MOST_REMEDIES) break
  }
  return remedies
}

function withoutLight(lookId: string, look: Look, lightId: string): readonly Remedy[] {
  const burning = lightsInSetUpOrder(look).filter(([, { on }]) => on).map(([id]) => id)
  return burning.flatMap((id) => dropped(lookId, look, [id], id === lightId ? null : lightId))
}

/** The lights off, and once more with a white board where one of them filled a side. */
function dropped(lookId: string, look: Look, ids: readonly string[], standIn: string | null): Remedy[] {
  if (ids.length === 0) return [{ title: 'All as it is', edit: { name: 'fewerHeads', changes: [] } }]
  const letters = listed(ids.map((id) => look.lights[id]!.letter).sort())
  const headGoesOver = standIn === null ? [] : [leafChange(lookId, standIn, 'headId', look.lights[ids[0]!]!.headId)]
  const takesOver = standIn === null ? '' : `; its head takes ${look.lights[standIn]!.letter}’s place`
  const off: PlanChange[] = [...ids.map((id) => leafChange(lookId, id, 'on', false)), ...headGoesOver]
  const plain = { title: `Without ${letters}${takesOver}`, edit: { name: 'fewerHeads', changes: off } }
  const boards = ids.flatMap((id): Remedy[] => {
    const board = boardInPlaceOf(look, id)
    if (!board) return []
    const up: PlanChange = { path: ['looks', lookId, 'pieces', newId()], set: board }
    return [{ title: `Without ${letters}, a white board in place of ${look.lights[id]!.letter}${takesOver}`, edit: { name: 'fewerHeads', changes: [...off, up] } }]
  })
  return [plain, ...boards]
}

/** Each light that carried it in the modifiers nearest to it in size; in the one that comes instead alone, where one does. */
function withoutModifier(plan: Plan, lookId: string, look: Look, modifierId: string, instead: Modifier | null): readonly Remedy[] {
  const missing = plan.modifiers[modifierId]
  const carrying = lightsInSetUpOrder(look).filter(([, light]) => light.modifierId === modifierId)
  if (!missing || carrying.length === 0) return []
  const size = ({ widthMetres, heightMetres }: Modifier): number => Math.sqrt(widthMetres * heightMetres)
  const inUse = (id: string): number => Object.values(look.lights).filter((light) => light.on && light.modifierId === id).length
  const owned = Object.entries(plan.modifiers)
    .filter(([id, { count }]) => id !== modifierId && count - inUse(id) >= carrying.length)
    .map(([id, modifier]) => ({ id, modifier, off: Math.abs(Math.log(size(modifier) / size(missing))), added: [] as PlanChange[] }))
    .sort((a, b) => a.off - b.off).slice(0, MOST_SUBSTITUTES)
  const newModifierId = newId()
  const hired = instead
    ? [{ id: newModifierId, modifier: instead, off: 0, added: [{ path: ['modifiers', newModifierId], set: instead }] }] : []
  const letters = listed(carrying.map(([, { letter }]) => letter))
  return (instead ? hired : owned).map(({ id, modifier, added }): Remedy => ({
    title: `${letters} in ${modifier.name}`,
    edit: { name: 'fewerHeads', changes: [...added, ...carrying.flatMap(([lightId, { grid }]) => [
      leafChange(lookId, lightId, 'modifierId', id),
      ...(grid.kind === 'none' || takesGrid(modifier, grid.kind) ? [] : [leafChange(lookId, lightId, 'grid', { ...grid, kind: 'none' })]),
    ])] },
  }))
}

/** Fabric fits boxes, honeycombs fit what is hard and round (common practice, no source). */
function takesGrid({ kind }: Modifier, grid: 'fabric' | 'honeycomb'): boolean {
  const isBox = kind === 'softbox' || kind === 'octa' || kind === 'strip'
  return grid === 'fabric' ? isBox : kind === 'reflector' || kind === 'beauty-dish'
}

/** On another head as it stands, with a neutral sheet, or nearer or farther. */
function onHead(plan: Plan, lookId: string, look: Look, lightId: string, headId: string): readonly Remedy[] {
  const light = look.lights[lightId]
  const head = plan.heads[headId]
  if (!light || !head) return []
  const onIt = [leafChange(lookId, lightId, 'headId', headId), energyChange(lookId, lightId, fitToHead(head, light.energyJoules))]
  const neutrals = light.gelIds.length >= 4 ? [] : Object.entries(plan.gels).filter(([, { source, sheets }]) => source.from === 'neutral' && sheets > 0)
  const place = vectorOf(light.place)
  const away = subtract(place, vectorOf(light.aim))
  const by = (title: string, ...changes: readonly PlanChange[]): Remedy =>
    ({ title: `${light.letter} on ${head.name}${title}`, edit: { name: 'fewerHeads', changes: [...onIt, ...changes] } })
  return [
    by(''),
    ...neutrals.map(([id, { name }]) => by(`, with ${name}`, gelChange(lookId, lightId, [...light.gelIds, id]))),
    ...DISTANCES.map((times) => {
      const centimetres = Math.round(Math.abs(times - 1) * 100 * Math.sqrt(away[0] * away[0] + away[1] * away[1] + away[2] * away[2]))
      return by(`, ${centimetres} cm ${times < 1 ? 'nearer' : 'farther'}`, placeChange(lookId, lightId, 'place', add(place, scale(away, times - 1))))
    }),
  ].filter(({ edit }) => applyEdit(plan, edit) !== plan)
}

/** "B", "B and C", "B, C and D". */
function listed(words: readonly string[]): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`
}

/** Every choice of `count` of the things, in their order; one after the other, for there may be more than anybody could try. */
function* choices<Thing>(things: readonly Thing[], count: number): Generator<readonly Thing[], void> {
  if (count === 0) yield []
  else for (const [i, thing] of things.entries()) for (const rest of choices(things.slice(i + 1), count - 1)) yield [thing, ...rest]
}
