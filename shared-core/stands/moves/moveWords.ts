import { formatLength } from '../../plan/entry/length.ts'
import type { Plan } from '../../plan/schema/plan.ts'
import { gridWords } from '../../ask/lightChangeWords.ts'
import { tapedFrom } from '../marks.ts'
import { offset, wayWords } from '../sinceTick.ts'
import type { MoveContext } from './moveContext.ts'
import type { RiggedLight } from './rigged.ts'

export function modifierName(plan: Plan, { modifierId }: RiggedLight): string {
  return plan.modifiers[modifierId]?.name ?? 'its modifier'
}

export function gridOnWords(grid: RiggedLight['grid']): string {
  return gridWords(grid).replace(/^with a /, '')
}

/** "Moss out, Pistachio in at the head" */
export function gelWords(plan: Plan, to: RiggedLight, from?: RiggedLight): string {
  const named = (ids: readonly string[]): string => ids.map((id) => plan.gels[id]?.name ?? id).join(' + ')
  const out = from === undefined || from.gelIds.length === 0 ? '' : `${named(from.gelIds)} out`
  if (to.gelIds.length === 0) return `${out}: clear`
  return `${out === '' ? '' : `${out}, `}${named(to.gelIds)} ${to.gelPlace === 'at-the-head' ? 'in at the head' : 'over the front'}`
}

/** Which way and how far it goes, then where it stands by two tapes and its height. */
export function placeWords(from: RiggedLight | null, to: RiggedLight, context: MoveContext): readonly string[] {
  const way = from === null ? '' : wayWords(offset(from.place, to.place), context.units).join(', ')
  return [...(way === '' ? [] : [way]), tapedWords(to.place.xMetres, to.place.yMetres, context), `front ${formatLength(to.place.zMetres, context.units)} high, aimed as the rig sheet says`]
}

/** "1.82 m from the T, 0.95 m from the camera-left end of the paper, camera right of the line between them" */
export function tapedWords(xMetres: number, yMetres: number, { marks, units }: Pick<MoveContext, 'marks' | 'units'>): string {
  const { from, side } = tapedFrom(marks, xMetres, yMetres)
  const tapes = from.map(({ mark, floorMetres }) => `${formatLength(floorMetres, units)} from ${mark.words}`).join(', ')
  return side === null ? tapes : `${tapes}, ${side}`
}
