import { stopsFromTimes } from '../../arithmetic/portable.ts'
import { vectorOf } from '../../set/emitter.ts'
import { distance } from '../../arithmetic/vector.ts'
import { LEAST_DEGREES, LEAST_METRES, LEAST_STOPS } from '../sinceTick.ts'
import type { RiggedLight } from './rigged.ts'

/** What has to be done to a light that stands so that it becomes another. What a tape, a protractor or a head's panel cannot tell apart is one. */
export interface LightWork {
  readonly head: boolean
  readonly modifier: boolean
  readonly grid: boolean
  readonly gel: boolean
  readonly support: boolean
  readonly carriedMetres: number
  readonly aim: boolean
  readonly sandbag: boolean
  readonly safetyCable: boolean
  readonly circuit: boolean
  readonly power: boolean
  readonly letter: boolean
  /** Work on head, modifier or gel: the head is off and cool before hands touch it. */
  readonly refits: boolean
  readonly places: boolean
  /** It cannot stay lit meanwhile. */
  readonly goesDark: boolean
}

export function lightWork(from: RiggedLight, to: RiggedLight): LightWork {
  const modifier = from.modifierId !== to.modifierId
  const metres = distance(vectorOf(from.place), vectorOf(to.place))
  const carried = metres >= LEAST_METRES
  const gelled = from.gelIds.length + to.gelIds.length > 0
  const part = {
    head: from.headId !== to.headId,
    modifier,
    grid: !modifier && !isSameGrid(from.grid, to.grid),
    // A sheet over the front comes off with its modifier.
    gel: from.gelIds.join() !== to.gelIds.join() || (gelled && (from.gelPlace !== to.gelPlace || (modifier && to.gelPlace === 'over-the-front'))),
    support: from.support !== to.support,
    carriedMetres: carried ? metres : 0,
    aim: distance(vectorOf(from.aim), vectorOf(to.aim)) >= LEAST_METRES || Math.abs(from.rollDegrees - to.rollDegrees) >= LEAST_DEGREES,
    sandbag: from.sandbag !== to.sandbag,
    safetyCable: from.safetyCable !== to.safetyCable,
    circuit: from.circuitId !== to.circuitId,
    power: Math.abs(stopsFromTimes(to.energyJoules / from.energyJoules)) >= LEAST_STOPS,
    letter: from.letter !== to.letter,
  }
  const refits = part.head || part.modifier || part.grid || part.gel
  return {
    ...part, refits,
    places: part.support || carried || part.aim || part.sandbag || part.safetyCable || part.circuit,
    goesDark: refits || part.support || carried || part.circuit,
  }
}

function isSameGrid(one: RiggedLight['grid'], other: RiggedLight['grid']): boolean {
  return one.kind === other.kind && (one.kind === 'none' || one.openingDegrees === other.openingDegrees)
}
