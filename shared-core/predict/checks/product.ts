import { capital } from '../../plan/capital.ts'
import { planCleanPlate } from '../../plan/edits/snags.ts'
import type { Snag } from '../snag.ts'
import { trueColour } from '../trueColour.ts'
import { amountText, mendBy, type Check } from './check.ts'

/** Channels further apart than this from clear light show on a product's colour (common practice, no source). */
const TRUE_STOPS = 0.2
/** Said when no clear light reaches the place at all. */
const NOTHING_CLEAR_STOPS = 99

/**
 * What must read true is as clear light alone would show it: all lights against the clear ones, channel by channel. A
 * level that rises in all channels alike changes no colour.
 */
export const mustReadTrue: Check = ({ plan, look, measured: { areas, lights, lookId, taking } }) =>
  Object.entries(look.mustReadTrue).flatMap(([areaId, { cleanPlatePlanned }]): Snag[] => {
    const area = areas.find(({ id }) => id === areaId)
    if (!area || cleanPlatePlanned) return []
    const { shiftStops, spreadStops } = trueColour(area, lights, taking, look.finish)
    const spread = spreadStops ?? NOTHING_CLEAR_STOPS
    if (spread <= TRUE_STOPS) return []
    const strongest = shiftStops === null ? '' : ['red', 'green', 'blue'][shiftStops.indexOf(Math.max(...shiftStops))]!
    return [{
      key: `must-read-true:${areaId}`,
      rule: 'must-read-true',
      severity: 'look',
      message: shiftStops === null
        ? `${capital(area.label)} must read true, but no clear light reaches it`
        : `${capital(area.label)} must read true: coloured light pushes ${strongest} by ${amountText(spread)}`,
      action: 'Plan a clean plate by clear light alone, or keep the colour off it with a flag',
      value: spread,
      threshold: TRUE_STOPS,
      unit: 'stops between channels',
      about: [areaId],
      ...mendBy('Plan a clean plate', planCleanPlate(plan, lookId, areaId, true)),
    }]
  })
