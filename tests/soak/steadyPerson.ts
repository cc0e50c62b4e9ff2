import { WebSocket } from 'ws'
import { WebsocketProvider } from 'y-websocket'
import * as Y from 'yjs'

/**
 * One who edits through a provider straight from the package: sets `<person>/<number>`, one number after the other, and
 * takes down which of the others' edits were seen.
 */
export class SteadyPerson {
  readonly doc = new Y.Doc()
  /** Edits of others that this one saw. */
  readonly seen = new Set<string>()
  readonly provider: WebsocketProvider
  readonly name: string
  made = 0
  #typing: NodeJS.Timeout | undefined

  constructor(name: string, origin: string, { seatId, secret }: { readonly seatId: string; readonly secret: string }) {
    this.name = name
    class SocketWithSecret extends WebSocket {
      constructor(url: string | URL, protocols?: string | string[]) {
        super(url, protocols, { headers: { authorization: `Bearer ${secret}` } })
      }
    }
    this.doc.getMap('edits').observe(({ keysChanged }) => {
      for (const key of keysChanged) if (key !== null && !key.startsWith(`${name}/`)) this.seen.add(key)
    })
    this.provider = new WebsocketProvider(`${origin.replace(/^http/, 'ws')}/s/${seatId}`, 'plan', this.doc, {
      WebSocketPolyfill: SocketWithSecret as unknown as typeof globalThis.WebSocket, disableBc: true,
    })
    // Kind 2 is a refusal, which it would print: here they are many, and expected.
    this.provider.messageHandlers[2] = () => {}
  }

  get isIn(): boolean {
    return this.provider.wsconnected && this.provider.synced
  }

  type(everyMs: number): void {
    this.#typing = setInterval(() => {
      this.doc.getMap('edits').set(`${this.name}/${this.made}`, 1)
      this.made += 1
    }, everyMs)
  }

  rest(): void {
    clearInterval(this.#typing)
  }

  leave(): void {
    this.rest()
    this.provider.destroy()
    this.doc.destroy()
  }
}
