import { formatPower } from '../../plan/entry/power.ts'
import { formatLength, type Units } from '../../plan/entry/length.ts'
import { formatFNumber } from '../../plan/entry/aperture.ts'
import type { Plan } from '../../plan/schema/plan.ts'
import { asShotKey, type AsShot } from '../../rig/asShot.ts'
import type { Stand } from '../../stands/stand.ts'
import { shotWords } from '../asShot.ts'
import { dayText } from './intent.ts'
import { photographLines, type HandedPhotograph } from './photographs.ts'

/** Each stand as it truly stood, what was otherwise than planned, and its photographs. */
export function asShotText(
  plan: Plan, lookId: string, stands: readonly Stand[], entries: Readonly<Record<string, AsShot>>, photographs: readonly HandedPhotograph[], units: Units,
): string {
  const lines = stands.flatMap((stand): string[] => {
    const entry = entries[asShotKey(lookId, stand.id)]
    const photographed = photographLines(photographs.filter(({ standId }) => standId === stand.id))
    if (entry === undefined) return [`${stand.name}: not recorded at wrap; the plan is all that is known${photographed.length === 0 ? '' : ' beside its photographs'}.`, ...photographed, '']
    const { shot } = entry
    const otherwise = shotWords(entry, stand, plan, units)
    const tapes = stand.taped.from.map(({ mark }, i) => `${formatLength(shot.tapesMetres[i]!, units)} from ${mark.words}`).join(', ')
    return [
      `${stand.name}: ${tapes}${stand.taped.side === null ? '' : `, ${stand.taped.side}`}; ${formatLength(shot.heightMetres, units)} high.`,
      ...(stand.kind === 'light' ? [`  ${stand.modifier?.name ?? 'bare head'}, ${shot.gelIds.length === 0 ? 'clear' : shot.gelIds.map((id) => plan.gels[id]?.name ?? id).join(' + ')}, ${powerText(stand, shot.energyJoules)}${shot.frontToMetres === null ? '' : `, front to the ${stand.frontTo} ${formatLength(shot.frontToMetres, units)}`}${shot.readingFNumber === null ? '' : `, reads ${formatFNumber(shot.readingFNumber)} there`}.`] : []),
      ...(otherwise.length === 0 ? ['  As planned.'] : otherwise.map((words) => `  Otherwise: ${words}.`)),
      ...photographed,
      `  Recorded by ${entry.by.name}, ${dayText(entry.by.atMs)}.`, '',
    ]
  })
  const others = photographLines(photographs.filter(({ standId }) => stands.every(({ id }) => id !== standId)))
  return [`“${plan.looks[lookId]!.name}” as shot`, '', ...lines, ...(others.length === 0 ? [] : ['Of stands that are no longer in the look:', ...others, ''])].join('\n')
}

function powerText({ head, light }: Extract<Stand, { kind: 'light' }>, joules: number | null): string {
  const energy = joules ?? light.energyJoules
  return head === null ? `${Math.round(energy)} Ws` : `power ${formatPower(energy, head)}`
}
