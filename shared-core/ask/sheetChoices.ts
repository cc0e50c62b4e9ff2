import type { Gel } from '../plan/schema/kit.ts'
import type { Look } from '../plan/schema/look.ts'
import type { Plan } from '../plan/schema/plan.ts'

/** One or two sheets that could hang before a light, or none. */
export interface SheetChoice {
  readonly gelIds: readonly string[]
  readonly name: string
  /** Sheets that other lights of the look carry, or that were never bought. */
  readonly sheetsShort: number
}

/**
 * Clear, every coloured sheet of the drawer, and every two of them; one sheet twice where there are two of it. Neutral
 * sheets change the level alone, which power does too, and are left out. Sheets yet to be bought are singles only.
 * @param lightId whose own sheets count as free
 */
export function sheetChoices(plan: Plan, look: Look, lightId: string): readonly SheetChoice[] {
  const elsewhere = Object.entries(look.lights).flatMap(([id, light]) => (id === lightId ? [] : light.gelIds))
  const sheets = Object.entries(plan.gels).filter(([, gel]) => !isNeutral(gel))
    .map(([id, gel]) => ({ id, name: gel.name, owned: gel.sheets, free: gel.sheets - elsewhere.filter((used) => used === id).length }))
  const short = (...needed: readonly (typeof sheets)[number][]): number => needed.reduce((sum, sheet, i) => {
    const wanted = needed.slice(0, i + 1).filter(({ id }) => id === sheet.id).length
    return sum + (sheet.free < wanted ? 1 : 0)
  }, 0)
  const singles = sheets.map((sheet) => ({ gelIds: [sheet.id], name: sheet.name, sheetsShort: short(sheet) }))
  const twos = sheets.flatMap((one, i) => sheets.slice(i)
    .filter((other) => one.owned > 0 && other.owned > 0 && (one !== other || one.owned > 1))
    .map((other) => ({ gelIds: [one.id, other.id], name: `${one.name} + ${other.name}`, sheetsShort: short(one, other) })))
  return [{ gelIds: [], name: 'clear', sheetsShort: 0 }, ...singles, ...twos]
}

function isNeutral({ source }: Gel): boolean {
  return source.from === 'neutral'
}
