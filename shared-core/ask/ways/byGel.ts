import type { Gel } from '../../plan/schema/kit.ts'
import { changed, lightOf, lookOf, type Draft } from '../draft.ts'
import { sheetsLacking } from '../judge.ts'
import { gelChange } from '../lightChanges.ts'
import { solvePowers } from '../powers.ts'
import { gelNames } from '../wantWords.ts'
import { better, lettersOf, NOT_TRIED, type Trial, type Tried, type TriedWays } from './trial.ts'

const MOST_SHEETS = 4

/** A paler sheet of the same hue for a light that runs out of power; a denser one, or a neutral one, for one too strong. */
export function byGel(trial: Trial): TriedWays {
  const worst = trial.excesses[0]
  if (!worst) return NOT_TRIED
  const { lightId } = worst
  const { gelIds } = lightOf(trial.base, lightId)
  const isFixed = trial.task.aims.some(({ want, lightId: about }) => want.kind === 'area-gel' && about === lightId)
  let best: Tried | null = null
  for (const ids of [...(isFixed ? [] : sameHue(gelIds, trial.base, worst.stops)), ...(worst.stops < 0 ? neutrals(gelIds, trial.base) : [])]) {
    const draft = changed(trial.base, [gelChange(trial.base.lookId, lightId, ids)])
    if (sheetsLacking(ids, draft) > 0) continue
    const solution = solvePowers(trial.task, draft)
    best = better(trial, best, { by: 'gel', title: `${gelNames(ids, trial.base.plan)} on ${lettersOf([lightId], trial.base)}`, solution })
    if (best.solution.shortfall === 0) break
  }
  return { best, limits: [] }
}

/** The sheets with one exchanged for another of its hue: paler ones (nearest first) or denser ones. */
function sameHue(gelIds: readonly string[], { plan }: Draft, stops: number): (readonly string[])[] {
  return gelIds.flatMap((id, at) => {
    const own = strength(plan.gels[id])
    if (!own) return []
    const others = Object.entries(plan.gels).flatMap(([otherId, gel]) => {
      const other = strength(gel)
      const isThatWay = other && other.hue === own.hue && (stops > 0 ? other.amount < own.amount : other.amount > own.amount)
      return isThatWay ? [{ otherId, gap: Math.abs(other.amount - own.amount) }] : []
    })
    return others.sort((a, b) => a.gap - b.gap).map(({ otherId }) => gelIds.map((each, i) => (i === at ? otherId : each)))
  })
}

/** Hue and how much of it, for sheets that come in strengths. */
function strength(gel: Gel | undefined): { hue: string; amount: number } | null {
  if (gel?.source.from === 'family') return { hue: gel.source.family, amount: gel.source.density }
  if (gel?.source.from === 'mired') return { hue: gel.source.shiftMired > 0 ? 'warm' : 'cool', amount: Math.abs(gel.source.shiftMired) }
  return null
}

/** The sheets with a neutral one or two over them, weakest first. */
function neutrals(gelIds: readonly string[], draft: Draft): (readonly string[])[] {
  const owned = Object.entries(draft.plan.gels).flatMap(([id, { source, sheets }]) =>
    (source.from === 'neutral' && source.lossStops > 0 ? [{ ids: new Array<string>(Math.min(sheets, 2)).fill(id), stops: source.lossStops }] : []))
  const stacks = owned.flatMap(({ ids, stops }) => ids.map((_, i) => ({ ids: ids.slice(0, i + 1), stops: stops * (i + 1) })))
  const pairs = owned.flatMap((a, i) => owned.slice(i + 1).map((b) => ({ ids: [a.ids[0]!, b.ids[0]!], stops: a.stops + b.stops })))
  return [...stacks, ...pairs].filter(({ ids }) => ids.every((id) => id !== undefined) && gelIds.length + ids.length <= MOST_SHEETS)
    .sort((a, b) => a.stops - b.stops).map(({ ids }) => [...gelIds, ...ids])
}

/** How many more lights of the look could carry a sheet. */
export function sheetsLeft(gelId: string, draft: Draft): number {
  const used = Object.values(lookOf(draft).lights).reduce((sum, light) => sum + light.gelIds.filter((id) => id === gelId).length, 0)
  return (draft.plan.gels[gelId]?.sheets ?? 0) - used
}
