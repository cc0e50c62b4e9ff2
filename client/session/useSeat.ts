import { createContext, use } from 'react'
import type { SeatInfo } from '../connection/seat.ts'

/** The seat this page sits on; null for a board on its own. */
export const SeatContext = createContext<SeatInfo | null>(null)

export function useSeat(): SeatInfo | null {
  return use(SeatContext)
}
