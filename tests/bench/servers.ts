import { spawn, type ChildProcess } from 'node:child_process'
import { existsSync, mkdtempSync, rmSync } from 'node:fs'
import { createServer, type AddressInfo } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import * as encoding from 'lib0/encoding'

const PROJECT_FOLDER = fileURLToPath(new URL('../..', import.meta.url))
const MEMORY_REPORT = fileURLToPath(new URL('memoryReport.mjs', import.meta.url))
const STOCK_SERVER = fileURLToPath(new URL('node_modules/y-websocket/bin/server.cjs', import.meta.url))
const HOCUSPOCUS_PACKAGES = ['node_modules/@hocuspocus/server', 'node_modules/better-sqlite3/build'].map((path) => fileURLToPath(new URL(path, import.meta.url)))
const HOCUSPOCUS_SERVER = fileURLToPath(new URL('hocuspocusServer.mjs', import.meta.url))

/** Where one person of a measurement connects, and what its server's dialect puts around the stock protocol. */
export interface Place {
  readonly url: string
  readonly headers: Readonly<Record<string, string>>
  /** Before every message, either way. */
  readonly prefix: Uint8Array
  /** Said on coming in. */
  readonly hello: readonly Uint8Array[]
}

export interface Memory {
  /** Heap and buffers after tidying up. */
  readonly usedBytes: number
  readonly residentBytes: number
}

/** A server in a process of its own. */
export interface MeasuredServer {
  readonly name: string
  readonly pid: number
  /** Places for so many people who may all write, in a room of their own that starts empty. */
  places(people: number): Promise<Place[]>
  memory(): Promise<Memory>
  stop(): Promise<void>
}

/** The rivals are installed for the bench alone and are not among the product's dependencies. */
export function isStockServerInstalled(): boolean {
  return existsSync(STOCK_SERVER)
}

export function isHocuspocusInstalled(): boolean {
  return HOCUSPOCUS_PACKAGES.every((path) => existsSync(path))
}

/** What one visitor may do here that the network may not: the bench is all people from one address. */
const UNLIMITED = { NEW_JOBS_PER_HOUR: '100000', WRONG_KEYS_PER_MINUTE: '100000', LOG_LEVEL: 'warn', DEMO: 'off' }

/** This relay as `npm start` runs it, with its SQLite file. Rooms are `rig` documents: those start empty. */
export async function startOurs(environment: Readonly<Record<string, string>> = {}, name = 'ours'): Promise<MeasuredServer & { readonly origin: string }> {
  const dataFolder = mkdtempSync(join(tmpdir(), 'halfstop-bench-'))
  const child = startServer(['--import', 'tsx', 'server/start.ts', '--no-build'], { PORT: '0', DATA_DIR: dataFolder, ...UNLIMITED, ...environment })
  const output = await outputUntil(child, 'Stop with')
  const origin = /Halfstop is open: (\S+)\//.exec(output)?.[1] ?? ''
  return {
    name, origin, pid: child.pid ?? 0,
    async places(people) {
      const { jobId, links } = await post<{ jobId: string; links: { role: string; url: string }[] }>(`${origin}/api/jobs`, {})
      const key = links.find(({ role }) => role === 'assistant')?.url.split('#')[1]
      return Promise.all(Array.from({ length: people }, async (_, index) => {
        const seat = await post<{ seatId: string; secret: string }>(`${origin}/api/seats`, { jobId, key, name: `Person ${index}`, headless: true })
        return {
          url: `${origin.replace('http', 'ws')}/s/${seat.seatId}/rig`, headers: { authorization: `Bearer ${seat.secret}` },
          prefix: new Uint8Array(), hello: [],
        }
      }))
    },
    memory: () => memoryOf(child),
    async stop() {
      await ended(child)
      rmSync(dataFolder, { recursive: true, force: true })
    },
  }
}

/** The stock server as its own package starts it: in memory, nothing kept. */
export async function startStock(): Promise<MeasuredServer> {
  const port = await freePort()
  let rooms = 0
  const child = startServer([STOCK_SERVER], { HOST: '127.0.0.1', PORT: String(port) })
  await outputUntil(child, 'running at')
  return {
    name: 'stock', pid: child.pid ?? 0,
    async places(people) {
      rooms += 1
      return Array.from({ length: people }, () => ({ url: `ws://127.0.0.1:${port}/room-${rooms}`, headers: {}, prefix: new Uint8Array(), hello: [] }))
    },
    memory: () => memoryOf(child),
    stop: () => ended(child),
  }
}

/** Hocuspocus as it comes, with its SQLite extension on a file. */
export async function startHocuspocus(): Promise<MeasuredServer> {
  const folder = mkdtempSync(join(tmpdir(), 'halfstop-bench-hocuspocus-'))
  const port = await freePort()
  let rooms = 0
  const child = startServer([HOCUSPOCUS_SERVER], { PORT: String(port), DATABASE: join(folder, 'documents.db') })
  await outputUntil(child, 'running at')
  return {
    name: 'Hocuspocus', pid: child.pid ?? 0,
    async places(people) {
      rooms += 1
      const prefix = encoding.encode((encoder) => encoding.writeVarString(encoder, `room-${rooms}`))
      // Type 2, auth; 0, a token; the token itself, which nobody asks for: without it nothing else is heard.
      const hello = [Buffer.concat([prefix, new Uint8Array([2, 0, 0])])]
      return Array.from({ length: people }, () => ({ url: `ws://127.0.0.1:${port}/`, headers: {}, prefix, hello }))
    },
    memory: () => memoryOf(child),
    async stop() {
      await ended(child)
      rmSync(folder, { recursive: true, force: true })
    },
  }
}

async function post<Answer>(url: string, body: object): Promise<Answer> {
  const response = await fetch(url, { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) })
  if (!response.ok) throw new Error(`${response.status} ${await response.text()}`)
  return (await response.json()) as Answer
}

function startServer(args: readonly string[], environment: Record<string, string>): ChildProcess {
  return spawn(process.execPath, ['--expose-gc', '--import', MEMORY_REPORT, ...args], {
    cwd: PROJECT_FOLDER, env: { ...process.env, ...environment }, stdio: ['ignore', 'pipe', 'inherit', 'ipc'],
  })
}

function outputUntil(child: ChildProcess, text: string): Promise<string> {
  return new Promise((resolve, reject) => {
    let output = ''
    child.stdout?.on('data', (chunk: Buffer) => {
      output += chunk.toString()
      if (output.includes(text)) resolve(output)
    })
    child.once('exit', (code) => reject(new Error(`the server ended with ${code}:\n${output}`)))
  })
}

function memoryOf(child: ChildProcess): Promise<Memory> {
  return new Promise((resolve) => {
    child.once('message', (message) => resolve(message as Memory))
    child.send('memory?')
  })
}

function ended(child: ChildProcess): Promise<void> {
  return new Promise((resolve) => {
    child.once('exit', () => resolve())
    child.kill('SIGKILL')
  })
}

function freePort(): Promise<number> {
  return new Promise((resolve) => {
    const server = createServer()
    server.listen(0, '127.0.0.1', () => {
      const { port } = server.address() as AddressInfo
      server.close(() => resolve(port))
    })
  })
}
