import type { Light } from '../plan/schema/look.ts'
import type { Plan } from '../plan/schema/plan.ts'
import { GEL_SPREAD_SHARE, UNMEASURED_SPREAD_STOPS } from '../predict/lights.ts'
import { flashSpectrum } from '../spectra/flash.ts'
import { gelTransmittance } from '../spectra/gel/gel.ts'
import { luminousShare } from '../spectra/photopic.ts'
import { stopsFromTimes } from '../arithmetic/portable.ts'

/** What the meter can teach something of: `head:id`, `modifier:id` or `gel:id` of the kit. */
export type PieceKey = string
export type PieceKind = 'head' | 'modifier' | 'gel'

const recordOf = { head: 'heads', modifier: 'modifiers', gel: 'gels' } as const

/** A ± is two standard deviations: about 95 in 100 lie within (coverage factor 2, JCGM 100:2008, 6.2). */
export const SPREADS_IN_PLUS_MINUS = 2

/** Two heads of one make and model, and one stand put up twice, give within about this (common practice, no source). */
export const UNIT_SPREAD_STOPS = 0.07

/** Of what makes do and what modifiers lose, each its half: nobody publishes which of the two differs more. */
const headOrModifierSpread = Math.sqrt(
  (UNMEASURED_SPREAD_STOPS * UNMEASURED_SPREAD_STOPS / (SPREADS_IN_PLUS_MINUS * SPREADS_IN_PLUS_MINUS) - UNIT_SPREAD_STOPS * UNIT_SPREAD_STOPS) / 2,
)
/** Even a pale sheet differs from the next a little (common practice, no source). */
const LEAST_GEL_SPREAD_STOPS = 0.03

const DAYLIGHT_FLASH_KELVIN = 5_600

/** The pieces that make a light, a sheet used twice twice. */
export function piecesOf({ headId, modifierId, gelIds }: Pick<Light, 'headId' | 'modifierId' | 'gelIds'>): readonly PieceKey[] {
  return [`head:${headId}`, `modifier:${modifierId}`, ...gelIds.map((id) => `gel:${id}`)]
}

/** The kind and id that a key holds. */
export function readPieceKey(key: PieceKey): { readonly kind: PieceKind; readonly id: string } {
  const colon = key.indexOf(':')
  return { kind: key.slice(0, colon) as PieceKind, id: key.slice(colon + 1) }
}

/** A piece as the kit has it: what it is called and what it has been taught. Null when the kit has lost it. */
export function pieceInKit(plan: Plan, key: PieceKey): { readonly name: string; readonly learnedStops: number } | null {
  const { kind, id } = readPieceKey(key)
  const record: Readonly<Record<string, { readonly name: string; readonly learnedStops: number }>> = plan[recordOf[kind]]
  return Object.hasOwn(record, id) ? (record[id] ?? null) : null
}

/** Where in the plan a piece keeps what it was taught. */
export function learnedPath(key: PieceKey): readonly string[] {
  const { kind, id } = readPieceKey(key)
  return [recordOf[kind], id, 'learnedStops']
}

/** Standard deviation, in stops, of what a piece may differ by before any reading. */
export function spreadBefore(plan: Plan, key: PieceKey): number {
  const { kind, id } = readPieceKey(key)
  if (kind !== 'gel') return headOrModifierSpread
  const gel = Object.hasOwn(plan.gels, id) ? plan.gels[id] : undefined
  if (!gel) return LEAST_GEL_SPREAD_STOPS
  const loss = -stopsFromTimes(luminousShare(flashSpectrum(DAYLIGHT_FLASH_KELVIN), gelTransmittance(gel.source)))
  return Math.max(LEAST_GEL_SPREAD_STOPS, (GEL_SPREAD_SHARE * Math.min(loss, 10)) / SPREADS_IN_PLUS_MINUS)
}
