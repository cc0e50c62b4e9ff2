import { timesFromStops } from '../../arithmetic/portable.ts'
import { add, scale, subtract, type Vector } from '../../arithmetic/vector.ts'
import { together } from '../../plan/edits/adding.ts'
import type { EditResult } from '../../plan/edits/changing.ts'
import { changeLight, setPower } from '../../plan/edits/lights.ts'
import { moveLight } from '../../plan/edits/placing.ts'
import type { ModifierKind } from '../../plan/schema/kit.ts'
import type { Light } from '../../plan/schema/look.ts'
import { vectorOf } from '../../set/emitter.ts'
import type { CheckView } from './check.ts'

/** Grids as they are usually owned (common practice, no source). Umbrellas and bare tubes take none. */
const usualGrids: Partial<Readonly<Record<ModifierKind, Light['grid']>>> = {
  reflector: { kind: 'honeycomb', openingDegrees: 30 },
  'beauty-dish': { kind: 'honeycomb', openingDegrees: 30 },
  softbox: { kind: 'fabric', openingDegrees: 50 },
  octa: { kind: 'fabric', openingDegrees: 50 },
  strip: { kind: 'fabric', openingDegrees: 50 },
}

/** Puts the usual grid on a light that has none; null where its modifier takes none. */
export function gridOn({ plan, look, measured }: CheckView, lightId: string): EditResult | null {
  const light = look.lights[lightId]
  const grid = light && usualGrids[plan.modifiers[light.modifierId]?.kind ?? 'bare-tube']
  if (!light || !grid || light.grid.kind !== 'none') return null
  return changeLight(plan, measured.lookId, lightId, { grid })
}

/** Changes the powers of lights by stops, as one edit; null when one of their heads cannot do it. */
export function powersBy({ plan, look, measured }: CheckView, lightIds: readonly string[], stops: number): EditResult | null {
  const edits = lightIds.map((id): EditResult | null => {
    const light = look.lights[id]
    const head = light && plan.heads[light.headId]
    const energyJoules = light ? light.energyJoules * timesFromStops(stops) : 0
    if (!head || energyJoules > head.fullEnergyJoules || energyJoules < head.lowestEnergyJoules) return null
    return setPower(plan, measured.lookId, id, energyJoules)
  })
  return inOne('setPower', edits)
}

/** Moves a light along its line to `towards` until it is `metres` away, at another power. */
export function movedTo(
  { plan, look, measured }: CheckView, lightId: string, towards: Vector, metres: number, energyJoules: number,
): EditResult | null {
  const light = look.lights[lightId]
  if (!light) return null
  const offset = subtract(vectorOf(light.place), towards)
  const now = Math.sqrt(offset[0] * offset[0] + offset[1] * offset[1] + offset[2] * offset[2])
  if (now < 0.01) return null
  const [xMetres, yMetres, zMetres] = add(towards, scale(offset, metres / now))
  return inOne('moveLight', [
    moveLight(plan, measured.lookId, lightId, { xMetres, yMetres, zMetres }),
    setPower(plan, measured.lookId, lightId, energyJoules),
  ])
}

/** Several edits as one; null when there is none or one of them was refused. */
export function inOne(name: string, results: readonly (EditResult | null)[]): EditResult | null {
  const edits = results.flatMap((result) => (result?.ok ? [result.edit] : []))
  return edits.length === 0 || edits.length < results.length ? null : { ok: true, edit: together(name, ...edits) }
}
