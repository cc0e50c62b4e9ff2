import { stopsFromTimes } from '../../arithmetic/portable.ts'
import type { PlanChange } from '../../plan/edit.ts'
import type { Modifier } from '../../plan/schema/kit.ts'
import { changed, lightOf, lookOf, type Draft } from '../draft.ts'
import { leafChange } from '../lightChanges.ts'
import { solvePowers } from '../powers.ts'
import { better, inTheWayOf, lettersOf, NOT_TRIED, type Trial, type Tried, type TriedWays } from './trial.ts'

const FABRIC_GRID_DEGREES = 50
const MOST_TRIED = 8

/** Takes the grid off or puts one on, or takes another modifier of the kit: the one nearest in size that will do. */
export function byModifier(trial: Trial): TriedWays {
  const worst = trial.excesses[0]
  if (!worst) return NOT_TRIED
  const { lightId } = worst
  const light = lightOf(trial.base, lightId)
  const own = trial.base.plan.modifiers[light.modifierId]
  const candidates: { changes: PlanChange[]; title: string }[] = []
  const letter = lettersOf([lightId], trial.base)
  if (worst.stops > 0 && light.grid.kind !== 'none') {
    const grid = { ...light.grid, kind: 'none' as const }
    candidates.push({ changes: [leafChange(trial.base.lookId, lightId, 'grid', grid)], title: `Take the grid off ${letter}` })
  }
  if (worst.stops < 0 && light.grid.kind === 'none' && own && takesFabricGrid(own)) {
    const grid = { kind: 'fabric' as const, openingDegrees: FABRIC_GRID_DEGREES }
    candidates.push({ changes: [leafChange(trial.base.lookId, lightId, 'grid', grid)], title: `Put a fabric grid on ${letter}` })
  }
  for (const [id, modifier] of freeModifiers(trial.base, own)) {
    const changes = [leafChange(trial.base.lookId, lightId, 'modifierId', id)]
    if (light.grid.kind === 'fabric' && !takesFabricGrid(modifier)) {
      changes.push(leafChange(trial.base.lookId, lightId, 'grid', { ...light.grid, kind: 'none' }))
    }
    candidates.push({ changes, title: `${modifier.name} on ${letter}` })
  }
  let best: Tried | null = null
  for (const { changes, title } of candidates.slice(0, MOST_TRIED)) {
    const solution = solvePowers(trial.task, changed(trial.base, changes))
    if (inTheWayOf(lightId, trial, solution.prediction).length > 0) continue
    best = better(trial, best, { by: 'modifier', title, solution })
    if (best.solution.shortfall === 0) break
  }
  return { best, limits: [] }
}

/** Modifiers that no light of the look uses up, nearest in size first. */
export function freeModifiers(draft: Draft, beside: Modifier | undefined): (readonly [id: string, modifier: Modifier])[] {
  const used = (id: string): number => Object.values(lookOf(draft).lights).filter(({ modifierId }) => modifierId === id).length
  const size = ({ widthMetres, heightMetres }: Modifier): number => stopsFromTimes(widthMetres * heightMetres)
  const gap = (modifier: Modifier): number => (beside ? Math.abs(size(modifier) - size(beside)) : 0)
  return Object.entries(draft.plan.modifiers)
    .filter(([id, modifier]) => modifier !== beside && modifier.count > used(id))
    .sort(([, a], [, b]) => gap(a) - gap(b))
}

function takesFabricGrid({ kind }: Modifier): boolean {
  return kind === 'softbox' || kind === 'octa' || kind === 'strip'
}
