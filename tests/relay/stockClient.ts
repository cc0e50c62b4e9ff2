import { onTestFinished } from 'vitest'
import { WebSocket } from 'ws'
import { WebsocketProvider } from 'y-websocket'
import * as Y from 'yjs'
import type { TestRelay } from './openRelay.ts'

export interface StockClient {
  readonly doc: Y.Doc
  readonly map: Y.Map<unknown>
  readonly provider: WebsocketProvider
}

/** A provider straight from the package, joined and synced; `headers` are what a browser or program would send. */
export async function stockJoin(
  relay: Pick<TestRelay, 'origin'>, seatId: string, headers: Record<string, string>, document = 'plan', doc = new Y.Doc(),
): Promise<StockClient> {
  class SocketWithHeaders extends WebSocket {
    constructor(url: string | URL, protocols?: string | string[]) {
      super(url, protocols, { headers })
    }
  }
  const provider = new WebsocketProvider(`${relay.origin.replace(/^http/, 'ws')}/s/${seatId}`, document, doc, {
    WebSocketPolyfill: SocketWithHeaders as unknown as typeof globalThis.WebSocket,
    disableBc: true,
  })
  onTestFinished(() => provider.destroy())
  if (!provider.synced) await new Promise<void>((resolve) => provider.once('sync', () => resolve()))
  return { doc, map: doc.getMap('m'), provider }
}
