import type { PlanEdit } from '../plan/edit.ts'
import { capital } from '../plan/capital.ts'
import { formatStops } from '../plan/entry/stops.ts'
import type { Plan } from '../plan/schema/plan.ts'
import type { Predictor } from '../predict/predict.ts'
import type { Limit } from './answer.ts'
import { lightsBehind, whiteEdit, type WhitePoint } from './whitePoint.ts'
import { WhiteSearch } from './whiteSearch.ts'
import { gentlerOfHue, gentlestFirst, sheetBehind, type SheetBehind } from './whiteSheets.ts'

export type { SheetBehind } from './whiteSheets.ts'

export interface WhiteBehind {
  readonly lightIds: readonly string[]
  /** The lowest setting at which every place of the background in frame reads white; the nearest where none does. */
  readonly point: WhitePoint | null
  /** Sets it; null where the heads cannot. */
  readonly edit: PlanEdit | null
  readonly limit: Limit | null
  /** From three stops under white to two over, for dragging along; empty where no power reads white. */
  readonly curve: readonly WhitePoint[]
  /** Clear and every coloured sheet of the drawer: those that can whiten first, gentlest rim first. */
  readonly sheets: readonly SheetBehind[]
  /** Where white burns the edge: the gentlest sheet of that hue that would not; null where none is needed, or none is there. */
  readonly gentler: SheetBehind | null
  readonly words: string
}

/**
 * White behind the subject: the lowest common change of the lights of the plane 'background' at which every place of it
 * reads white in camera, what rim and haze that costs, and which sheets could do it. Every figure is a prediction of
 * the plan so changed; only the first guess of a power is reckoned.
 * @throws RangeError when the plan has no such look.
 */
export function whiteBehind(plan: Plan, lookId: string, predictor: Predictor): WhiteBehind {
  const steps = whiteBehindInSteps(plan, lookId, predictor)
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
  }
}

/** As `whiteBehind`, in steps: the curve first, then sheet after sheet. A caller that gives `true` gets what is found so far. */
export function* whiteBehindInSteps(
  plan: Plan, lookId: string, predictor: Predictor,
): Generator<{ readonly share: number; readonly soFar: WhiteBehind }, WhiteBehind, boolean> {
  const behind = lightsBehind(plan, lookId)
  if (behind.length === 0) return noneBehind()
  const search = new WhiteSearch(plan, lookId, predictor, behind)
  const found = search.lowest(null)
  const point = found?.point.canBeSet ? found.point : search.at(search.room.highest, null, found?.point.stops ?? null)
  const limit = search.limitOf(found, point)
  const bare: WhiteBehind = {
    lightIds: behind.map(({ id }) => id),
    point,
    edit: found?.point.canBeSet ? whiteEdit(lookId, behind, found.point.stops, null) : null,
    limit,
    curve: found ? search.curve(found.point.stops) : [],
    sheets: [],
    gentler: null,
    words: limit?.words ?? wordsOf(point),
  }
  // A neutral sheet lowers what power lowers too: as a colour behind it is clear.
  const drawer = Object.entries(plan.gels).filter(([, { source }]) => source.from !== 'neutral').map(([gelId, { name, sheets }]) => ({ gelId: gelId as string | null, name, owned: sheets }))
  const choices = [{ gelId: null, name: 'clear', owned: Infinity }, ...drawer]
  const sheets: SheetBehind[] = []
  for (const { gelId, name, owned } of choices) {
    const soFar = { ...bare, sheets: gentlestFirst(sheets) }
    if (yield { share: (sheets.length + 1) / (choices.length + 1), soFar }) return soFar
    sheets.push(sheetBehind(search, gelId, name, owned))
  }
  const { gelIds } = behind[0]!.light
  const burnt = found?.point.hottestChannelStops ?? 0
  const gentler = gelIds.length > 0 && burnt > 0 ? gentlerOfHue(sheets, search.onWhite(gelIds)) : null
  const names = gelIds.flatMap((id) => plan.gels[id]?.name ?? []).join(' + ')
  const words = burnt > 0 && !limit && gelIds.length > 0 ? burntWords(names, found!.point, gentler) : bare.words
  return { ...bare, sheets: gentlestFirst(sheets), gentler, words }
}

function noneBehind(): WhiteBehind {
  const words = 'No light is set for the background: nothing there to turn up'
  const limit: Limit = { kind: 'kit', aboutId: null, byStops: null, words }
  return { lightIds: [], point: null, edit: null, limit, curve: [], sheets: [], gentler: null, words }
}

/** "Orange behind: white everywhere costs a rim of +2.8; Pale straw does it at −0.3" */
function burntWords(names: string, { wrapStops, hottestChannelStops }: WhitePoint, gentler: SheetBehind | null): string {
  const cost = `${capital(names)} behind: white everywhere costs a rim of ${formatStops(wrapStops ?? 0)}, burnt by ${(hottestChannelStops ?? 0).toFixed(1)}`
  const rim = gentler?.point?.wrapStops ?? null
  return gentler === null || rim === null ? cost : `${cost}; ${gentler.name.toLowerCase()} does it at ${formatStops(rim)}`
}

function wordsOf({ stops, wrapStops, hottestChannelStops, blackStopsUnderGrey }: WhitePoint): string {
  const change = Math.abs(stops) < 0.05 ? 'White as it stands' : `White at ${formatStops(stops)} on the lights behind`
  const burns = hottestChannelStops !== null && hottestChannelStops > 0 ? `, burnt by ${hottestChannelStops.toFixed(1)}` : ''
  const wrap = wrapStops === null ? 'no rim' : `rim ${formatStops(wrapStops)}${burns}`
  return blackStopsUnderGrey === null ? `${change}: ${wrap}` : `${change}: ${wrap}, black at ${formatStops(blackStopsUnderGrey)} from mid-grey`
}
