import { readFileSync } from 'node:fs'
import { createServer, type Server } from 'node:http'
import { createServer as createTlsServer } from 'node:https'
import type { AddressInfo } from 'node:net'
import { Access } from './access/access.ts'
import { isLoopbackHost, type OriginRule } from './access/origin.ts'
import { makeAnswering } from './http/answering.ts'
import { demoSeatRoute, welcomeRoute, type OpenDemo } from './http/routes/demo.ts'
import { healthRoute, readyRoute } from './http/routes/health.ts'
import { newJobRoute } from './http/routes/jobs.ts'
import { keptRoutes } from './http/routes/kept.ts'
import { metricsRoute } from './http/routes/metrics.ts'
import { notesRoute } from './http/routes/notes.ts'
import { ownSeatRoutes } from './http/routes/ownSeat.ts'
import { newSeatRoute } from './http/routes/seats.ts'
import { StaticFiles } from './http/staticFiles.ts'
import type { Log } from './log.ts'
import type { Neighbours } from './neighbours/neighbours.ts'
import { DrawingRoom } from './notes/drawingRoom.ts'
import { Keeper } from './notes/keeper.ts'
import { NotesDesk } from './notes/notesDesk.ts'
import { Metrics } from './operate/metrics.ts'
import { relayLimits } from './relay/limits.ts'
import { Relay } from './relay/relay.ts'
import type { Settings } from './settings.ts'
import type { Store } from './store/store.ts'

export interface ServeParts {
  readonly settings: Settings
  readonly store: Store
  readonly access: Access
  readonly log: Log
  /** Folder of the built client. */
  readonly clientFolder: string
  /** The demo job, where the page may open it without a link; see {@link mayOpenDemo}. */
  readonly demo: OpenDemo | null
  /** Other relays on the same store; none by default. */
  readonly neighbours?: Neighbours
}

export interface RunningRelay {
  /** Such as `http://127.0.0.1:4200`, with the port that was really taken. */
  readonly origin: string
  readonly port: number
  readonly metrics: Metrics
  /** Serves and keeps what arrived, ends live connections, lets go of the port and closes the store. */
  stop(): Promise<void>
}

const DAY_MS = 86_400_000

/** Access on the terms of the settings. */
export function makeAccess(store: Store, settings: Settings): Access {
  return new Access(store, { linkLifetimeMs: settings.LINK_DAYS * DAY_MS, seatsPerLink: settings.SEATS_PER_LINK })
}

/**
 * Whether the page may offer the demo job without a link: only where this machine alone can come, and no proxy is said
 * to stand in front of it.
 */
export function mayOpenDemo(settings: Settings): boolean {
  return settings.DEMO === 'on' && isLocalOnly(settings)
}

/** Whether this machine alone can come, by no proxy that we were told of. */
function isLocalOnly(settings: Settings): boolean {
  return isLoopbackHost(settings.HOST) && settings.PUBLIC_ORIGIN === '' && settings.PROXY_HOPS === 0
}

/** One process, one port: the page, the API and the live connections. @throws when the port cannot be taken. */
export async function serve(parts: ServeParts): Promise<RunningRelay> {
  const { settings, store, access, log } = parts
  const origin = originRule(settings)
  const { isSecure } = origin
  const relay = new Relay({ store, access, origin, limits: relayLimits(settings), probeMs: settings.PROBE_MS, log, neighbours: parts.neighbours ?? null })
  const metrics = new Metrics(relay)
  const keeper = new Keeper(store, settings.MAX_KEPT_BYTES)
  const drawing = new DrawingRoom(settings.DRAW_LOCK_MS)
  const desk = new NotesDesk({
    store, keeper, drawing, log, write: (key, decide) => relay.write(key, decide), commandsPerMinute: settings.NOTES_PER_MINUTE,
  })
  const attachments = { maxAttachmentBytes: settings.MAX_ATTACHMENT_BYTES, attachmentsPerMinute: settings.ATTACHMENTS_PER_MINUTE }
  const newJobs = settings.NEW_JOBS === 'on'
  const files = new StaticFiles(parts.clientFolder)
  const answering = makeAnswering({
    access, origin, proxyHops: settings.PROXY_HOPS, maxBodyBytes: settings.MAX_BODY_BYTES, files, log,
    onProblem: (code) => relay.tally.refused('request', code),
    routes: [
      healthRoute(relay),
      readyRoute(relay),
      metricsRoute(metrics, { key: settings.METRICS_KEY, isLocalOnly: isLocalOnly(settings) }),
      welcomeRoute({ demo: parts.demo, newJobs }),
      demoSeatRoute(access, parts.demo, isSecure),
      newJobRoute(access, { allowed: newJobs, perHour: settings.NEW_JOBS_PER_HOUR }, log),
      newSeatRoute(access, { isSecure, wrongKeysPerMinute: settings.WRONG_KEYS_PER_MINUTE }, log),
    ],
    seatRoutes: [...ownSeatRoutes(access, log), notesRoute(desk), ...keptRoutes(store, keeper, attachments, log)],
  })
  const server = hasTls(settings)
    ? createTlsServer({ cert: readFileSync(settings.TLS_CERT), key: readFileSync(settings.TLS_KEY) }, answering)
    : createServer(answering)
  // A caller who never finishes a request must not hold its socket for long.
  server.headersTimeout = 10_000
  server.requestTimeout = 60_000
  server.on('upgrade', (request, socket, head) => relay.handleUpgrade(request, socket, head))
  server.on('clientError', (_error, socket) => socket.destroy())
  await relay.meetNeighbours()
  const port = await listen(server, settings)
  files.prepare().catch((thrown: unknown) => log.warn('page not compressed ahead', { detail: String(thrown) }))
  return {
    port,
    metrics,
    origin: settings.PUBLIC_ORIGIN || `${hasTls(settings) ? 'https' : 'http'}://${shownHost(settings.HOST)}:${port}`,
    async stop() {
      const closed = new Promise<void>((resolve) => server.close(() => resolve()))
      await drawing.close()
      await relay.stop()
      server.closeAllConnections()
      await Promise.race([closed, new Promise((resolve) => setTimeout(resolve, 3_000).unref())])
      await store.close()
    },
  }
}

function hasTls(settings: Settings): boolean {
  return settings.TLS_CERT !== ''
}

function originRule(settings: Settings): OriginRule {
  return {
    publicOrigin: settings.PUBLIC_ORIGIN,
    isSecure: hasTls(settings) || settings.PUBLIC_ORIGIN.startsWith('https:'),
    isLoopback: isLoopbackHost(settings.HOST),
  }
}

function listen(server: Server, settings: Settings): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once('error', reject)
    server.listen(settings.PORT, settings.HOST, () => {
      server.off('error', reject)
      resolve((server.address() as AddressInfo).port)
    })
  })
}

/** An address to type: one that listens everywhere is reached here by its loopback name. */
function shownHost(host: string): string {
  if (host === '0.0.0.0' || host === '::') return 'localhost'
  return host.includes(':') ? `[${host}]` : host
}
