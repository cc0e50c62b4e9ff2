import { distance } from '../arithmetic/vector.ts'
import { formatFNumber } from '../plan/entry/aperture.ts'
import { formatIso } from '../plan/entry/camera.ts'
import { formatPower } from '../plan/entry/power.ts'
import type { Light } from '../plan/schema/look.ts'
import { vectorOf } from '../set/emitter.ts'
import type { Step } from './costs.ts'
import { lookOf } from './draft.ts'
import { gelNames } from './wantWords.ts'

/** Nobody moves a stand by less. */
const MOVED_METRES = 0.005

/** Each move somebody must make from one plan to another: camera first, then by light; powers last, as one sets them last. */
export function movesOf(step: Step): string[] {
  const { before, after } = step
  const [from, to] = [lookOf(before), lookOf(after)]
  const camera = [
    ...(from.camera.fNumber === to.camera.fNumber ? [] : [`Camera to ${formatFNumber(to.camera.fNumber)}`]),
    ...(from.camera.isoSpeed === to.camera.isoSpeed ? [] : [`Camera to ${formatIso(to.camera.isoSpeed)}`]),
  ]
  const lights = Object.entries(to.lights).map(([id, light]) => lightMoves(step, id, from.lights[id], light))
  return [...camera, ...lights.flatMap(({ stand }) => stand), ...lights.flatMap(({ power }) => power)]
}

function lightMoves({ after, to }: Step, id: string, old: Light | undefined, light: Light): { stand: string[]; power: string[] } {
  const { plan } = after
  const { letter } = light
  const head = plan.heads[light.headId]
  const modifier = plan.modifiers[light.modifierId]?.name ?? 'modifier'
  const powerText = head ? formatPower(light.energyJoules, head) : ''
  if (!old) return { stand: [`Set up ${letter}: ${head?.name ?? 'head'}, ${modifier}, ${gelNames(light.gelIds, plan)}`], power: [`${letter} at ${powerText}`] }
  const stand: string[] = []
  if (old.headId !== light.headId) stand.push(`${letter}: ${head?.name ?? 'head'} in place of ${plan.heads[old.headId]?.name ?? 'its head'}`)
  if (old.modifierId !== light.modifierId) stand.push(`${letter}: ${modifier} in place of ${plan.modifiers[old.modifierId]?.name ?? 'its modifier'}`)
  if (old.grid.kind !== light.grid.kind) stand.push(light.grid.kind === 'none' ? `${letter}: take the grid off` : `${letter}: put a ${light.grid.kind} grid on`)
  if (old.gelIds.join() !== light.gelIds.join()) stand.push(`${letter}: ${gelNames(light.gelIds, plan)} in place of ${gelNames(old.gelIds, plan)}`)
  const moved = distance(vectorOf(old.place), vectorOf(light.place))
  if (moved > MOVED_METRES) {
    const isNearer = distance(vectorOf(light.place), vectorOf(light.aim)) < distance(vectorOf(old.place), vectorOf(old.aim))
    const metres = to.lights.find((each) => each.id === id)?.distanceMetres ?? 0
    stand.push(`Move ${letter} ${Math.round(moved * 100)} cm ${isNearer ? 'in' : 'back'}, to ${metres.toFixed(2)} m`)
  }
  const hadText = head && old.headId === light.headId ? formatPower(old.energyJoules, head) : ''
  return { stand, power: powerText === hadText ? [] : [`${letter} to ${powerText}${hadText === '' ? '' : ` (was ${hadText})`}`] }
}
