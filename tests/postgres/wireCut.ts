import { connect, createServer, type AddressInfo, type Socket } from 'node:net'

export interface WireCut {
  /** The same database by a wire that can be cut. */
  readonly url: string
  /** Ends every connection and lets none through; `silent` lets them stand and carries nothing, as a lost network does. */
  cut(how?: 'ended' | 'silent'): void
  mend(): void
  close(): void
}

/** Stands between a relay and its database, so that the database can be gone for one and not for others. */
export async function wireCut(databaseUrl: string): Promise<WireCut> {
  const target = new URL(databaseUrl)
  const sockets = new Set<Socket>()
  let state: 'whole' | 'ended' | 'silent' = 'whole'
  const server = createServer((near) => {
    if (state === 'ended') return void near.destroy()
    const far = connect(Number(target.port), target.hostname)
    for (const [from, to] of [[near, far], [far, near]] as const) {
      sockets.add(from)
      from.on('data', (data) => { if (state === 'whole') to.write(data) })
      from.on('close', () => { sockets.delete(from); to.destroy() })
      from.on('error', () => {})
    }
  })
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  const endAll = () => sockets.forEach((socket) => socket.destroy())
  const url = new URL(databaseUrl)
  url.port = String((server.address() as AddressInfo).port)
  return {
    url: url.href,
    cut(how = 'ended') {
      state = how
      if (how === 'ended') endAll()
    },
    mend() {
      // What was lost in silence cannot be taken up where it was.
      endAll()
      state = 'whole'
    },
    close() {
      endAll()
      server.close()
    },
  }
}
