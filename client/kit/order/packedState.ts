import type { OrderLine } from '../../../shared-core/kit/orderLine.ts'
import type { Packed } from '../../../shared-core/rig/packed.ts'

/** How many of a line go into the case. */
export function toPack({ needed, spare }: OrderLine): number {
  return needed + spare
}

/** Ticked, and still enough: a plan that needs more by now takes the tick away. */
export function isPacked(line: OrderLine, entry: Packed | undefined): boolean {
  return entry !== undefined && entry.count >= toPack(line)
}
