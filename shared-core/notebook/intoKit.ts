import type { Gel, Head, Modifier } from '../plan/schema/kit.ts'
import type { Light } from '../plan/schema/look.ts'
import type { Plan } from '../plan/schema/plan.ts'
import { fitToHead } from '../plan/fitToHead.ts'

/** What there is to build with. */
export type Kit = Pick<Plan, 'heads' | 'modifiers' | 'gels'>

export interface Kitted {
  readonly plan: Plan
  readonly moves: readonly string[]
  /** What the kit does not have, in words. */
  readonly lacks: readonly string[]
}

/**
 * A look on another kit: heads of the same name or the nearest in energy, modifiers of the same name or kind and the
 * nearest in size, gels of the same name or source. A gel or modifier that has no like there is listed as to be bought
 * or hired (none in stock); no more heads are used than there are.
 */
export function intoKit(source: Plan, lookId: string, kit: Kit | undefined): Kitted {
  if (kit === undefined) return { plan: source, moves: [], lacks: [] }
  const look = source.looks[lookId]!
  const taken = new Map<string, number>()
  const added: { heads: Record<string, Head>; modifiers: Record<string, Modifier>; gels: Record<string, Gel> } = { heads: {}, modifiers: {}, gels: {} }
  const moves: string[] = []
  const lacks: string[] = []
  const lights = Object.fromEntries(inLetterOrder(look.lights).map(([id, light]): [string, Light] => {
    const head = source.heads[light.headId]
    const modifier = source.modifiers[light.modifierId]
    const headId = takeHead(head, kit, taken) ?? keep(added.heads, light.headId, head, { count: 0 })
    const modifierId = takeModifier(modifier, kit, taken) ?? keep(added.modifiers, light.modifierId, modifier, { count: 0 })
    const gelIds = light.gelIds.map((gelId) => {
      const gel = source.gels[gelId]
      return likeGel(gel, kit.gels) ?? keep(added.gels, gelId, gel, { sheets: 0 })
    })
    if (!light.on) return [id, { ...light, headId, modifierId, gelIds }]
    const headNow = kit.heads[headId]
    const modifierNow = kit.modifiers[modifierId]
    if (headNow === undefined) lacks.push(`No head is left for ${light.letter}: ${head?.name ?? 'a head'} is to be hired`)
    else if (head && headNow.name !== head.name) moves.push(`${light.letter} on ${headNow.name} (was ${head.name})`)
    if (modifierNow === undefined && modifier) lacks.push(`Nothing in the kit is like ${modifier.name} for ${light.letter}: it is to be hired`)
    else if (modifier && modifierNow && modifierNow.name !== modifier.name) moves.push(`${light.letter} in ${modifierNow.name} (was ${modifier.name})`)
    for (const gelId of gelIds) if (kit.gels[gelId] === undefined) lacks.push(`${source.gels[gelId]?.name ?? 'A gel'} for ${light.letter} is to be bought`)
    // Within what the head there can give: what is short is found by Ask.
    const energyJoules = headNow === undefined || headNow.name === head?.name ? light.energyJoules : fitToHead(headNow, light.energyJoules)
    return [id, { ...light, headId, modifierId, gelIds, energyJoules }]
  }))
  const plan: Plan = {
    ...source,
    heads: { ...kit.heads, ...added.heads },
    modifiers: { ...kit.modifiers, ...added.modifiers },
    gels: { ...kit.gels, ...added.gels },
    looks: { ...source.looks, [lookId]: { ...look, lights } },
  }
  return { plan, moves, lacks: [...new Set(lacks)] }
}

/** Lights that are on choose first. */
function inLetterOrder(lights: Readonly<Record<string, Light>>): (readonly [string, Light])[] {
  return Object.entries(lights).sort(([, a], [, b]) => Number(b.on) - Number(a.on) || (a.letter < b.letter ? -1 : 1))
}

function takeHead(head: Head | undefined, { heads }: Kit, taken: Map<string, number>): string | null {
  const free = Object.entries(heads).filter(([id, { count }]) => count > (taken.get(id) ?? 0))
  const gap = (other: Head): number => {
    if (head === undefined) return 0
    if (other.name === head.name) return -1
    const stronger = Math.log(other.fullEnergyJoules / head.fullEnergyJoules)
    // Too weak is worse than too strong by as much.
    return stronger >= 0 ? stronger : -2 * stronger
  }
  return take(free.sort(([, a], [, b]) => gap(a) - gap(b))[0]?.[0], taken)
}

/** Kinds that draw alike, so that one can stand in for another. */
const ALIKE: readonly (readonly Modifier['kind'][])[] = [
  ['softbox', 'octa', 'strip'], ['umbrella-white', 'umbrella-silver', 'umbrella-diffused', 'umbrella-shoot-through'],
  ['reflector', 'snoot', 'bare-tube'], ['beauty-dish'],
]

function takeModifier(modifier: Modifier | undefined, { modifiers }: Kit, taken: Map<string, number>): string | null {
  if (modifier === undefined) return null
  const alike = ALIKE.find((kinds) => kinds.includes(modifier.kind)) ?? [modifier.kind]
  const free = Object.entries(modifiers).filter(([id, { kind, count }]) => alike.includes(kind) && count > (taken.get(id) ?? 0))
  return take(free.sort(([, a], [, b]) => unlike(modifier, a) - unlike(modifier, b))[0]?.[0], taken)
}

/** How unlike two modifiers are: 0 for the same, more for another size, shape or kind. */
export function unlike(one: Modifier, other: Modifier, timesAsLarge = 1): number {
  const size = (a: number, b: number): number => Math.abs(Math.log(b / a))
  const sides = size(one.widthMetres * timesAsLarge, other.widthMetres) + size(one.heightMetres * timesAsLarge, other.heightMetres)
  return sides + (one.kind === other.kind ? 0 : 0.5) + 0.2 * Math.abs(one.diffusers - other.diffusers) - (one.name === other.name && timesAsLarge === 1 ? 0.1 : 0)
}

function take(id: string | undefined, taken: Map<string, number>): string | null {
  if (id === undefined) return null
  taken.set(id, (taken.get(id) ?? 0) + 1)
  return id
}

function likeGel(gel: Gel | undefined, gels: Kit['gels']): string | null {
  if (gel === undefined) return null
  const source = JSON.stringify(gel.source)
  const entries = Object.entries(gels)
  const same = entries.find(([, other]) => JSON.stringify(other.source) === source && other.name === gel.name) ??
    entries.find(([, other]) => JSON.stringify(other.source) === source)
  return same?.[0] ?? null
}

function keep<Thing>(into: Record<string, Thing>, id: string, thing: Thing | undefined, stock: Partial<Thing>): string {
  if (thing !== undefined) into[id] = { ...thing, ...stock }
  return id
}
