import { degreesFromRadians } from '../arithmetic/portable.ts'
import { distance } from '../arithmetic/vector.ts'
import type { Light } from '../plan/schema/look.ts'
import type { Head, Modifier } from '../plan/schema/kit.ts'
import { powerRoom, recycleAtEnergy, stopsFromFull, t01AtEnergy } from '../exposure/power.ts'
import { formatPower } from '../plan/entry/power.ts'
import { vectorOf } from '../set/emitter.ts'
import type { LightColour } from './lightColour.ts'
import type { GelPrediction, LightPrediction, MeterReading } from './prediction.ts'
import type { Site } from './sites.ts'

/** Spread of heads and modifiers before any reading, in stops either way (common practice, no source). */
export const UNMEASURED_SPREAD_STOPS = 2 / 3
/** A dense sheet adds its own doubt: about a tenth of what it loses. */
export const GEL_SPREAD_SHARE = 0.1

export interface LightParts {
  readonly id: string
  readonly light: Light
  readonly head: Head
  readonly modifier: Modifier
  readonly colour: LightColour
  readonly gel: GelPrediction
  readonly serves: Site
  readonly level: MeterReading
}

/** What a light gives where it serves, what its power allows, and how sure that is. */
export function lightPrediction({ id, light, head, modifier, colour, gel, serves, level }: LightParts): LightPrediction {
  const front = vectorOf(light.place)
  const distanceMetres = distance(front, serves.receiver.place)
  const sizeMetres = Math.sqrt(modifier.widthMetres * modifier.heightMetres)
  const room = powerRoom(head, light.energyJoules)
  const gelSpread = gel.meterLossStops * GEL_SPREAD_SHARE
  return {
    id,
    letter: light.letter,
    plane: light.plane,
    on: light.on,
    summary: [modifier.name, gridText(light), gel.name].filter(Boolean).join(' · '),
    serves: serves.id,
    level,
    wantedStops: light.wantedStops,
    distanceMetres,
    apparentSizeDegrees: degreesFromRadians(2 * Math.atan(sizeMetres / 2 / Math.max(distanceMetres, 0.01))),
    energyJoules: light.energyJoules,
    stopsFromFull: stopsFromFull(head, light.energyJoules),
    powerText: formatPower(light.energyJoules, head),
    stopsInHand: room.stopsInHand,
    stopsAboveLowest: room.stopsAboveLowest,
    recycleSeconds: recycleAtEnergy(head, head.recycleSecondsAtFull, light.energyJoules),
    t01Seconds: t01AtEnergy(head, head.t01SecondsAtFull, light.energyJoules),
    colourTemperatureKelvin: colour.colourTemperatureKelvin,
    gel,
    plusMinusStops: Math.sqrt(UNMEASURED_SPREAD_STOPS * UNMEASURED_SPREAD_STOPS + gelSpread * gelSpread),
  }
}

function gridText(light: Light): string {
  switch (light.grid.kind) {
    case 'honeycomb':
      return `${light.grid.openingDegrees}° honeycomb`
    case 'fabric':
      return 'fabric grid'
    case 'none':
      return ''
  }
}
