import { own } from '../edits/lookAt.ts'
import { namedAreas, type Light, type Look } from '../schema/look.ts'
import type { Plan } from '../schema/plan.ts'
import { MOST_PROBLEMS, pathText, type Problem } from './problem.ts'

/** What the schema cannot see: that things named in one part of the plan exist in another, and make sense together. */
export function crossChecks(plan: Plan): Problem[] {
  return [
    ...Object.entries(plan.heads).flatMap(([id, head]) =>
      head.lowestEnergyJoules < head.fullEnergyJoules
        ? []
        : [{ path: pathText(['heads', id, 'lowestEnergyJoules']), message: 'is not below the head’s full power' }],
    ),
    ...(Object.keys(plan.looks).length === 0 ? [{ path: 'looks', message: 'holds no look; a job has at least one' }] : []),
    ...Object.entries(plan.looks).flatMap(([lookId, look]) =>
      Object.entries(look.lights).flatMap(([lightId, light]) =>
        lightProblems(plan, look, light).map(({ path, message }) => ({
          path: `${pathText(['looks', lookId, 'lights', lightId])}.${path}`,
          message,
        })),
      ),
    ),
  ].slice(0, MOST_PROBLEMS)
}

function lightProblems(plan: Plan, look: Look, light: Light): Problem[] {
  const problems: Problem[] = []
  if (!own(plan.heads, light.headId)) problems.push({ path: 'headId', message: 'names a head that is not in the kit' })
  if (!own(plan.modifiers, light.modifierId)) {
    problems.push({ path: 'modifierId', message: 'names a modifier that is not in the kit' })
  }
  light.gelIds.forEach((id, index) => {
    if (!own(plan.gels, id)) problems.push({ path: `gelIds.${index}`, message: 'names a gel that is not in the drawer' })
  })
  if (!isMetered(look, light.serves)) {
    problems.push({ path: 'serves', message: 'names neither an area of the subject or background nor a point of this look' })
  }
  return problems
}

/** Whether a light can be metered there: a named area or a point somebody added to the look. */
export function isMetered(look: Pick<Look, 'points'>, areaId: string): boolean {
  return (namedAreas as readonly string[]).includes(areaId) || own(look.points, areaId) !== undefined
}
