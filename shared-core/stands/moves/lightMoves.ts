import { formatPower } from '../../plan/entry/power.ts'
import type { Plan } from '../../plan/schema/plan.ts'
import { isDenseGel } from '../../kit/denseGel.ts'
import { lightWork, type LightWork } from './lightWork.ts'
import { MINUTES, TALL_STAND_METRES } from './moveMinutes.ts'
import type { Move, MoveKind } from './move.ts'
import type { MoveContext } from './moveContext.ts'
import { gelWords, gridOnWords, modifierName, placeWords } from './moveWords.ts'
import type { RiggedLight } from './rigged.ts'

/** One light through the change: standing and wanted; one of the two is null where it comes new or is taken away. */
export interface LightPair {
  /** Names the thing from one look to the next. */
  readonly thing: string
  readonly fromId: string | null
  readonly toId: string | null
  readonly from: RiggedLight | null
  readonly to: RiggedLight | null
  /** Another light takes its modifier or head over, so that comes off before anything is put on. */
  readonly givesModifier: boolean
  readonly givesHead: boolean
}

/** The moves of one light, in their order; none where nothing has to be done. */
export function lightMoves(pair: LightPair, context: MoveContext): readonly Move[] {
  if (pair.from === null) return pair.to === null ? [] : newLight(pair, pair.to, context)
  if (pair.to === null) return [lightAway(pair, pair.from, context)]
  return changedLight(pair, pair.from, pair.to, context)
}

const CAP = 'Protective cap off before the power comes on.'
const FIRING = 'Say “firing” before the test flash.'
const COOL = 'Lamp off and cool first, gloves near it. Air between gel and glass, never touching the tube.'
const DISCHARGE = 'Switch off and discharge as its manual says before a head or modifier is changed; never open one.'

function newLight(pair: LightPair, to: RiggedLight, context: MoveContext): readonly Move[] {
  const { plan } = context
  const words = [
    `New: ${plan.heads[to.headId]?.name ?? 'a head'} in ${modifierName(plan, to)}${to.grid.kind === 'none' ? '' : `, ${gridOnWords(to.grid)}`}`,
    ...(to.gelIds.length > 0 ? [gelWords(plan, to)] : []),
    `on a ${to.support.replace('-', ' ')}`,
    ...placeWords(null, to, context),
  ]
  const minutes = MINUTES.lightFromCase + (to.support === 'boom' ? MINUTES.boom : 0) + (to.gelIds.length > 0 ? MINUTES.gel : 0)
  return [
    {
      ...move(pair, to, 'build', words, minutes), people: to.support === 'boom' ? 2 : 1,
      cautions: [...standCautions(to), ...(to.gelIds.length > 0 ? [COOL] : []), CAP],
      // Dark until it is switched on; until then it has what it is built with.
      change: { light: { thing: pair.thing, set: to } },
    },
    move(pair, to, 'power', [`On, at ${powerWords(plan, to)}`], MINUTES.powerAndLetter, [FIRING]),
  ]
}

function lightAway(pair: LightPair, from: RiggedLight, { plan }: MoveContext): Move {
  const words = [`Power down and off the set: ${modifierName(plan, from)}${from.gelIds.length > 0 ? ', gel to its sleeve' : ''}`]
  return {
    ...move(pair, from, 'strike', words, MINUTES.powerDown + MINUTES.lightAway, ['Let it cool before it is packed.', ...boomCaution(from)]),
    people: from.support === 'boom' ? 2 : 1,
    change: { light: { thing: pair.thing, set: null } },
  }
}

function changedLight(pair: LightPair, from: RiggedLight, to: RiggedLight, context: MoveContext): readonly Move[] {
  const { plan } = context
  const work = lightWork(from, to)
  const gives = pair.givesHead || pair.givesModifier
  const moves: Move[] = []
  if (work.goesDark) moves.push(move(pair, from, 'power-down', [plan.heads[from.headId]?.modellingLamp === 'halogen' ? 'Power down, let it cool' : 'Power down'], MINUTES.powerDown))
  if (gives) {
    const set: Partial<RiggedLight> = { ...(pair.givesModifier ? { modifierId: '', gelIds: [], grid: to.grid } : {}), ...(pair.givesHead ? { headId: '' } : {}) }
    const words = [...(pair.givesModifier ? [`${modifierName(plan, from)} off`] : []), ...(pair.givesHead ? ['head off'] : [])]
    moves.push({ ...move(pair, from, 'undress', words, MINUTES.modifierOff + (pair.givesHead ? MINUTES.headSwap / 2 : 0), [DISCHARGE]), change: { light: { thing: pair.thing, set } } })
  }
  if (work.refits) moves.push(refit(pair, from, to, work, context))
  if (work.places) moves.push(placing(pair, from, to, work, context))
  if (work.goesDark || work.power || work.letter) moves.push(powering(pair, from, to, work, context))
  return moves
}

function refit(pair: LightPair, from: RiggedLight, to: RiggedLight, work: LightWork, { plan }: MoveContext): Move {
  const words: string[] = []
  let minutes = 0
  if (work.head) {
    words.push(`${plan.heads[to.headId]?.name ?? 'another head'} in place of ${plan.heads[from.headId]?.name ?? 'its head'}`)
    minutes += MINUTES.headSwap / (pair.givesHead ? 2 : 1)
  }
  if (work.modifier) {
    words.push(`${pair.givesModifier ? '' : `${modifierName(plan, from)} off, `}${modifierName(plan, to)} on${to.grid.kind === 'none' ? '' : `, ${gridOnWords(to.grid)}`}`)
    minutes += (pair.givesModifier ? 0 : MINUTES.modifierOff) + MINUTES.modifierOn
  }
  if (work.grid) {
    words.push(to.grid.kind === 'none' ? 'grid off' : gridOnWords(to.grid))
    minutes += MINUTES.grid
  }
  if (work.gel) {
    words.push(gelWords(plan, to, from))
    minutes += MINUTES.gel
  }
  const isGelled = to.gelIds.length + from.gelIds.length > 0 && work.gel
  const isDense = to.gelIds.some((id) => plan.gels[id] !== undefined && isDenseGel(plan.gels[id]))
  return {
    ...move(pair, to, 'refit', words, minutes, [
      ...(isGelled ? [COOL] : []), ...(isDense && work.gel ? ['A dense gel heats most: look at it every so often.'] : []),
      ...(work.head || work.modifier ? [DISCHARGE] : []),
    ]),
    change: { light: { thing: pair.thing, set: { headId: to.headId, modifierId: to.modifierId, grid: to.grid, gelIds: to.gelIds, gelPlace: to.gelPlace } } },
  }
}

function placing(pair: LightPair, from: RiggedLight, to: RiggedLight, work: LightWork, context: MoveContext): Move {
  const words: string[] = []
  let minutes = 0
  const isBoom = to.support === 'boom' || from.support === 'boom'
  if (work.support) {
    words.push(`onto a ${to.support.replace('-', ' ')}`)
    minutes += MINUTES.standSwap
  }
  if (work.carriedMetres > 0) {
    words.push(...placeWords(from, to, context))
    minutes += MINUTES.carryAndTape
  } else if (work.aim) {
    words.push('aim it anew, as the rig sheet says')
    minutes += MINUTES.aim
  }
  if (isBoom && (work.support || work.carriedMetres > 0)) minutes += MINUTES.boom
  if (work.sandbag) words.push(to.sandbag ? 'sandbag on' : 'sandbag off')
  if (work.safetyCable) words.push(to.safetyCable ? 'safety cable on' : 'safety cable off')
  minutes += (Number(work.sandbag) + Number(work.safetyCable)) * MINUTES.sandbagOrCable
  if (work.circuit) {
    const circuit = context.plan.room.circuits[to.circuitId]
    words.push(circuit === undefined ? 'plug it where it is free' : `plug into ${circuit.label}`)
    minutes += MINUTES.plug
  }
  const { support, place, aim, rollDegrees, sandbag, safetyCable, circuitId } = to
  return {
    ...move(pair, to, 'place', words, minutes, work.support || work.carriedMetres > 0 ? [...standCautions(to), ...(to.support === 'boom' ? [] : boomCaution(from))] : []),
    people: isBoom && (work.support || work.carriedMetres > 0) ? 2 : 1,
    change: { light: { thing: pair.thing, set: { support, place, aim, rollDegrees, sandbag, safetyCable, circuitId } } },
  }
}

function powering(pair: LightPair, from: RiggedLight, to: RiggedLight, work: LightWork, { plan }: MoveContext): Move {
  const power = work.power ? `at ${powerWords(plan, to)}` : `power as it was, ${powerWords(plan, to)}`
  const words = work.goesDark ? [`On, ${power}`] : work.power ? [`Power to ${powerWords(plan, to)}`] : []
  if (work.letter) words.push(`its tape now says ${to.letter} instead of ${from.letter}`)
  return {
    ...move(pair, to, 'power', words, MINUTES.powerAndLetter, work.goesDark || work.power ? [FIRING] : []),
    change: { light: { thing: pair.thing, set: { energyJoules: to.energyJoules, letter: to.letter } } },
  }
}

function move(pair: LightPair, as: RiggedLight, kind: MoveKind, words: readonly string[], minutes: number, cautions: readonly string[] = []): Move {
  return { id: `${pair.thing}.${kind}`, kind, name: as.letter, thing: pair.thing, words, minutes, people: 1, cautions, change: {} }
}

function powerWords(plan: Plan, { headId, energyJoules }: RiggedLight): string {
  const head = plan.heads[headId]
  return head === undefined ? `${Math.round(energyJoules)} Ws` : formatPower(energyJoules, head)
}

function standCautions(light: RiggedLight): readonly string[] {
  const isTall = light.support === 'stand' && light.place.zMetres > TALL_STAND_METRES
  return [...boomCaution(light), ...(isTall ? ['A tall stand: longest leg under the load, sandbag on that leg, within its rated load.'] : [])]
}

function boomCaution({ support }: RiggedLight): readonly string[] {
  return support === 'boom' ? ['A boom: counterweight, safety cable, two people, and nobody underneath meanwhile.'] : []
}
