import type { Look } from '../../plan/schema/look.ts'
import type { Snag } from '../snag.ts'
import type { Spill } from '../prediction.ts'
import { capital } from '../../plan/capital.ts'
import { amountText, mendBy, type Check, type CheckView } from './check.ts'
import { gridOn } from './lightMends.ts'

/** Another light where one is the owner of the colour; the threshold travels with each spill. The background speaks once, at its worst. */
export const spill: Check = (view) => {
  const { look, measured } = view
  const worst = new Map<string, Spill>()
  for (const found of measured.spills) {
    if (found.stopsUnder >= found.thresholdStops || !matters(found, look)) continue
    const key = `${found.diluterIsClear ? 'spill' : 'second-colour'}:${found.diluterLightId}:${placeOf(found)}`
    const before = worst.get(key)
    if (!before || found.stopsUnder < before.stopsUnder) worst.set(key, found)
  }
  return [...worst].map(([key, found]) => snagOf(key, found, view))
}

/** A glow is meant to die away: what lies over its dark corners is not a fault of the picture. */
function matters({ areaId }: Spill, look: Look): boolean {
  return look.backdrop.intent !== 'glow' || !areaId.startsWith('background-') || areaId === 'background-centre'
}

function placeOf({ areaId }: Spill): string {
  return areaId.startsWith('background-') ? 'background' : areaId
}

function snagOf(key: string, found: Spill, view: CheckView): Snag {
  const { look, measured } = view
  const gridded = gridOn(view, found.diluterLightId)
  const diluter = look.lights[found.diluterLightId]?.letter ?? 'another light'
  const owner = look.lights[found.ownerLightId]?.letter ?? 'its light'
  const hasNoGel = measured.lights.some(({ id, gel }) => id === found.diluterLightId && gel.clear)
  // A gel that the white balance all but cancels dilutes like clear light, but has sheets in it.
  const kind = !found.diluterIsClear ? 'colour' : hasNoGel ? 'clear light' : 'pale colour'
  const isOver = found.stopsUnder < 0
  const place = capital(found.areaLabel)
  return {
    key,
    rule: found.diluterIsClear ? 'spill' : 'second-colour',
    severity: 'look',
    message: isOver
      ? `${place}: ${diluter}’s ${kind} is ${amountText(found.stopsUnder)} over ${owner} and washes it out`
      : `${place}: ${diluter}’s ${kind} is ${amountText(found.stopsUnder)} under ${owner}, wants ${amountText(found.thresholdStops)}`,
    action: cureFor(found, diluter, gridded !== null),
    value: found.stopsUnder,
    threshold: found.thresholdStops,
    unit: 'stops under',
    about: [found.diluterLightId, found.areaId],
    ...mendBy(`Grid ${diluter}`, gridded),
  }
}

function cureFor(found: Spill, diluter: string, takesGrid: boolean): string {
  if (takesGrid) return `Grid ${diluter}, or flag it off there`
  return placeOf(found) === 'background'
    ? `Move the backdrop further from ${diluter}, or flag ${diluter} off there`
    : `Flag ${diluter} off there, or turn it away`
}
