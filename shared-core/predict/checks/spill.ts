import { amountText, type Check } from './check.ts'

/** R1, R2 (common practice, no source); the threshold travels with each spill. */
export const spill: Check = ({ look, measured }) =>
  measured.spills.filter((spill) => spill.stopsUnder < spill.thresholdStops).map((spill) => {
    const diluter = look.lights[spill.diluterLightId]
    const owner = look.lights[spill.ownerLightId]
    const kind = spill.diluterIsClear ? 'clear light' : 'colour'
    const onBackground = spill.areaId.startsWith('background')
    const cure = diluter?.grid.kind === 'none'
      ? `Grid ${diluter.letter}, or flag it off there`
      : onBackground
        ? `Move the backdrop further from ${diluter?.letter ?? 'it'}, or flag it off there`
        : `Flag ${diluter?.letter ?? 'it'} off there, or turn it away`
    return {
      key: `${spill.diluterIsClear ? 'spill' : 'second-colour'}:${spill.diluterLightId}:${spill.areaId}`,
      rule: spill.diluterIsClear ? 'spill' as const : 'second-colour' as const,
      severity: 'look' as const,
      message: spill.stopsUnder >= 0
        ? `${spill.areaLabel}: ${diluter?.letter}'s ${kind} is ${amountText(spill.stopsUnder)} under ${owner?.letter}, wants ${amountText(spill.thresholdStops)}`
        : `${spill.areaLabel}: ${diluter?.letter}'s ${kind} is ${amountText(spill.stopsUnder)} over ${owner?.letter} and washes it out`,
      action: cure,
      value: spill.stopsUnder,
      threshold: spill.thresholdStops,
      unit: 'stops under',
      about: [spill.diluterLightId, spill.areaId],
    }
  })
