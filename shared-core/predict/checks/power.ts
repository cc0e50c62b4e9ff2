import type { LightPrediction } from '../prediction.ts'
import { amountText, mendBy, type Check, type CheckView } from './check.ts'
import { movedTo } from './lightMends.ts'
import { timesFromStops } from '../../arithmetic/portable.ts'

/** Keep three tenths in hand at either end (common practice, no source). */
const MARGIN_STOPS = 0.3

/** Rounding of a setting at the very end of the range. */
const ROUNDING_STOPS = 1e-6

/**
 * Is the wanted level within the head's range? A light without a wanted level is judged by its own setting, which the
 * plan may hold outside the range after a change of head.
 */
export const outOfPower: Check = (view) =>
  view.measured.lights.flatMap((light) => {
    if (!light.on) return []
    const short = Math.max(missingStops(light) - light.stopsInHand, light.stopsInHand < -ROUNDING_STOPS ? -light.stopsInHand : -Infinity)
    if (short <= -MARGIN_STOPS) return []
    const cannot = short > 0.05
    const nearerMetres = light.distanceMetres / timesFromStops((Math.max(short, 0) + MARGIN_STOPS) / 2)
    return [{
      key: `out-of-power:${light.id}`,
      rule: 'out-of-power',
      severity: cannot ? 'stop' : 'note',
      message: cannot
        ? `${light.letter} is out of power by ${amountText(short)} stop`
        : `${light.letter} has only ${amountText(short)} stop in hand`,
      action: cannot
        ? `Move ${light.letter} in towards ${nearerMetres.toFixed(2)} m, double the ISO (one stop), or add a head`
        : `Keep it, or move ${light.letter} a little nearer`,
      value: -short,
      threshold: MARGIN_STOPS,
      unit: 'stops in hand',
      about: [light.id],
      ...(cannot ? moveWithin(view, light, nearerMetres, 'in', -light.stopsFromFull - MARGIN_STOPS) : {}),
    }]
  })

export const tooStrong: Check = (view) =>
  view.measured.lights.flatMap((light) => {
    if (!light.on) return []
    const over = Math.max(-missingStops(light) - light.stopsAboveLowest, light.stopsAboveLowest < -ROUNDING_STOPS ? -light.stopsAboveLowest : -Infinity)
    if (over <= -MARGIN_STOPS) return []
    const cannot = over > 0.05
    const furtherMetres = light.distanceMetres * timesFromStops((Math.max(over, 0) + MARGIN_STOPS) / 2)
    return [{
      key: `too-strong:${light.id}`,
      rule: 'too-strong',
      severity: cannot ? 'stop' : 'note',
      message: cannot
        ? `${light.letter} is ${amountText(over)} stop too strong at its lowest power`
        : `${light.letter} is ${amountText(over)} stop from its lowest power`,
      action: cannot
        ? `Move ${light.letter} back towards ${furtherMetres.toFixed(2)} m, add a neutral sheet, or lower the ISO`
        : `Keep it, or move ${light.letter} back a little`,
      value: -over,
      threshold: MARGIN_STOPS,
      unit: 'stops above lowest',
      about: [light.id],
      ...(cannot ? moveWithin(view, light, furtherMetres, 'back', MARGIN_STOPS - light.stopsAboveLowest) : {}),
    }]
  })

/** Along its own line to where the margin is left, with the power that leaves it. */
function moveWithin(view: CheckView, light: LightPrediction, metres: number, way: 'in' | 'back', stops: number) {
  const served = view.measured.areas.find(({ id }) => id === light.serves)
  if (!served) return {}
  const moved = movedTo(view, light.id, served.place, metres, light.energyJoules * timesFromStops(stops))
  return mendBy(`Move ${light.letter} ${way} to ${metres.toFixed(2)} m`, moved)
}

/** How much more (positive) the light must give for its wanted level; nothing wanted means it is where it should be. */
function missingStops(light: { wantedStops: number | null; level: { stops: number | null } }): number {
  if (light.wantedStops === null || light.level.stops === null) return 0
  const missing = light.wantedStops - light.level.stops
  // Within a head's step the setting is as near as it gets; only a real shortfall counts.
  return Math.abs(missing) < 0.15 ? 0 : missing
}
