import type { Light, Look } from '../plan/schema/look.ts'
import type { Modifier, ModifierKind } from '../plan/schema/kit.ts'
import type { Plan } from '../plan/schema/plan.ts'
import { keyPart, orderLine, type OrderLine } from './orderLine.ts'

/** These go on a head by a ring that has to be of the head's make. */
const onRings: readonly ModifierKind[] = ['softbox', 'octa', 'strip']

/** Heads, what shapes them, and what they stand on. One spare head of the kind most used (common practice, no source). */
export function orderLights(plan: Plan, looks: readonly Look[]): readonly OrderLine[] {
  const lit = looks.map((look) => Object.values(look.lights).filter(({ on }) => on))
  const count = (keep: (light: Light) => boolean) => lit.map((lights) => lights.filter(keep).length)
  const heads = used(lit, ({ headId }) => headId).filter((id) => Object.hasOwn(plan.heads, id)).map((id) => orderLine({
    key: `head.${id}`, case: 'Heads', name: plan.heads[id]!.name, byLook: count(({ headId }) => headId === id), owned: plan.heads[id]!.count,
  }))
  return [...withSpare(heads), ...shapers(plan, lit, count), ...supports(count)]
}

type Count = (keep: (light: Light) => boolean) => readonly number[]

function shapers(plan: Plan, lit: readonly (readonly Light[])[], count: Count): readonly OrderLine[] {
  const ids = used(lit, ({ modifierId }) => modifierId).filter((id) => Object.hasOwn(plan.modifiers, id))
  return ids.flatMap((id) => {
    const modifier = plan.modifiers[id]!
    const on = (light: Light) => light.modifierId === id
    const own = orderLine({
      key: `modifier.${id}`, case: 'Modifiers', name: modifier.name, byLook: count(on), owned: modifier.count, note: diffuserNote(modifier),
    })
    const grids = used(lit.map((lights) => lights.filter(on)), gridName).filter((name) => name !== '')
    const rings = onRings.includes(modifier.kind) ? used(lit.map((lights) => lights.filter(on)), ({ headId }) => headId) : []
    return [own,
      ...grids.map((grid) => orderLine({
        key: `grid.${id}.${keyPart(grid)}`, case: 'Modifiers', name: `${grid} for ${modifier.name}`,
        byLook: count((light) => on(light) && gridName(light) === grid),
      })),
      ...rings.filter((headId) => Object.hasOwn(plan.heads, headId)).map((headId) => orderLine({
        key: `ring.${id}.${headId}`, case: 'Modifiers', name: `Mount ring, ${modifier.name} to ${plan.heads[headId]!.name}`,
        byLook: count((light) => on(light) && light.headId === headId),
      }))]
  })
}

function supports(count: Count): readonly OrderLine[] {
  const kinds = [
    ['stand', 'Light stand', ({ support }: Light) => support === 'stand'],
    ['low-stand', 'Low stand', ({ support }: Light) => support === 'low-stand'],
    ['boom', 'Boom with its stand and counterweight', ({ support }: Light) => support === 'boom'],
    ['safety-cable', 'Safety cable', ({ safetyCable }: Light) => safetyCable],
  ] as const
  return kinds.map(([key, name, keep]) => orderLine({ key: `grip.${key}`, case: 'Stands and grip', name, byLook: count(keep) }))
    .filter(({ needed }) => needed > 0)
}

function withSpare(heads: readonly OrderLine[]): readonly OrderLine[] {
  const most = Math.max(...heads.map(({ needed }) => needed))
  const spared = heads.find(({ needed }) => needed === most)
  return heads.map((line) => (line === spared ? orderLine({ ...line, spare: 1, note: 'one spare of the head most used' }) : line))
}

function gridName({ grid }: Light): string {
  switch (grid.kind) {
    case 'none':
      return ''
    case 'fabric':
      return 'Fabric grid'
    case 'honeycomb':
      return `Honeycomb ${grid.openingDegrees}°`
  }
}

function diffuserNote({ diffusers }: Modifier): string {
  return diffusers > 0 ? `with ${diffusers === 1 ? 'its diffuser' : 'both diffusers'}` : ''
}

function used(lit: readonly (readonly Light[])[], of: (light: Light) => string): readonly string[] {
  return [...new Set(lit.flat().map(of))].sort()
}
