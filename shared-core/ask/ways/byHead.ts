import { add, cross, direction, distance, scale, subtract, type Vector } from '../../arithmetic/vector.ts'
import { addLight, chooseHead } from '../../plan/edits/lights.ts'
import type { Limit } from '../answer.ts'
import { changed, helped, lightOf, lookOf, type Draft } from '../draft.ts'
import { solvePowers } from '../powers.ts'
import { vectorOf } from '../../set/emitter.ts'
import { sheetsLeft } from './byGel.ts'
import { freeModifiers } from './byModifier.ts'
import { better, inTheWayOf, lettersOf, NOT_TRIED, type Trial, type Tried, type TriedWays } from './trial.ts'

/** Between the fronts of two lights side by side. */
const GAP_METRES = 0.1
const MODIFIERS_TRIED = 3

/** Another head of the kit on the light that runs out; else a second one with the same sheets beside it. */
export function byHead(trial: Trial): TriedWays {
  const worst = trial.excesses[0]
  if (!worst) return NOT_TRIED
  const letter = lettersOf([worst.lightId], trial.base)
  let best: Tried | null = null
  for (const headId of freeHeads(trial.base).filter((id) => id !== lightOf(trial.base, worst.lightId).headId)) {
    const chosen = chooseHead(trial.base.plan, trial.base.lookId, worst.lightId, headId)
    if (!chosen.ok) continue
    const solution = solvePowers(trial.task, changed(trial.base, chosen.edit.changes))
    best = better(trial, best, { by: 'head', title: `${trial.base.plan.heads[headId]!.name} on ${letter}`, solution })
  }
  if (worst.stops < 0 || best?.solution.shortfall === 0) return { best, limits: [] }
  const second = bySecondHead(trial, worst.lightId)
  return { best: second.best ? better(trial, best, second.best) : best, limits: second.limits }
}

function bySecondHead(trial: Trial, lightId: string): TriedWays {
  const { base } = trial
  const light = lightOf(base, lightId)
  const headId = freeHeads(base).sort((a, b) => Number(b === light.headId) - Number(a === light.headId))[0]
  const kitLimit = (words: string): TriedWays => ({ best: null, limits: [{ kind: 'kit', aboutId: lightId, byStops: null, words }] })
  if (headId === undefined) return kitLimit(`No head of the kit is left to help ${light.letter}`)
  const lackingSheet = light.gelIds.find((id) => sheetsLeft(id, base) < 1)
  if (lackingSheet !== undefined) return kitLimit(`No second sheet of ${base.plan.gels[lackingSheet]?.name ?? lackingSheet} is left to help ${light.letter}`)
  const own = base.plan.modifiers[light.modifierId]
  const isOwnFree = own && own.count > Object.values(lookOf(base).lights).filter(({ modifierId }) => modifierId === light.modifierId).length
  const modifierIds = [...(isOwnFree ? [light.modifierId] : []), ...freeModifiers(base, own).map(([id]) => id)].slice(0, MODIFIERS_TRIED)
  if (modifierIds.length === 0) return kitLimit(`No modifier of the kit is left to help ${light.letter}`)
  let best: Tried | null = null
  const limits: Limit[] = []
  for (const modifierId of modifierIds) {
    for (const side of [1, -1] as const) {
      const draft = withSecond(base, lightId, headId, modifierId, side)
      if (!draft) continue
      const solution = solvePowers(trial.task, draft.draft)
      const inTheWay = inTheWayOf(draft.helperId, trial, solution.prediction)
      if (inTheWay.length > 0) {
        limits.push(...inTheWay.slice(0, 1))
        continue
      }
      best = better(trial, best, { by: 'head', title: `A second head beside ${light.letter}, same sheets`, solution })
      if (best.solution.shortfall === 0) return { best, limits: [] }
    }
  }
  return { best, limits: best ? [] : limits.slice(0, 1) }
}

/** A light with the same sheets at the other's side, on the same arc around what both are aimed at. */
function withSecond(
  base: Draft, lightId: string, headId: string, modifierId: string, side: 1 | -1,
): { draft: Draft; helperId: string } | null {
  const light = lightOf(base, lightId)
  const widths = [light.modifierId, modifierId].map((id) => base.plan.modifiers[id]?.widthMetres ?? 0)
  const place = besides(vectorOf(light.place), vectorOf(light.aim), side * ((widths[0]! + widths[1]!) / 2 + GAP_METRES))
  const [xMetres, yMetres, zMetres] = place.map((metre) => Math.round(metre * 1000) / 1000) as unknown as Vector
  const { gelIds, gelPlace, support, plane, serves, rollDegrees, aim, energyJoules } = light
  const grid = { ...light.grid, kind: modifierId === light.modifierId ? light.grid.kind : 'none' as const }
  const added = addLight(base.plan, base.lookId, {
    headId, modifierId, aim, gelIds, gelPlace, support, plane, serves, rollDegrees, grid, energyJoules,
    place: { xMetres, yMetres, zMetres }, note: `Helps ${light.letter}`,
  })
  return added.ok ? { draft: helped(changed(base, added.edit.changes), lightId, added.lightId), helperId: added.lightId } : null
}

function besides(place: Vector, aim: Vector, metres: number): Vector {
  const axis = subtract(aim, place)
  const aside = add(place, scale(direction(cross(axis, [0, 0, 1]), [1, 0, 0]), metres))
  // Back onto the arc, so that both stand equally far from the aim, at the first one's height.
  const [x, y] = add(aim, scale(direction(subtract(aside, aim)), distance(place, aim)))
  return [x, y, place[2]]
}

/** Heads of which the look does not use all there are. */
function freeHeads({ plan, lookId }: Draft): string[] {
  const used = (id: string): number => Object.values(plan.looks[lookId]!.lights).filter(({ headId }) => headId === id).length
  return Object.entries(plan.heads).filter(([id, { count }]) => count > used(id)).map(([id]) => id)
}
