import { z } from 'zod'
import type { Access, TakenSeat } from '../../access/access.ts'
import { Attempts } from '../../access/attempts.ts'
import type { Seat } from '../../access/seat.ts'
import { setSeatCookie } from '../../access/seatCookie.ts'
import type { Log } from '../../log.ts'
import type { Exchange } from '../exchange.ts'
import { Problem, type ProblemCode } from '../problems.ts'
import type { Route } from '../route.ts'

const MINUTE_MS = 60_000

/** Control characters would let a name forge lines and directions of text on others' screens. */
export const personName = z.string().trim().min(1).max(120).regex(/^[^\p{Cc}\p{Cf}\p{Co}\p{Cs}]*$/u, 'letters and signs that can be seen')

const seatBody = z.strictObject({
  jobId: z.string().min(1).max(64),
  key: z.string().min(1).max(200),
  name: personName,
  /** For programs: the secret comes in the answer, for an Authorization header, and no cookie is set. */
  headless: z.boolean().optional(),
})

const PROBLEM_OF = {
  wrongKey: 'wrong-key', tooManySeats: 'too-many-seats', withdrawn: 'withdrawn', expired: 'expired',
} as const satisfies Record<string, ProblemCode>

/** `POST /api/seats`: a seat for whoever brings a link's key. */
export function newSeatRoute(access: Access, terms: { isSecure: boolean; wrongKeysPerMinute: number }, log: Log): Route {
  const wrongKeys = new Attempts(terms.wrongKeysPerMinute, MINUTE_MS)
  return {
    method: 'POST',
    path: '/api/seats',
    async answer(exchange) {
      const { jobId, key, name, headless } = await exchange.body(seatBody)
      if (wrongKeys.isExhausted(exchange.address, Date.now())) throw new Problem('too-many-tries')
      const taken = await access.takeSeat(jobId, key, name)
      if (typeof taken === 'string') {
        if (taken === 'wrongKey') wrongKeys.count(exchange.address, Date.now())
        log.info('seat refused', { cause: taken })
        throw new Problem(PROBLEM_OF[taken])
      }
      log.info('seat taken', { seatId: taken.seat.seatId, jobId, role: taken.seat.role })
      if (headless === true) exchange.json(201, { ...seatInfo(taken.seat), secret: taken.secret })
      else giveSeat(exchange, taken, terms.isSecure)
    },
  }
}

/** Answers with the seat, its secret in a cookie that only its own paths see and no script can read. */
export function giveSeat(exchange: Exchange, { seat, secret }: TakenSeat, isSecure: boolean): void {
  const maxAgeSeconds = Math.max(0, Math.floor((seat.expiresMs - Date.now()) / 1_000))
  exchange.response.setHeader('Set-Cookie', setSeatCookie({ seatId: seat.seatId, secret, maxAgeSeconds, isSecure }))
  exchange.json(201, seatInfo(seat))
}

/** A seat as its own page may know it. */
export function seatInfo({ seatId, jobId, role, name }: Seat): { seatId: string; jobId: string; role: string; name: string } {
  return { seatId, jobId, role, name }
}
