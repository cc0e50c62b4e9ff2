import { hashOfSecret, isSameHash } from '../../access/secrets.ts'
import { secretOfRequest } from '../../access/seatCookie.ts'
import type { Metrics } from '../../operate/metrics.ts'
import { Problem } from '../problems.ts'
import type { Route } from '../route.ts'

/** Who may read the metrics. */
export interface MetricsTerms {
  /** What must be brought as `Authorization: Bearer`; empty: nothing. */
  readonly key: string
  /** Whether this machine alone can come, so that no key is needed. */
  readonly isLocalOnly: boolean
}

/** `GET /metrics`: for Prometheus. To whoever may not read it, it is not there. */
export function metricsRoute(metrics: Metrics, { key, isLocalOnly }: MetricsTerms): Route {
  const keyHash = hashOfSecret(key)
  return {
    method: 'GET',
    path: '/metrics',
    async answer(exchange) {
      const brought = secretOfRequest(exchange.request.headers)
      const isAllowed = key === '' ? isLocalOnly : isSameHash(hashOfSecret(brought ?? ''), keyHash)
      if (!isAllowed) throw new Problem('not-found')
      exchange.text(metrics.contentType, await metrics.text())
    },
  }
}
