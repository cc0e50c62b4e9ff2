import { connect, createServer, type AddressInfo, type Socket } from 'node:net'

export interface Balancer {
  readonly port: number
  readonly origin: string
  close(): void
}

/** As plain as a load balancer can be: each connection goes to the next relay that takes it. */
export async function balance(ports: () => readonly number[]): Promise<Balancer> {
  const sockets = new Set<Socket>()
  let turn = 0
  const server = createServer((near) => {
    keep(near)
    turn += 1
    const open = ports()
    lead(near, open.map((_, index) => open[(index + turn) % open.length] as number))
  })
  function keep(socket: Socket): void {
    sockets.add(socket)
    socket.on('error', () => {})
    socket.on('close', () => sockets.delete(socket))
  }
  function lead(near: Socket, candidates: readonly number[]): void {
    const [port, ...others] = candidates
    if (port === undefined) return void near.destroy()
    const far = connect(port, '127.0.0.1')
    keep(far)
    far.once('error', () => {
      if (far.connecting || far.bytesRead === 0) lead(near, others)
    })
    far.once('connect', () => {
      near.pipe(far)
      far.pipe(near)
      near.once('close', () => far.destroy())
      // What a killed relay said last still reaches people.
      far.once('close', () => near.end())
    })
  }
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  const { port } = server.address() as AddressInfo
  return {
    port, origin: `http://127.0.0.1:${port}`,
    close() {
      sockets.forEach((socket) => socket.destroy())
      server.close()
    },
  }
}
