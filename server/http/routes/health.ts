import type { Relay } from '../../relay/relay.ts'
import type { Route } from '../route.ts'

/** `GET /healthz`: 200 while edits are kept, 503 with the reason while they are not. */
export function healthRoute(relay: Relay): Route {
  return {
    method: 'GET',
    path: '/healthz',
    async answer(exchange) {
      const { notKept } = relay.health
      exchange.json(notKept === null ? 200 : 503, { kept: notKept === null, notKept, people: relay.people, rooms: relay.rooms })
    },
  }
}
