import type { Lack } from '../../../shared-core/ask/remedies.ts'
import { formatLength } from '../../../shared-core/plan/entry/length.ts'
import type { Modifier } from '../../../shared-core/plan/schema/kit.ts'
import type { Light } from '../../../shared-core/plan/schema/look.ts'
import type { Plan } from '../../../shared-core/plan/schema/plan.ts'
import type { Units } from '../../session/board.ts'

/** What the question is about: a thing of the look, the room, or whatever may be missing. */
export type WithoutWhat =
  | { readonly kind: 'light'; readonly id: string }
  | { readonly kind: 'modifier'; readonly id: string }
  | { readonly kind: 'room' }
  | { readonly kind: 'anything' }

/** One thing that may be missing, as it is said and as it is asked. */
export interface LackChoice {
  /** "Without D" */
  readonly words: string
  /** Shorter, under a title that says the rest. */
  readonly face?: string
  readonly lack: Lack
}

export interface LackGroup {
  readonly title: string
  readonly choices: readonly LackChoice[]
}

const COUNTS = ['No head', 'One head', 'Two heads', 'Three heads', 'Four heads', 'Five heads']
/** Round fronts as they are sold, across (common practice, no source). */
const USUAL_WIDTHS_METRES: Readonly<Partial<Record<Modifier['kind'], readonly number[]>>> = {
  'octa': [0.6, 0.9, 1.2, 1.5],
  'beauty-dish': [0.42, 0.55, 0.7],
  'umbrella-white': [0.85, 1.05, 1.3, 1.65],
  'umbrella-silver': [0.85, 1.05, 1.3, 1.65],
  'umbrella-diffused': [1.05, 1.3, 1.65],
  'umbrella-shoot-through': [0.85, 1.1, 1.5],
}

/** What a look can be asked to do without, from its own lights and kit; only what it burns or carries is of use. */
export function lackChoices(plan: Plan, lookId: string, what: WithoutWhat): readonly LackGroup[] {
  const burning = burningLights(plan, lookId)
  switch (what.kind) {
    case 'light': return withSome([{ title: '', choices: burning.filter(([id]) => id === what.id).flatMap(([id, light]) => ofLight(plan, id, light)) }])
    case 'modifier': return withSome([{ title: '', choices: ofModifier(plan, what.id) }])
    case 'room': return []
    case 'anything': return withSome([
      { title: 'A light', choices: burning.map(([id, { letter }]) => ({ words: `Without ${letter}`, lack: { kind: 'light', lightId: id } })) },
      { title: 'Heads', choices: fewerCounts(burning.length) },
      { title: 'A modifier', choices: carried(plan, burning).map((id) => missing(plan, id)) },
      ...Object.entries(plan.heads).map(([headId, { name }]) => ({
        title: `On ${name}`,
        choices: burning.flatMap(([id, light]) => onOtherHeads(plan, id, light).filter(({ lack }) => lack.kind === 'head' && lack.headId === headId))
          .map((choice) => ({ ...choice, face: choice.words.split(' ')[0]! })),
      })),
    ])
  }
}

/** A modifier of the same kind that is all there is instead, in another size and the same proportions. */
export function insteadOf(plan: Plan, modifierId: string, widthMetres: number, units: Units): LackChoice | null {
  const modifier = plan.modifiers[modifierId]
  if (!modifier) return null
  const times = widthMetres / modifier.widthMetres
  const size = units === 'metric' ? `${Math.round(widthMetres * 100)} cm` : formatLength(widthMetres, units)
  const name = `${kindWord(modifier)} ${size}`.slice(0, 120)
  const instead: Modifier = {
    ...modifier, name, count: Math.max(1, modifier.count), widthMetres,
    heightMetres: rounded(modifier.heightMetres * times), depthMetres: rounded(modifier.depthMetres * times),
  }
  return { words: `Only a ${size}`, lack: { kind: 'modifier', modifierId, instead } }
}

/** Usual sizes of the same kind; empty where the trade has none that go by one number. */
export function usualWidths(modifier: Modifier): readonly number[] {
  return (USUAL_WIDTHS_METRES[modifier.kind] ?? []).filter((width) => Math.abs(width - modifier.widthMetres) > 0.02)
}

export function ceilingAt(heightMetres: number, units: Units): LackChoice {
  return { words: `Ceiling at ${formatLength(heightMetres, units)}`, lack: { kind: 'ceiling', heightMetres } }
}

export function wallsApart(widthMetres: number, units: Units): LackChoice {
  return { words: `Room ${formatLength(widthMetres, units)} wide`, lack: { kind: 'walls', widthMetres } }
}

function ofLight(plan: Plan, id: string, light: Light): readonly LackChoice[] {
  return [
    { words: `Without ${light.letter}`, lack: { kind: 'light', lightId: id } },
    ...(plan.modifiers[light.modifierId] ? [missing(plan, light.modifierId)] : []),
    ...onOtherHeads(plan, id, light),
  ]
}

function ofModifier(plan: Plan, id: string): readonly LackChoice[] {
  return plan.modifiers[id] ? [missing(plan, id)] : []
}

function missing(plan: Plan, id: string): LackChoice {
  return { words: `No ${plan.modifiers[id]!.name}`, lack: { kind: 'modifier', modifierId: id, instead: null } }
}

function onOtherHeads(plan: Plan, id: string, { letter, headId }: Light): readonly LackChoice[] {
  return Object.entries(plan.heads).filter(([otherId, { count }]) => otherId !== headId && count > 0)
    .map(([otherId, { name }]) => ({ words: `${letter} on ${name}`, lack: { kind: 'head', lightId: id, headId: otherId } }))
}

function fewerCounts(burning: number): readonly LackChoice[] {
  const most = Math.min(burning, COUNTS.length) - 1
  return Array.from({ length: Math.max(0, most) }, (_, i) => most - i)
    .map((count) => ({ words: COUNTS[count]!, lack: { kind: 'heads', count } }))
}

function carried(plan: Plan, burning: readonly (readonly [string, Light])[]): readonly string[] {
  return [...new Set(burning.map(([, { modifierId }]) => modifierId))].filter((id) => plan.modifiers[id] !== undefined)
}

function burningLights(plan: Plan, lookId: string): readonly (readonly [string, Light])[] {
  return Object.entries(plan.looks[lookId]?.lights ?? {}).filter(([, { on }]) => on)
    .sort(([, a], [, b]) => a.letter.localeCompare(b.letter))
}

function kindWord({ kind, name }: Modifier): string {
  return kind === 'octa' ? 'Octa' : kind.startsWith('umbrella') ? 'Umbrella' : kind === 'beauty-dish' ? 'Beauty dish' : `${name}, as`
}

const withSome = (groups: readonly LackGroup[]): readonly LackGroup[] => groups.filter(({ choices }) => choices.length > 0)
const rounded = (metres: number): number => Math.round(metres * 100) / 100
