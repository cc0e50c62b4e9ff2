import { stopsFromTimes, timesFromStops } from '../arithmetic/portable.ts'
import type { CameraRgb } from '../colour/triples.ts'
import type { AreaId } from '../predict/prediction.ts'

/** Darker than anything a want speaks of: what stands for no light at all where a number is needed. */
export const DARK_STOPS = -16

/** What one source gives at one area: at the look's receptor, and in the camera. */
export interface Part {
  readonly luxSeconds: number
  readonly channels: CameraRgb
}

export interface AreaParts {
  readonly label: string
  readonly ambient: Part
  /** In the order of the model's lights. */
  readonly lights: readonly Part[]
}

interface ModelParts {
  /** Lights that are on. */
  readonly lightIds: readonly string[]
  readonly whiteBalanceKelvin: number
  readonly areas: ReadonlyMap<AreaId, AreaParts>
  /** Lux-seconds at a dome held to each light where it serves. */
  readonly levels: readonly number[]
  /** Lux-seconds that the look's receptor, and a dome, read as the taking aperture. */
  readonly areaUnit: number
  readonly levelUnit: number
}

/**
 * A look as a sum of its lights, so that powers can be weighed without predicting again: light adds, and each light's
 * share goes with its energy. What is left out is the small drift of a flash's colour with its power, so what is found
 * here is predicted again.
 */
export class LookModel {
  readonly lightIds: readonly string[]
  readonly whiteBalanceKelvin: number
  private readonly areas: ReadonlyMap<AreaId, AreaParts>
  private readonly levels: readonly number[]
  private readonly areaUnit: number
  private readonly levelUnit: number

  constructor(private readonly parts: ModelParts) {
    this.lightIds = parts.lightIds
    this.whiteBalanceKelvin = parts.whiteBalanceKelvin
    this.areas = parts.areas
    this.levels = parts.levels
    this.areaUnit = parts.areaUnit
    this.levelUnit = parts.levelUnit
  }

  /** The same look with each light's own parts taken from another model of it, times a factor by area. */
  mixed(pick: (lightIndex: number) => { readonly from: LookModel; readonly timesAt: (areaId: AreaId) => number; readonly timesLevel: number }): LookModel {
    const picks = this.lightIds.map((_, i) => pick(i))
    const areas = new Map([...this.areas].map(([id, own]): [AreaId, AreaParts] => {
      const lights = picks.map(({ from, timesAt }, i): Part => {
        const part = from.areas.get(id)?.lights[i] ?? { luxSeconds: 0, channels: [0, 0, 0] }
        const times = timesAt(id)
        return { luxSeconds: part.luxSeconds * times, channels: [part.channels[0] * times, part.channels[1] * times, part.channels[2] * times] }
      })
      return [id, { ...own, lights }]
    }))
    return new LookModel({ ...this.parts, areas, levels: picks.map(({ from, timesLevel }, i) => from.levels[i]! * timesLevel) })
  }

  partsAt(areaId: AreaId): AreaParts | undefined {
    return this.areas.get(areaId)
  }

  levelOf(lightIndex: number): number {
    return this.levels[lightIndex] ?? 0
  }

  /** Areas of the background, which decide whether it reads white. */
  get behindIds(): readonly AreaId[] {
    return [...this.areas.keys()].filter((id) => id.startsWith('background-'))
  }

  /** The light that gives most at an area, by the look's receptor, among those allowed; null in the dark. */
  strongestAt(areaId: AreaId, isAllowed: (lightId: string) => boolean = () => true): string | null {
    const parts = this.areas.get(areaId)?.lights ?? []
    let best: string | null = null
    let most = 0
    this.lightIds.forEach((id, i) => {
      const given = parts[i]!.luxSeconds
      if (isAllowed(id) && given > most) [best, most] = [id, given]
    })
    return best
  }

  /** One light's share of an area's reading, 0-1. */
  shareAt(areaId: AreaId, lightId: string): number {
    const parts = this.areas.get(areaId)
    if (!parts) return 0
    const total = parts.lights.reduce((sum, part) => sum + part.luxSeconds, parts.ambient.luxSeconds)
    const own = parts.lights[this.lightIds.indexOf(lightId)]?.luxSeconds ?? 0
    return total > 0 ? own / total : 0
  }

  /**
   * What would be read with every light's energy multiplied.
   * @param times in the order of `lightIds`
   */
  at(times: readonly number[]): Readings {
    return new Readings(this, times)
  }

  asPredicted(): Readings {
    return this.at(this.lightIds.map(() => 1))
  }

  /** Before any stops: for sums. */
  areaLuxSeconds(areaId: AreaId, times: readonly number[]): number {
    const parts = this.areas.get(areaId)
    return parts ? parts.lights.reduce((sum, part, i) => sum + times[i]! * part.luxSeconds, parts.ambient.luxSeconds) : 0
  }

  /** Before any stops: for sums. */
  lightLuxSecondsAt(areaId: AreaId, lightIds: readonly string[], times: readonly number[]): number {
    const parts = this.areas.get(areaId)
    return lightIds.reduce((sum, id) => {
      const i = this.lightIds.indexOf(id)
      return i < 0 || !parts ? sum : sum + times[i]! * parts.lights[i]!.luxSeconds
    }, 0)
  }

  /** Before any stops: for sums. */
  levelLuxSeconds(lightIds: readonly string[], times: readonly number[]): number {
    return lightIds.reduce((sum, id) => {
      const i = this.lightIds.indexOf(id)
      return i < 0 ? sum : sum + times[i]! * this.levels[i]!
    }, 0)
  }

  /** Before any stops: for sums. */
  channels(areaId: AreaId, times: readonly number[]): CameraRgb {
    const parts = this.areas.get(areaId)
    if (!parts) return [0, 0, 0]
    let [red, green, blue] = parts.ambient.channels
    parts.lights.forEach(({ channels }, i) => {
      red += times[i]! * channels[0]
      green += times[i]! * channels[1]
      blue += times[i]! * channels[2]
    })
    return [red, green, blue]
  }

  /** Lux-seconds that the look's receptor reads as these stops from the aperture. */
  areaUnitAt(stops: number): number {
    return this.areaUnit * timesFromStops(stops)
  }

  /** The same for a dome held to its light. */
  levelUnitAt(stops: number): number {
    return this.levelUnit * timesFromStops(stops)
  }

  areaStops(luxSeconds: number): number {
    return stopsOrDark(luxSeconds / this.areaUnit)
  }

  levelStops(luxSeconds: number): number {
    return stopsOrDark(luxSeconds / this.levelUnit)
  }
}

/** What meter and camera show of a look at given energies. */
export class Readings {
  constructor(readonly model: LookModel, private readonly times: readonly number[]) {}

  /** The look's receptor, all lights. */
  areaStops(areaId: AreaId): number {
    return this.model.areaStops(this.model.areaLuxSeconds(areaId, this.times))
  }

  /** The look's receptor, these lights alone. */
  lightsStopsAt(areaId: AreaId, lightIds: readonly string[]): number {
    return this.model.areaStops(this.model.lightLuxSecondsAt(areaId, lightIds, this.times))
  }

  /** Dome towards the light, at the place it serves; lights that help each other count together. */
  levelStops(lightIds: readonly string[]): number {
    return this.model.levelStops(this.model.levelLuxSeconds(lightIds, this.times))
  }

  channels(areaId: AreaId): CameraRgb {
    return this.model.channels(areaId, this.times)
  }

  /** Stops that the weakest channel of the worst place behind lacks to white; negative is in hand. */
  whiteMissingStops(): number {
    return this.model.behindIds.reduce((worst, id) => Math.max(worst, -stopsOrDark(Math.min(...this.channels(id)))), DARK_STOPS)
  }
}

function stopsOrDark(times: number): number {
  return Math.max(DARK_STOPS, stopsFromTimes(Math.max(times, 1e-30)))
}
