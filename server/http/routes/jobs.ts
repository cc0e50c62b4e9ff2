import { z } from 'zod'
import type { Access } from '../../access/access.ts'
import { Attempts } from '../../access/attempts.ts'
import { ROLES } from '../../access/role.ts'
import type { Log } from '../../log.ts'
import { readPlan } from '../../../shared-core/plan/read.ts'
import { planUpdate } from '../../planUpdate.ts'
import { Problem } from '../problems.ts'
import type { Route } from '../route.ts'

const HOUR_MS = 3_600_000

const newJobBody = z.strictObject({ plan: z.unknown().optional() })

/** `POST /api/jobs`: starts a job from a plan, or from nothing, and tells its three secret links, once. */
export function newJobRoute(access: Access, terms: { allowed: boolean; perHour: number }, log: Log): Route {
  const started = new Attempts(terms.perHour, HOUR_MS)
  return {
    method: 'POST',
    path: '/api/jobs',
    async answer(exchange) {
      if (!terms.allowed) throw new Problem('no-new-jobs')
      if (started.isExhausted(exchange.address, Date.now())) throw new Problem('too-many-tries')
      const { plan } = await exchange.body(newJobBody)
      const documents = plan === undefined || plan === null ? [] : [{ document: 'plan' as const, update: updateOf(plan) }]
      started.count(exchange.address, Date.now())
      const { jobId, keys } = await access.createJob(documents)
      log.info('job started', { jobId })
      exchange.json(201, { jobId, links: ROLES.map((role) => ({ role, url: exchange.linkTo(jobId, keys[role]) })) })
    },
  }
}

function updateOf(plan: unknown): Uint8Array {
  const reading = readPlan(plan)
  if (!reading.ok) throw new Problem('bad-plan', reading.problems)
  return planUpdate(reading.plan)
}
