import { colourWords } from '../colour/hueWords.ts'
import { formatStops } from '../plan/entry/stops.ts'
import type { Look } from '../plan/schema/look.ts'
import type { Plan } from '../plan/schema/plan.ts'
import type { Prediction } from '../predict/prediction.ts'
import { shownXyz, VISIBLE_STEP, type AreaChange } from './visibleChange.ts'

const MOST_AREAS_TOLD = 2
/** Under this a display shows black for all that anybody sees. */
const FALLS_STOPS = -1.5
const SOFTER_TIMES = 1.15

interface Lost {
  readonly plan: Plan
  readonly after: Plan
  readonly lookId: string
  readonly before: Prediction
  readonly prediction: Prediction
  /** The most changed first. */
  readonly areas: readonly AreaChange[]
}

/** What of a look is lost, in words: "violet is lost", "background falls to black", "camera-right cheek from violet to rose". */
export function lostWords({ plan, after, lookId, before, prediction, areas }: Lost): readonly string[] {
  return [
    ...backgroundWords(before, prediction, areas),
    ...sheetWords(plan, plan.looks[lookId]!, after.looks[lookId]!),
    ...areaWords(before, prediction, areas),
    ...softnessWords(before, prediction),
    ...levelWords(before, prediction),
  ]
}

function backgroundWords(before: Prediction, prediction: Prediction, areas: readonly AreaChange[]): string[] {
  const centre = areas.find(({ areaId }) => areaId === 'background-centre')
  const shown = prediction.areas.find(({ id }) => id === 'background-centre')
  if (!centre || !shown || centre.difference < VISIBLE_STEP || centre.stops === null || centre.stops > FALLS_STOPS) return []
  const what = before.background.behind === 'paper' ? 'paper' : 'background'
  return [`${what} falls to ${colourWords(shownXyz(shown))} (${formatStops(centre.stops)})`]
}

/** Sheets that burnt before and burn nowhere now. */
function sheetWords({ gels }: Plan, before: Look, after: Look): string[] {
  const burning = (look: Look) => new Set(Object.values(look.lights).filter(({ on }) => on).flatMap(({ gelIds }) => gelIds))
  const left = burning(after)
  return [...burning(before)].filter((id) => !left.has(id)).map((id) => `${(gels[id]?.name ?? id).toLowerCase()} is lost`)
}

function areaWords(before: Prediction, prediction: Prediction, areas: readonly AreaChange[]): string[] {
  return areas.filter(({ areaId, difference }) => difference >= VISIBLE_STEP && !areaId.startsWith('background-')).slice(0, MOST_AREAS_TOLD)
    .flatMap(({ areaId, label, stops }) => {
      const [was, is] = [before, prediction].map(({ areas: all }) => all.find(({ id }) => id === areaId))
      if (!was || !is) return []
      const [from, to] = [colourWords(shownXyz(was)), colourWords(shownXyz(is))]
      if (from !== to) return [`${label} from ${from} to ${to}`]
      return stops === null || Math.abs(stops) < 0.1 ? [] : [`${label} ${formatStops(stops)}`]
    })
}

function softnessWords(before: Prediction, prediction: Prediction): string[] {
  return prediction.lights.flatMap((light) => {
    const was = before.lights.find(({ id }) => id === light.id)
    // On paper nobody sees how large its light is.
    if (!was || !light.on || light.serves.startsWith('background-')) return []
    const times = light.apparentSizeDegrees / was.apparentSizeDegrees
    if (times < SOFTER_TIMES && times > 1 / SOFTER_TIMES) return []
    return [`${light.letter} ${times < 1 ? 'harder' : 'softer'}: ${Math.round(was.apparentSizeDegrees)}° to ${Math.round(light.apparentSizeDegrees)}°`]
  })
}

/** Lights that no longer come to their level. */
function levelWords(before: Prediction, prediction: Prediction): string[] {
  return prediction.lights.flatMap((light) => {
    const was = before.lights.find(({ id }) => id === light.id)?.level.stops
    if (!light.on || was === null || was === undefined || light.level.stops === null) return []
    const off = light.level.stops - was
    return Math.abs(off) < 0.1 ? [] : [`${light.letter} ${formatStops(off)} off its level`]
  })
}
