import { onTestFinished } from 'vitest'
import type { Access } from '../../server/access/access.ts'
import type { Role } from '../../server/access/role.ts'
import { makeLog } from '../../server/log.ts'
import { makeAccess, serve, type ServeParts } from '../../server/serve.ts'
import { readSettings, type Settings } from '../../server/settings.ts'
import { MemoryStore } from '../../server/store/memoryStore.ts'
import type { Store } from '../../server/store/store.ts'

/** A person as a program without a cookie jar: the seat and its secret. */
export interface Seated {
  readonly seatId: string
  readonly jobId: string
  readonly role: Role
  readonly name: string
  readonly secret: string
}

export interface TestRelay {
  /** Where it really listens, whatever public origin it was told. */
  readonly origin: string
  readonly store: Store
  readonly access: Access
  /** Everything logged, at the finest level. */
  readonly logLines: string[]
  post(path: string, body: unknown, headers?: Record<string, string>): Promise<Response>
  /** A new job; its keys by role. */
  newJob(): Promise<{ jobId: string; keys: Record<Role, string> }>
  seat(jobId: string, key: string, name: string): Promise<Seated>
  /** A new job with one person in each role. */
  crew(): Promise<{ jobId: string; keys: Record<Role, string>; photographer: Seated; assistant: Seated; client: Seated }>
  stop(): Promise<void>
}

/** The whole server on a free port, in this process, stopped when the test ends. */
export async function openRelay(
  changed: Partial<Settings> = {}, store: Store = new MemoryStore(), parts: Partial<ServeParts> = {},
): Promise<TestRelay> {
  const settings: Settings = { ...readSettings({}), PORT: 0, ...changed }
  const logLines: string[] = []
  const access = parts.access ?? makeAccess(store, settings)
  const running = await serve({
    settings, store, log: makeLog('debug', (line) => logLines.push(line)), clientFolder: '/nowhere', demo: null, ...parts, access,
  })
  let isStopped = false
  const origin = `http://127.0.0.1:${running.port}`
  const relay: TestRelay = {
    origin, store, access, logLines,
    post: (path, body, headers = {}) => fetch(`${origin}${path}`, {
      method: 'POST', body: JSON.stringify(body), headers: { 'content-type': 'application/json', ...headers },
    }),
    newJob: () => access.createJob([]),
    async seat(jobId, key, name) {
      const response = await relay.post('/api/seats', { jobId, key, name, headless: true })
      if (response.status !== 201) throw new Error(`no seat: ${response.status} ${await response.text()}`)
      return (await response.json()) as Seated
    },
    async crew() {
      const { jobId, keys } = await relay.newJob()
      return {
        jobId, keys,
        photographer: await relay.seat(jobId, keys.photographer, 'Ines'),
        assistant: await relay.seat(jobId, keys.assistant, 'Tobin'),
        client: await relay.seat(jobId, keys.client, 'Pell'),
      }
    },
    async stop() {
      if (isStopped) return
      isStopped = true
      await running.stop()
    },
  }
  onTestFinished(relay.stop)
  return relay
}
