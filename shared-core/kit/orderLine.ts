/** The cases that kit travels in, in the order of packing: what is rigged first lies on top. */
export const orderCases = ['Heads', 'Modifiers', 'Stands and grip', 'Flags and boards', 'Background', 'Gels', 'Power and triggers'] as const
export type OrderCase = (typeof orderCases)[number]

/** One kind of thing to bring. */
export interface OrderLine {
  /** The same as long as the plan needs this thing: its tick in the packing list goes by it. */
  readonly key: string
  readonly case: OrderCase
  readonly name: string
  readonly size: { readonly widthMetres: number; readonly heightMetres: number | null } | null
  /** How many each look uses, in the order of the looks asked for. */
  readonly byLook: readonly number[]
  /** The most that are in use at once. */
  readonly needed: number
  readonly spare: number
  /** In the kit or the drawer; null for what the kit does not count. */
  readonly owned: number | null
  /** To hire, or for gels and paper to buy; null where nobody counts what there is. */
  readonly missing: number | null
  /** Why, in a few words; empty where it is plain. */
  readonly note: string
}

type Given = Pick<OrderLine, 'key' | 'case' | 'name' | 'byLook'> & Partial<Pick<OrderLine, 'size' | 'needed' | 'spare' | 'owned' | 'note'>>

/** A line with what follows from its counts. Looks are shot one after another, so what is needed is the most of any. */
export function orderLine(given: Given): OrderLine {
  const needed = given.needed ?? Math.max(0, ...given.byLook)
  const [spare, owned] = [given.spare ?? 0, given.owned ?? null]
  return {
    size: null, note: '', ...given, needed, spare, owned,
    missing: owned === null ? null : Math.max(0, needed + spare - owned),
  }
}

/** A word or id as part of a key: letters, digits, - and _ only. */
export function keyPart(text: string): string {
  return text.replace(/[^A-Za-z0-9_-]+/g, '-').slice(0, 60)
}
