import { z } from 'zod'
import type { Access } from '../../access/access.ts'
import { ROLES, type Role } from '../../access/role.ts'
import { Problem } from '../problems.ts'
import type { Route } from '../route.ts'
import { giveSeat, personName } from './seats.ts'

/** The demo job's keys, where the page may open it without a link: only on a relay that this machine alone can reach. */
export interface OpenDemo {
  readonly jobId: string
  readonly keys: Readonly<Record<Role, string>>
}

const demoBody = z.strictObject({ role: z.enum(ROLES), name: personName })

/** `POST /api/demo-seat`: a seat at the demo job without a link. Not there at all unless the demo is open. */
export function demoSeatRoute(access: Access, demo: OpenDemo | null, isSecure: boolean): Route {
  return {
    method: 'POST',
    path: '/api/demo-seat',
    async answer(exchange) {
      const { role, name } = await exchange.body(demoBody)
      const taken = demo === null ? 'wrongKey' : await access.takeSeat(demo.jobId, demo.keys[role], name)
      if (typeof taken === 'string') throw new Problem('no-demo')
      giveSeat(exchange, taken, isSecure)
    },
  }
}

/** `GET /api/welcome`: what the first page can offer. */
export function welcomeRoute(terms: { demo: OpenDemo | null; newJobs: boolean }): Route {
  return {
    method: 'GET',
    path: '/api/welcome',
    async answer(exchange) {
      exchange.json(200, { demoRoles: terms.demo === null ? [] : ROLES, newJobs: terms.newJobs })
    },
  }
}
