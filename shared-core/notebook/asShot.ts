import { stopsFromTimes } from '../arithmetic/portable.ts'
import { formatFNumber } from '../plan/entry/aperture.ts'
import { formatLength, type Units } from '../plan/entry/length.ts'
import { formatPower } from '../plan/entry/power.ts'
import type { Look } from '../plan/schema/look.ts'
import type { Plan } from '../plan/schema/plan.ts'
import { asShotKey, type AsShot, type StandNumbers } from '../rig/asShot.ts'
import type { Stand } from '../stands/stand.ts'
import type { Taped } from '../stands/marks.ts'

/** The numbers of a stand as the plan has them now. */
export function plannedNumbers(stand: Stand): StandNumbers {
  const [one, other] = stand.taped.from
  const floor = { tapesMetres: [one.floorMetres, other.floorMetres] as [number, number], heightMetres: stand.heightMetres }
  if (stand.kind === 'piece') return { ...floor, frontToMetres: null, energyJoules: null, gelIds: [], readingFNumber: null }
  const read = stand.predicted?.level.fNumber ?? 0
  return {
    ...floor, frontToMetres: stand.frontToMetres, energyJoules: stand.light.energyJoules, gelIds: stand.light.gelIds,
    readingFNumber: read >= 0.1 && read <= 1_000 ? read : null,
  }
}

/** What is recorded when somebody says "as planned": every number but the reading, which stays null until a meter is read. */
export function shotAsPlanned(stand: Stand): StandNumbers {
  return { ...plannedNumbers(stand), readingFNumber: null }
}

/** Less than a tape, a panel or a meter tells. */
const LEAST_METRES = 0.005
const LEAST_STOPS = 0.05

/** Each number that was otherwise: "height: planned 2.05 m, as shot 2.10 m". Empty when it stood as planned. */
export function shotWords({ planned, shot }: Pick<AsShot, 'planned' | 'shot'>, stand: Stand, plan: Plan, units: Units): readonly string[] {
  const words: string[] = []
  const say = (what: string, was: string, is: string): void => void words.push(`${what}: planned ${was}, as shot ${is}`)
  const length = (what: string, was: number | null, is: number | null): void => {
    if (is !== null && (was === null || Math.abs(was - is) >= LEAST_METRES)) say(what, was === null ? 'nothing' : formatLength(was, units), formatLength(is, units))
  }
  stand.taped.from.forEach(({ mark }, i) => length(`from ${mark.words}`, planned.tapesMetres[i]!, shot.tapesMetres[i]!))
  length('height', planned.heightMetres, shot.heightMetres)
  if (stand.kind === 'piece') return words
  length(`front to the ${stand.frontTo}`, planned.frontToMetres, shot.frontToMetres)
  const power = (joules: number): string => (stand.head === null ? `${Math.round(joules)} Ws` : formatPower(joules, stand.head))
  if (planned.energyJoules !== null && shot.energyJoules !== null && Math.abs(stopsFromTimes(shot.energyJoules / planned.energyJoules)) >= LEAST_STOPS) {
    say('power', power(planned.energyJoules), power(shot.energyJoules))
  }
  const gels = (ids: readonly string[]): string => (ids.length === 0 ? 'clear' : ids.map((id) => plan.gels[id]?.name ?? id).join(' + '))
  if (planned.gelIds.join() !== shot.gelIds.join()) say('gel', gels(planned.gelIds), gels(shot.gelIds))
  if (shot.readingFNumber !== null && (planned.readingFNumber === null || Math.abs(2 * stopsFromTimes(shot.readingFNumber / planned.readingFNumber)) >= LEAST_STOPS)) {
    say('reading', planned.readingFNumber === null ? 'nothing' : formatFNumber(planned.readingFNumber), formatFNumber(shot.readingFNumber))
  }
  return words
}

/**
 * Where two tapes meet: of both such places the one nearer to where the stand was planned. Null where tapes of that length
 * do not meet. School geometry: two circles.
 */
export function whereTapesMeet({ from: [one, other] }: Taped, [r1, r2]: readonly [number, number], planned: { readonly xMetres: number; readonly yMetres: number }): { readonly xMetres: number; readonly yMetres: number } | null {
  const [x1, y1, x2, y2] = [one.mark.xMetres, one.mark.yMetres, other.mark.xMetres, other.mark.yMetres]
  const apart = Math.sqrt((x2 - x1) * (x2 - x1) + (y2 - y1) * (y2 - y1))
  if (apart < LEAST_METRES) return null
  const along = (r1 * r1 - r2 * r2 + apart * apart) / (2 * apart)
  const square = r1 * r1 - along * along
  // Tapes sag and stretch: a hand's breadth short of meeting counts as met on the line.
  if (square < -0.1 * r1) return null
  const aside = Math.sqrt(Math.max(0, square))
  const [ux, uy] = [(x2 - x1) / apart, (y2 - y1) / apart]
  const both = [1, -1].map((side) => ({ xMetres: x1 + ux * along - side * uy * aside, yMetres: y1 + uy * along + side * ux * aside }))
  const off = ({ xMetres, yMetres }: { readonly xMetres: number; readonly yMetres: number }): number =>
    (xMetres - planned.xMetres) * (xMetres - planned.xMetres) + (yMetres - planned.yMetres) * (yMetres - planned.yMetres)
  return off(both[0]!) <= off(both[1]!) ? both[0]! : both[1]!
}

/**
 * The plan with one look as it truly stood: places by their tapes, heights, powers and gels. What nobody recorded is as
 * planned. Readings and distances change nothing here: they are what the plan is held against.
 */
export function planAsShot(plan: Plan, lookId: string, stands: readonly Stand[], entries: Readonly<Record<string, AsShot>>): Plan {
  let look = plan.looks[lookId]
  if (look === undefined) throw new RangeError(`The plan has no look called ${lookId}`)
  for (const stand of stands) {
    const entry = entries[asShotKey(lookId, stand.id)]
    if (entry !== undefined) look = withStand(look, stand, entry)
  }
  return { ...plan, looks: { ...plan.looks, [lookId]: look } }
}

function withStand(look: Look, stand: Stand, { planned, shot }: AsShot): Look {
  const was = stand.kind === 'light' ? stand.light.place : stand.piece.place
  const isMoved = shot.tapesMetres.some((metres, i) => Math.abs(metres - planned.tapesMetres[i]!) >= LEAST_METRES)
  const floor = (isMoved ? whereTapesMeet(stand.taped, shot.tapesMetres, was) : null) ?? was
  const place = { xMetres: floor.xMetres, yMetres: floor.yMetres, zMetres: shot.heightMetres }
  if (stand.kind === 'piece') return { ...look, pieces: { ...look.pieces, [stand.id]: { ...stand.piece, place } } }
  const light = { ...stand.light, place, energyJoules: shot.energyJoules ?? stand.light.energyJoules, gelIds: shot.gelIds }
  return { ...look, lights: { ...look.lights, [stand.id]: light } }
}
