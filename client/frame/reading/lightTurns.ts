import type { Look } from '../../../shared-core/plan/schema/look.ts'

/** A light's place among the look's letters: what its tint in a view goes by, whether others are on or not. */
export function turnOf(look: Pick<Look, 'lights'>, lightId: string): number {
  const letter = (id: string): string => look.lights[id]?.letter ?? ''
  return Object.keys(look.lights).filter((id) => letter(id) < letter(lightId)).length
}
