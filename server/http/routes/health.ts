import type { Relay } from '../../relay/relay.ts'
import type { Route } from '../route.ts'

/** `GET /healthz`: the process answers. 200 always; to start it anew would mend nothing that the body tells of. */
export function healthRoute(relay: Relay): Route {
  return {
    method: 'GET',
    path: '/healthz',
    async answer(exchange) {
      const { notKept } = relay.health
      exchange.json(200, { kept: notKept === null, notKept, people: relay.people, rooms: relay.rooms })
    },
  }
}

/** `GET /readyz`: 200 while people may be sent here; 503 while edits are not kept, and once the relay is stopping. */
export function readyRoute(relay: Relay): Route {
  return {
    method: 'GET',
    path: '/readyz',
    async answer(exchange) {
      exchange.json(relay.isReady ? 200 : 503, { ready: relay.isReady, notKept: relay.health.notKept })
    },
  }
}
