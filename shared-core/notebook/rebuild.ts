import { ask } from '../ask/ask.ts'
import type { Want } from '../ask/want.ts'
import { applyEdit } from '../plan/edit.ts'
import type { Look, Subject } from '../plan/schema/look.ts'
import type { Plan } from '../plan/schema/plan.ts'
import type { Predictor } from '../predict/predict.ts'
import type { AreaId, Prediction } from '../predict/prediction.ts'
import { intoKit, type Kit } from './intoKit.ts'
import { intoRoom, type Shortening, shortenings } from './intoRoom.ts'

/** Areas this near to what they were are held. */
export const HELD_WITHIN_STOPS = 0.2

/** Where, with what and on whom a look is to stand again; what is left out stays as it was. */
export interface RebuildIn {
  readonly room?: Plan['room']
  /** False where other looks of a job are taped from the room's mark: then it stays where it is. */
  readonly mayMoveMark?: boolean
  readonly kit?: Kit
  readonly subject?: Partial<Subject>
}

export interface RebuiltArea {
  readonly id: AreaId
  readonly label: string
  /** As the look's receptor reads it, in stops from the aperture; null where nothing arrives. */
  readonly beforeStops: number | null
  readonly afterStops: number | null
  /** Positive: brighter now. 0 where neither gets light. */
  readonly offStops: number
}

export interface Rebuilt {
  /** The plan in its new place, with the look under its own id. */
  readonly plan: Plan
  readonly prediction: Prediction
  /** What had to be done, as words for the person who rigs; empty when it stands as it stood. */
  readonly moves: readonly string[]
  /** Areas in frame, the worst first. */
  readonly areas: readonly RebuiltArea[]
  readonly isHeld: boolean
  /** Why areas are not held, and what does not fit; empty when all is. */
  readonly reasons: readonly string[]
}

/**
 * A look in another room, with another kit, on another person: stops, angles and apparent sizes are kept, as far as walls
 * and kit allow. Lights that would stand in a wall come in along their own beam; of modifiers the one that looks as large
 * from where it stands then; powers are found by Ask for the levels that were; where the room is too short, the camera,
 * the background or both come nearer, whichever keeps more of the picture.
 * @throws RangeError when the plan has no such look
 */
export function rebuild(source: Plan, lookId: string, where: RebuildIn, predictor: Predictor): Rebuilt {
  const look = source.looks[lookId]
  if (!look) throw new RangeError(`The plan has no look called ${lookId}`)
  const before = predictor(source, lookId)
  const kitted = intoKit(source, lookId, where.kit)
  const room = where.room ?? source.room
  const tries = shortenings(kitted.plan, lookId, room, where.mayMoveMark ?? true)
    .map((shortening) => tried(before, kitted, lookId, room, shortening, where, predictor))
  return tries.reduce((best, each) => (costOf(each) < costOf(best) ? each : best))
}

function tried(
  before: Prediction, kitted: ReturnType<typeof intoKit>, lookId: string, room: Plan['room'], shortening: Shortening, where: RebuildIn,
  predictor: Predictor,
): Rebuilt {
  const stood = intoRoom(kitted.plan, lookId, room, shortening, predictor)
  const worn = withSubject(stood.plan, lookId, where.subject)
  const answer = isAsBefore(before, predictor(worn, lookId)) ? null
    : ask(worn, lookId, wantsOf(before, worn.looks[lookId]!), { predictor, isPowersOnly: true })
  const plan = answer?.ways[0] ? applyEdit(worn, answer.ways[0].edit) : worn
  const prediction = predictor(plan, lookId)
  const areas = areasOf(before, prediction)
  const isHeld = areas.every(({ offStops }) => Math.abs(offStops) <= HELD_WITHIN_STOPS)
  const misfits = prediction.snags.filter(({ severity, rule }) => severity === 'stop' && rule === 'outside-room').map(({ message }) => message)
  const moves = [...kitted.moves, ...stood.moves, ...powerMoves(before, prediction)]
  return {
    plan, prediction, moves, areas, isHeld,
    reasons: [
      ...kitted.lacks, ...misfits,
      ...(answer === null || answer.limit === null ? [] : [answer.limit.words]),
      ...(isHeld ? [] : areas.filter(({ offStops }) => Math.abs(offStops) > HELD_WITHIN_STOPS).slice(0, 4).map((area) => whyOff(area, before, prediction, moves))),
    ],
  }
}

/** Less than a head's finest step: nothing is to be turned. */
const NOTHING_TO_TURN_STOPS = 0.05

function isAsBefore(before: Prediction, now: Prediction): boolean {
  const isLevel = before.lights.every(({ id, on, level }) => {
    const light = now.lights.find((other) => other.id === id)
    return !on || light === undefined || Math.abs((light.level.stops ?? -16) - (level.stops ?? -16)) < NOTHING_TO_TURN_STOPS
  })
  return isLevel && areasOf(before, now).every(({ offStops }) => Math.abs(offStops) < NOTHING_TO_TURN_STOPS)
}

/** Every area's level, and every light's own: colours come from who gives how much. */
function wantsOf({ areas, lights }: Prediction, look: Look): readonly Want[] {
  const levels = lights.flatMap(({ id, on, level }): Want[] =>
    (on && look.lights[id] !== undefined && level.stops !== null ? [{ kind: 'light-level', lightId: id, stops: level.stops }] : []))
  const places = areas.flatMap(({ id, inFrame, material, meter }): Want[] =>
    (inFrame && material !== 'front' && meter.stops !== null ? [{ kind: 'area-level', areaId: id, stops: meter.stops }] : []))
  return [...levels, ...places]
}

function withSubject(plan: Plan, lookId: string, subject: Partial<Subject> | undefined): Plan {
  const look = plan.looks[lookId]!
  return subject === undefined ? plan : { ...plan, looks: { ...plan.looks, [lookId]: { ...look, subject: { ...look.subject, ...subject } } } }
}

function areasOf(before: Prediction, after: Prediction): RebuiltArea[] {
  const now = new Map(after.areas.map((area) => [area.id, area]))
  return before.areas.flatMap(({ id, label, inFrame, material, meter }): RebuiltArea[] => {
    const found = now.get(id)
    if (!inFrame || material === 'front' || !found) return []
    const [beforeStops, afterStops] = [meter.stops, found.meter.stops]
    const offStops = beforeStops === null || afterStops === null ? (beforeStops === afterStops ? 0 : beforeStops === null ? 20 : -20) : afterStops - beforeStops
    return [{ id, label, beforeStops, afterStops, offStops }]
  }).sort((a, b) => Math.abs(b.offStops) - Math.abs(a.offStops))
}

function costOf({ areas, reasons }: Rebuilt): number {
  return areas.reduce((sum, { offStops }) => sum + offStops * offStops, 0) + reasons.length
}

function powerMoves(before: Prediction, after: Prediction): string[] {
  return after.lights.flatMap((light) => {
    const was = before.lights.find(({ id }) => id === light.id)
    return light.on && was && was.powerText !== light.powerText ? [`${light.letter} at ${light.powerText} (was ${was.powerText})`] : []
  })
}

/** The light whose share of an area moved most, and what was done to it. */
function whyOff({ id, label, offStops }: RebuiltArea, before: Prediction, after: Prediction, moves: readonly string[]): string {
  const was = before.areas.find((area) => area.id === id)!
  const now = after.areas.find((area) => area.id === id)!
  const by = now.byLight.map((given) => {
    const then = was.byLight.find(({ lightId }) => lightId === given.lightId)
    return { lightId: given.lightId, by: given.exposureLuxSeconds - (then?.exposureLuxSeconds ?? 0) }
  }).sort((a, b) => Math.abs(b.by) - Math.abs(a.by))[0]
  const letter = after.lights.find((light) => light.id === by?.lightId)?.letter
  const size = `${Math.abs(offStops).toFixed(1)} stop ${offStops > 0 ? 'brighter' : 'darker'}`
  const done = letter === undefined ? undefined : moves.find((words) => words.startsWith(`${letter} `))
  if (letter === undefined) return `${label}: ${size}`
  return `${label}: ${size}, most of it by ${letter}${done === undefined ? ' and what the walls give back' : ` (${done})`}`
}
