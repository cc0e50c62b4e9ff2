import type { IncomingMessage, ServerResponse } from 'node:http'
import type { Access, NotAdmitted } from '../access/access.ts'
import { isOwnPage, originCalled, type OriginRule } from '../access/origin.ts'
import { secretOfRequest } from '../access/seatCookie.ts'
import type { Log } from '../log.ts'
import { StoreError } from '../store/storeError.ts'
import { Exchange } from './exchange.ts'
import { usualHeaders } from './headers.ts'
import { Problem, type ProblemCode } from './problems.ts'
import type { Route, SeatRoute } from './route.ts'
import type { StaticFiles } from './staticFiles.ts'

export interface HttpParts {
  readonly access: Access
  readonly origin: OriginRule
  readonly proxyHops: number
  readonly maxBodyBytes: number
  readonly routes: readonly Route[]
  readonly seatRoutes: readonly SeatRoute[]
  readonly files: StaticFiles
  readonly log: Log
  /** Told the code of every problem answered. */
  readonly onProblem: (code: ProblemCode) => void
}

/** Addresses of the page itself: it reads the rest of the address when it runs. */
const PAGE = /^\/(?:|j\/[A-Za-z0-9_-]{1,64}|[sp]\/[A-Za-z0-9_-]{1,64})$/
const SEAT_PATH = /^\/s\/([A-Za-z0-9_-]{1,64})\/([a-z]{1,32})(?:\/([A-Za-z0-9_-]{1,64}))?$/

const PROBLEM_OF_NOT_ADMITTED: Record<NotAdmitted, ProblemCode> = { noSeat: 'no-seat', withdrawn: 'withdrawn', expired: 'expired' }

/** Answers every plain request; whatever goes wrong on the way is answered from the one catalogue. */
export function makeAnswering(parts: HttpParts): (request: IncomingMessage, response: ServerResponse) => void {
  const headers = Object.entries(usualHeaders(parts.origin.publicOrigin.startsWith('https:')))
  return (request, response) => {
    for (const [name, value] of headers) response.setHeader(name, value)
    const exchange = new Exchange(request, response, parts)
    answer(parts, exchange).catch((thrown: unknown) => {
      const problem = problemOf(thrown, parts.log)
      parts.onProblem(problem.code)
      if (response.headersSent) response.destroy()
      else exchange.problem(problem)
      // What is left of a request that was too large is not read.
      if (!request.complete) response.once('finish', () => request.destroy())
    })
  }
}

async function answer(parts: HttpParts, exchange: Exchange): Promise<void> {
  const { path } = exchange
  const method = exchange.request.method === 'HEAD' ? 'GET' : exchange.request.method
  if (originCalled(exchange.request.headers, parts.origin) === null) throw new Problem('foreign-origin')
  if (method === 'GET' && parts.files.has(path)) return parts.files.send(path, exchange.request, exchange.response)
  if (method === 'GET' && PAGE.test(path)) return sendPage(parts, exchange)
  if (method !== 'GET' && !isOwnPage(exchange.request.headers, parts.origin)) throw new Problem('foreign-origin')
  const there = parts.routes.filter((each) => each.path === path)
  const route = there.find((each) => each.method === method)
  if (route !== undefined) return route.answer(exchange)
  const [, seatId, name, rest] = SEAT_PATH.exec(path) ?? []
  const seatThere = parts.seatRoutes.filter((each) => each.name === name && (each.takesRest ?? false) === (rest !== undefined))
  const seatRoute = seatThere.find((each) => each.method === method)
  if (seatRoute !== undefined && seatId !== undefined) return answerSeat(parts, exchange, seatRoute, seatId, rest ?? '')
  throw new Problem(there.length + seatThere.length > 0 ? 'wrong-method' : 'not-found')
}

async function answerSeat(parts: HttpParts, exchange: Exchange, route: SeatRoute, seatId: string, rest: string): Promise<void> {
  const seat = await parts.access.admit(seatId, secretOfRequest(exchange.request.headers))
  if (typeof seat === 'string') throw new Problem(PROBLEM_OF_NOT_ADMITTED[seat])
  return route.answer(exchange, seat, rest)
}

async function sendPage(parts: HttpParts, exchange: Exchange): Promise<void> {
  if (parts.files.has('/index.html')) return parts.files.send('/index.html', exchange.request, exchange.response)
  exchange.response.writeHead(503, { 'Content-Type': 'text/plain; charset=utf-8', 'Cache-Control': 'no-store' })
  exchange.response.end('The page has not been built. Run: npm run build\n')
}

function problemOf(thrown: unknown, log: Log): Problem {
  if (thrown instanceof Problem) return thrown
  const isStore = thrown instanceof StoreError
  log.error(isStore ? 'store refused' : 'request failed', { detail: thrown instanceof Error ? String(thrown.stack) : String(thrown) })
  return new Problem(isStore ? 'not-kept' : 'fault')
}
