import { stopsFromTimes, timesFromStops } from '../../arithmetic/portable.ts'
import { distance } from '../../arithmetic/vector.ts'
import { formatStops } from '../../plan/entry/stops.ts'
import { changeHead, changeModifier } from '../../plan/edits/kit.ts'
import { vectorOf } from '../../set/emitter.ts'
import { DENSE_GEL_METER_LOSS_STOPS } from '../gelOpening.ts'
import type { AreaPrediction } from '../prediction.ts'
import type { Snag } from '../snag.ts'
import { amountText, centimetresText, mendBy, type Check, type CheckView } from './check.ts'
import { movedTo, powersBy } from './lightMends.ts'
import { NEAR_FACE_METRES } from './nearFace.ts'

/** Dense gel above half power may burn or fade (common practice, no source). */
const HALF_POWER_STOPS_FROM_FULL = -1
/** Back past the limit by as much as a stand is placed to. */
const CLEAR_OF_FACE_METRES = NEAR_FACE_METRES + 0.05
/** Two tenths of a stop under clip. */
const CLEAR_OF_CLIP = timesFromStops(-0.2)
/** Fall-off over a face for beauty work (common practice, no source). */
const FALL_OFF_STOPS = 0.5
/** A gel with this much between its best and worst channel has a colour to lose, and loses it from this level up. */
const RICH_GEL_STOPS = 1.5
const PALE_FROM_STOPS = -1
const RICH_AT_STOPS = -1.7

export const headNearFace: Check = (view) => {
  const { look, measured } = view
  const nose = measured.areas.find((area) => area.id === 'nose')
  if (!nose) return []
  return measured.lights.flatMap((light) => {
    const at = look.lights[light.id]?.place
    if (!at) return []
    const metres = distance(vectorOf(at), nose.place)
    if (metres >= NEAR_FACE_METRES) return []
    return [{
      key: `head-near-face:${light.id}`,
      rule: 'head-near-face' as const,
      severity: 'stop' as const,
      message: `${light.letter} is ${centimetresText(metres)} from the face`,
      action: `Move ${light.letter} back past ${centimetresText(NEAR_FACE_METRES)}; if it must stay, lowest power, diffusion on, and warn before every test flash`,
      value: metres,
      threshold: NEAR_FACE_METRES,
      unit: 'm',
      about: [light.id],
      ...mendBy(`Move ${light.letter} back to ${centimetresText(CLEAR_OF_FACE_METRES)}`,
        movedTo(view, light.id, nose.place, CLEAR_OF_FACE_METRES, light.energyJoules)),
    }]
  })
}

export const gelHeat: Check = ({ plan, look, measured }) =>
  measured.lights.flatMap((light): Snag[] => {
    const setup = look.lights[light.id]
    const head = setup && plan.heads[setup.headId]
    if (!setup || !head || light.gel.clear) return []
    if (setup.gelPlace === 'at-the-head' && head.modellingLamp === 'halogen' && head.modellingLampWatts > 0) {
      return [{
        key: `gel-heat:${light.id}`,
        rule: 'gel-heat' as const,
        severity: 'stop' as const,
        message: `${light.letter}’s gel sits at a ${Math.round(head.modellingLampWatts)} W halogen lamp`,
        action: 'Switch the modelling lamp off or use an LED one, keep 2–5 cm of air, and never lay the gel on tube or glass',
        value: head.modellingLampWatts,
        threshold: 0,
        unit: 'W',
        about: [light.id],
        ...mendBy(`Lamps off on ${head.name}`, changeHead(plan, setup.headId, { modellingLampWatts: 0 })),
      }]
    }
    if (light.gel.meterLossStops < DENSE_GEL_METER_LOSS_STOPS || light.stopsFromFull < HALF_POWER_STOPS_FROM_FULL) return []
    return [{
      key: `gel-heat:${light.id}`,
      rule: 'gel-heat' as const,
      severity: 'note' as const,
      message: `${light.letter} drives a dense gel (${amountText(light.gel.meterLossStops)} stops) above half power: it may fade or warp`,
      action: 'Pack a second cut, look at it between sets, and leave time between flashes',
      value: light.stopsFromFull,
      threshold: HALF_POWER_STOPS_FROM_FULL,
      unit: 'stops from full',
      about: [light.id],
    }]
  })

/** A gelled light near the key's level looks pale. Rich colour sits one and a half to two stops under. */
export const gelLevel: Check = (view) => {
  const { look, measured } = view
  const wantsRichPaper = look.backdrop.intent === 'even-colour' && measured.background.behind !== 'front'
  return measured.lights.flatMap((light): Snag[] => {
    const isRichGel = !light.gel.clear && light.gel.whiteOutStops - light.gel.strongestChannelLossStops > RICH_GEL_STOPS
    const wantsRich = light.plane === 'shadow-side' || (light.plane === 'background' && wantsRichPaper)
    const level = light.level.stops
    if (!light.on || !isRichGel || !wantsRich || level === null || level <= PALE_FROM_STOPS) return []
    return [{
      key: `gel-level:${light.id}`,
      rule: 'gel-level',
      severity: 'note',
      message: `${light.letter}’s colour stands at ${formatStops(level)}: pale rather than rich`,
      action: `For a rich colour take ${light.letter} to between −1.5 and −2`,
      value: level,
      threshold: PALE_FROM_STOPS,
      unit: 'stops',
      about: [light.id],
      ...mendBy(`${light.letter} to ${formatStops(RICH_AT_STOPS)}`, powersBy(view, [light.id], RICH_AT_STOPS - level)),
    }]
  })
}

/** Fall-off over the face, read from the key on the face: nose against the far jaw line and breastbone. */
export const fallOff: Check = ({ measured }) => {
  const key = measured.lights.find((light) => light.on && light.plane === 'front' && light.gel.clear)
  if (!key) return []
  const stopsAt = (areaId: string): number | null => {
    const area = measured.areas.find((found) => found.id === areaId)
    return area?.byLight.find((given) => given.lightId === key.id)?.stops ?? null
  }
  const nose = stopsAt('nose')
  const breastbone = stopsAt('breastbone')
  if (nose === null || breastbone === null || nose - breastbone <= FALL_OFF_STOPS) return []
  return [{
    key: `fall-off:${key.id}`,
    rule: 'fall-off',
    severity: 'note',
    message: `${key.letter} falls off ${amountText(nose - breastbone)} stops from nose to breastbone`,
    action: `Move ${key.letter} back, or feather it down`,
    value: nose - breastbone,
    threshold: FALL_OFF_STOPS,
    unit: 'stops',
    about: [key.id],
  }]
}

/** Under coloured light one channel clips on skin or cloth before the meter warns. */
export const channelClips: Check = (view) =>
  view.measured.areas.flatMap((area) => {
    if (area.material === 'backdrop' || area.material === 'front' || area.material === 'point' || !area.inFrame) return []
    const names = ['red', 'green', 'blue'].filter((_, i) => area.colour.clipped[i])
    if (names.length === 0 || names.length === 3) return []
    const over = Math.log2(Math.max(...area.colour.channels))
    return [{
      key: `channel-clips:${area.id}`,
      rule: 'channel-clips' as const,
      severity: 'look' as const,
      message: `The ${names.join(' and ')} channel clips on the ${area.label}`,
      action: `Lower what lights it by ${amountText(over + 0.2)} stops; the meter will not show this`,
      value: over,
      threshold: 0,
      unit: 'stops over clip',
      about: [area.id],
      ...lowerWhatClips(view, area),
    }]
  })

/** The strongest light there, down until no channel clips; nothing when that light alone cannot do it. */
function lowerWhatClips(view: CheckView, { byLight, colour }: AreaPrediction) {
  const strongest = byLight.reduce((a, b) => (Math.max(...b.channels) > Math.max(...a.channels) ? b : a))
  const shares = colour.channels.map((all, k) => {
    const own = strongest.channels[k]!
    return own > 0 ? (CLEAR_OF_CLIP - (all - own)) / own : 1
  })
  const times = Math.min(1, ...shares)
  if (times <= 0) return {}
  const stops = stopsFromTimes(times)
  const letter = view.look.lights[strongest.lightId]?.letter ?? ''
  return mendBy(`Lower ${letter} by ${amountText(stops)}`, powersBy(view, [strongest.lightId], stops))
}

/** More pieces in use than the kit holds. */
export const kitShort: Check = ({ plan, look }) => {
  const used = (pick: 'headId' | 'modifierId'): Map<string, string[]> => {
    const byId = new Map<string, string[]>()
    for (const [id, light] of Object.entries(look.lights)) byId.set(light[pick], [...(byId.get(light[pick]) ?? []), id])
    return byId
  }
  const short = (kind: 'head' | 'modifier', lightsById: Map<string, string[]>, kit: Record<string, { name: string; count: number }>) =>
    [...lightsById].flatMap(([id, lightIds]) => {
      const entry = kit[id]
      if (!entry || lightIds.length <= entry.count) return []
      return [{
        key: `kit-short:${kind}:${id}`,
        rule: 'kit-short' as const,
        severity: 'note' as const,
        message: `${lightIds.length} lights use ${entry.name}, the kit has ${entry.count}`,
        action: `Hire ${lightIds.length - entry.count} more, or choose another ${kind}`,
        value: entry.count,
        threshold: lightIds.length,
        unit: 'pieces',
        about: lightIds,
        ...mendBy(`Hire ${lightIds.length - entry.count} more`, kind === 'head'
          ? changeHead(plan, id, { count: lightIds.length })
          : changeModifier(plan, id, { count: lightIds.length })),
      }]
    })
  return [...short('head', used('headId'), plan.heads), ...short('modifier', used('modifierId'), plan.modifiers)]
}
