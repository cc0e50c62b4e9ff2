import type { Light, Look } from '../plan/schema/look.ts'
import type { Plan } from '../plan/schema/plan.ts'
import { isCoveredBy, leastMillimetres, sizeOf, usualCut, type CutSize } from './cutSize.ts'
import { isDenseGel } from './denseGel.ts'

/** Where one physical cut is used: in each look on at most one light, at the head or over the front. */
export interface CutUse {
  readonly lookId: string
  readonly lightId: string
  readonly letter: string
  readonly gelPlace: Light['gelPlace']
}

/** One piece of gel to be cut. It serves in every look of `uses`; a spare in none. */
export interface GelCut extends CutSize {
  /** Gel, size and number: the same as long as the plan needs it. */
  readonly id: string
  readonly gelId: string
  /** Tape letters it is marked with, each once: "B", "B, D". A spare bears those of the cut it stands in for. */
  readonly letters: string
  readonly uses: readonly CutUse[]
  readonly isSpare: boolean
}

interface Need extends CutUse, CutSize {
  readonly gelId: string
}

/**
 * The cuts that the lights switched on in these looks need, by gel and from the largest down. Looks are shot one after
 * another: a cut is shared between looks that need the same size of the same gel, and within a look every light has its
 * own. For each dense gel one spare of its largest cut is added (common practice, no source).
 */
export function gelCuts(plan: Plan, lookIds: readonly string[]): readonly GelCut[] {
  const needs = lookIds.flatMap((lookId) => needsOf(plan, lookId, plan.looks[lookId]))
  const gelIds = [...new Set(needs.map(({ gelId }) => gelId))].sort()
  return gelIds.flatMap((gelId) => {
    const cuts = shared(needs.filter((need) => need.gelId === gelId), lookIds)
    const gel = plan.gels[gelId]
    const largest = cuts[0]
    if (!gel || !largest || !isDenseGel(gel)) return cuts
    return [...cuts, { ...largest, id: `${gelId}.spare`, uses: [], isSpare: true }]
  })
}

function needsOf(plan: Plan, lookId: string, look: Look | undefined): Need[] {
  return Object.entries(look?.lights ?? {}).filter(([, light]) => light.on).flatMap(([lightId, light]) =>
    light.gelIds.filter((gelId) => Object.hasOwn(plan.gels, gelId)).map((gelId) => ({
      lookId, lightId, letter: light.letter, gelPlace: light.gelPlace, gelId, ...cutFor(plan, light, gelId),
    })))
}

/** The usual cut; the least that covers where only that fits the plan's sheet. */
function cutFor(plan: Plan, light: Light, gelId: string): CutSize {
  const gel = plan.gels[gelId]!
  const modifier = plan.modifiers[light.modifierId]
  const sheet = sizeOf(gel.sheetWidthMetres, gel.sheetHeightMetres)
  const [usual, least] = [usualCut(modifier, light.gelPlace), leastMillimetres(modifier, light.gelPlace)]
  return !isCoveredBy(usual, sheet) && isCoveredBy(least, sheet) ? least : usual
}

function shared(needs: readonly Need[], lookIds: readonly string[]): GelCut[] {
  const sizes = new Map<string, Need[]>()
  for (const need of needs) {
    const key = `${need.longMillimetres}x${need.shortMillimetres}`
    sizes.set(key, [...(sizes.get(key) ?? []), need])
  }
  return [...sizes].flatMap(([key, same]) => {
    const byLook = lookIds.map((lookId) => same.filter((need) => need.lookId === lookId)
      .sort((a, b) => a.letter.localeCompare(b.letter, 'en')))
    const most = Math.max(...byLook.map((inLook) => inLook.length))
    return Array.from({ length: most }, (_, index) => cutOf(key, index, byLook.flatMap((inLook) => inLook[index] ?? [])))
  }).sort((a, b) => b.longMillimetres * b.shortMillimetres - a.longMillimetres * a.shortMillimetres || (a.id < b.id ? -1 : 1))
}

function cutOf(key: string, index: number, needs: readonly Need[]): GelCut {
  const { gelId, longMillimetres, shortMillimetres } = needs[0]!
  return {
    id: `${gelId}.${key}.${index + 1}`,
    gelId, longMillimetres, shortMillimetres,
    letters: [...new Set(needs.map(({ letter }) => letter))].sort().join(', '),
    uses: needs.map(({ lookId, lightId, letter, gelPlace }) => ({ lookId, lightId, letter, gelPlace })),
    isSpare: false,
  }
}
