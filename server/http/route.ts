import type { Seat } from '../access/seat.ts'
import type { Exchange } from './exchange.ts'

/** What answers at one method and path. A thrown Problem is the answer too. */
export interface Route {
  readonly method: 'GET' | 'POST'
  readonly path: string
  answer(exchange: Exchange): Promise<void>
}

/** A route below `/s/<seatId>/`, for whoever brings that seat's secret. */
export interface SeatRoute {
  readonly method: 'GET' | 'POST'
  /** What follows `/s/<seatId>/`. */
  readonly name: string
  /** Whether one more part of the path belongs to it: `/s/<seatId>/<name>/<rest>`. */
  readonly takesRest?: true
  answer(exchange: Exchange, seat: Seat, rest: string): Promise<void>
}
