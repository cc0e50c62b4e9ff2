import type { Prediction } from '../../predict/prediction.ts'
import type { LightPair } from './lightMoves.ts'
import type { Move } from './move.ts'
import { MINUTES } from './moveMinutes.ts'

/** A reading to be taken after the change: of one light alone, or of all at a place. */
export interface ReadingAgain {
  readonly lightId: string | null
  /** "B alone", "all lights" */
  readonly lights: string
  readonly areaId: string
  readonly place: string
  /** What the prediction says there, in stops from the aperture; null where nothing arrives. */
  readonly predictedStops: number | null
  readonly why: string
  readonly minutes: number
}

/** Less than a meter tells. */
const LEAST_STOPS = 0.05

/**
 * Only the readings that could have changed: of lights that were worked on, of lights that arrive otherwise though nobody
 * touched them (a board beside them, a flag gone), and of places that untouched lights serve where the sum changed. A gelled
 * background first, with the key off.
 */
export function readingsAgain(from: Prediction, to: Prediction, pairs: readonly LightPair[], moves: readonly Move[]): readonly ReadingAgain[] {
  const changedExposure = stopsOf(from) !== stopsOf(to)
  const alone = to.lights.filter(({ on }) => on).flatMap((light): ReadingAgain[] => {
    const pair = pairs.find(({ toId }) => toId === light.id)
    const before = from.lights.find(({ id }) => id === pair?.fromId)
    const isTouched = pair !== undefined && moves.some(({ thing }) => thing === pair.thing)
    const why = isTouched ? 'was worked on' : before === undefined || before.serves !== light.serves || differs(before.level.stops, light.level.stops)
      ? 'arrives otherwise' : changedExposure ? 'the camera was set otherwise' : ''
    if (why === '') return []
    return [{
      lightId: light.id, lights: `${light.letter} alone`, areaId: light.serves, place: placeOf(to, light.serves), predictedStops: light.level.stops, why, minutes: MINUTES.reading,
    }]
  })
  const isBackground = ({ lightId }: ReadingAgain): boolean => to.lights.find(({ id }) => id === lightId)?.plane === 'background'
  const read = new Set(alone.map(({ areaId }) => areaId))
  const served = [...new Set(to.lights.filter(({ on }) => on).map(({ serves }) => serves))]
  const together = served.filter((areaId) => !read.has(areaId)).flatMap((areaId): ReadingAgain[] => {
    const [before, after] = [from, to].map(({ areas }) => areas.find(({ id }) => id === areaId))
    if (after === undefined || (before !== undefined && !differs(before.meter.stops, after.meter.stops))) return []
    return [{ lightId: null, lights: 'all lights', areaId, place: after.label, predictedStops: after.meter.stops, why: 'the sum changed there', minutes: MINUTES.reading }]
  })
  return [...alone.filter(isBackground), ...alone.filter((one) => !isBackground(one)), ...together]
}

function differs(before: number | null, after: number | null): boolean {
  return before === null || after === null ? before !== after : Math.abs(before - after) > LEAST_STOPS
}

function placeOf({ areas }: Prediction, areaId: string): string {
  return areas.find(({ id }) => id === areaId)?.label ?? 'the place it serves'
}

/** What a meter's reading is judged by: it shifts all of them at once. */
function stopsOf({ taking: { fNumber, isoSpeed } }: Prediction): string {
  return `${fNumber} ${isoSpeed}`
}
