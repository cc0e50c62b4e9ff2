import { spawn, type ChildProcess } from 'node:child_process'
import { existsSync, mkdtempSync, rmSync } from 'node:fs'
import { createServer, type AddressInfo } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

const PROJECT_FOLDER = fileURLToPath(new URL('../..', import.meta.url))
const CPU_REPORT = fileURLToPath(new URL('cpuReport.mjs', import.meta.url))
const STOCK_SERVER = fileURLToPath(new URL('node_modules/y-websocket/bin/server.cjs', import.meta.url))

/** Where one person of a measurement connects. */
export interface Place {
  readonly url: string
  readonly headers: Readonly<Record<string, string>>
}

/** A server in a process of its own. */
export interface MeasuredServer {
  /** Places for so many people who may all write, in one room. */
  places(people: number): Promise<Place[]>
  cpuSeconds(): Promise<number>
  stop(): Promise<void>
}

/** The stock server of y-websocket 2.1.0 is a rival of the bench alone and not among the product's dependencies. */
export function isStockServerInstalled(): boolean {
  return existsSync(STOCK_SERVER)
}

/** This relay as `npm start` runs it: with its SQLite file. */
export async function startOurs(): Promise<MeasuredServer> {
  const dataFolder = mkdtempSync(join(tmpdir(), 'halfstop-bench-'))
  const child = startServer(['--import', 'tsx', 'server/start.ts', '--no-build'], { PORT: '0', DATA_DIR: dataFolder, LOG_LEVEL: 'warn' })
  const output = await outputUntil(child, 'Stop with')
  const origin = /Halfstop is open: (\S+)\//.exec(output)?.[1] ?? ''
  return {
    async places(people) {
      const { jobId, links } = await post<{ jobId: string; links: { role: string; url: string }[] }>(`${origin}/api/jobs`, {})
      const key = links.find(({ role }) => role === 'assistant')?.url.split('#')[1]
      return Promise.all(Array.from({ length: people }, async (_, index) => {
        const seat = await post<{ seatId: string; secret: string }>(`${origin}/api/seats`, { jobId, key, name: `Person ${index}`, headless: true })
        return { url: `${origin.replace('http', 'ws')}/s/${seat.seatId}/plan`, headers: { authorization: `Bearer ${seat.secret}` } }
      }))
    },
    cpuSeconds: () => cpuSecondsOf(child),
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
    async places(people) {
      rooms += 1
      return Array.from({ length: people }, () => ({ url: `ws://127.0.0.1:${port}/room-${rooms}`, headers: {} }))
    },
    cpuSeconds: () => cpuSecondsOf(child),
    stop: () => ended(child),
  }
}

async function post<Answer>(url: string, body: object): Promise<Answer> {
  const response = await fetch(url, { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) })
  return (await response.json()) as Answer
}

function startServer(args: readonly string[], environment: Record<string, string>): ChildProcess {
  return spawn(process.execPath, ['--import', CPU_REPORT, ...args], {
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

function cpuSecondsOf(child: ChildProcess): Promise<number> {
  return new Promise((resolve) => {
    child.once('message', (message) => resolve((message as { cpuMicroseconds: number }).cpuMicroseconds / 1e6))
    child.send('cpu?')
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
