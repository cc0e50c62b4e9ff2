import type { CameraRgb } from '../colour/triples.ts'
import type { Prediction } from '../predict/prediction.ts'

/** What every light alone gives every area, as camera channels relative to clip: light adds, so this is the look in full. */
export interface AreaLight {
  /** Areas x lights x three channels. */
  readonly byLight: Float64Array
  /** The room's own light: areas x three channels. */
  readonly room: Float64Array
}

/**
 * The named areas' light of a prediction. An area that it does not have (a lit front that is hidden now) keeps the light it
 * has in `otherwise`.
 */
export function areaLightOf(
  prediction: Prediction, areaIds: readonly string[], lightIds: readonly string[], otherwise: AreaLight | null = null,
): AreaLight {
  const byLight = otherwise === null ? new Float64Array(3 * areaIds.length * lightIds.length) : otherwise.byLight.slice()
  const room = otherwise === null ? new Float64Array(3 * areaIds.length) : otherwise.room.slice()
  areaIds.forEach((id, a) => {
    const area = prediction.areas.find((one) => one.id === id)
    if (!area) return
    for (let k = 0; k < 3; k++) room[3 * a + k] = Math.max(0, area.colour.channels[k]! - area.byLight.reduce((sum, one) => sum + one.channels[k]!, 0))
    lightIds.forEach((lightId, l) => {
      const from = area.byLight.find((one) => one.lightId === lightId)
      byLight.set(from?.channels ?? [0, 0, 0], 3 * (a * lightIds.length + l))
    })
  })
  return { byLight, room }
}

/** The same with one light times something; 0 is off. */
export function withLightTimes({ byLight, room }: AreaLight, light: number, lightCount: number, times: number): AreaLight {
  const changed = byLight.slice()
  for (let at = 3 * light; at < changed.length; at += 3 * lightCount) {
    for (let k = at; k < at + 3; k++) changed[k] = changed[k]! * times
  }
  return { byLight: changed, room }
}

/** Mean over the areas by channel: what the lens's stray light grows and falls with. */
export function meanChannels({ byLight, room }: AreaLight): CameraRgb {
  const mean: [number, number, number] = [0, 0, 0]
  for (const values of [byLight, room]) values.forEach((value, at) => { mean[at % 3] = mean[at % 3]! + (3 * value) / room.length })
  return mean
}
