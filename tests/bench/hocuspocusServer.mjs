/** Hocuspocus with its SQLite extension, all else as it comes, for the bench to measure beside the relay. */
import { SQLite } from '@hocuspocus/extension-sqlite'
import { Server } from '@hocuspocus/server'

const server = new Server({
  address: '127.0.0.1', port: Number(process.env.PORT), quiet: true, stopOnSignals: false,
  extensions: [new SQLite({ database: process.env.DATABASE })],
})
await server.listen()
console.log('running at', process.env.PORT)
