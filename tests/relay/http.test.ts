import { mkdirSync, mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { request } from 'node:http'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { brotliDecompressSync, gunzipSync } from 'node:zlib'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import * as Y from 'yjs'
import { readPlanFromDocument } from '../../shared-core/document/readPlan.ts'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { PROBLEMS } from '../../server/http/problems.ts'
import { makeAccess, mayOpenDemo } from '../../server/serve.ts'
import { readSettings } from '../../server/settings.ts'
import { openDemoJob } from '../../server/startup/demoJob.ts'
import { MemoryStore } from '../../server/store/memoryStore.ts'
import { openRelay, type TestRelay } from './openRelay.ts'

const folder = mkdtempSync(join(tmpdir(), 'halfstop-page-'))
const script = `console.log(${JSON.stringify('light '.repeat(500))})`
beforeAll(() => {
  mkdirSync(join(folder, 'assets'))
  writeFileSync(join(folder, 'index.html'), '<!doctype html><title>Halfstop</title>')
  writeFileSync(join(folder, 'assets', 'main-abc123.js'), script)
  writeFileSync(join(folder, 'sw.js'), '// worker')
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

async function problem(response: Response): Promise<[number, string]> {
  const body = (await response.json()) as { code: keyof typeof PROBLEMS; message: string }
  expect(body.message).toBe(PROBLEMS[body.code].message)
  return [response.status, body.code]
}

/** `fetch` neither sends a Host of one's choice nor leaves bytes compressed. */
function rawGet(relay: TestRelay, path: string, headers: Record<string, string>): Promise<{ status: number; headers: Record<string, unknown>; body: Buffer }> {
  return new Promise((resolve, reject) => {
    request(`${relay.origin}${path}`, { headers }, (response) => {
      const chunks: Buffer[] = []
      response.on('data', (chunk: Buffer) => chunks.push(chunk))
      response.on('end', () => resolve({ status: response.statusCode ?? 0, headers: response.headers, body: Buffer.concat(chunks) }))
    }).on('error', reject).end()
  })
}

describe('the page', () => {
  it.each(['/', '/j/demo', '/s/AbC-_9'])('is given at %s, fresh each time', async (path) => {
    const relay = await openRelay({}, undefined, { clientFolder: folder })
    const answer = await fetch(`${relay.origin}${path}`)
    expect(answer.status).toBe(200)
    expect(await answer.text()).toContain('<title>Halfstop</title>')
    expect(answer.headers.get('cache-control')).toBe('no-cache')
    const known = await fetch(`${relay.origin}${path}`, { headers: { 'if-none-match': String(answer.headers.get('etag')) } })
    expect(known.status).toBe(304)
  })

  it('has hashed files that may be kept for ever, and a worker that may not', async () => {
    const relay = await openRelay({}, undefined, { clientFolder: folder })
    expect((await fetch(`${relay.origin}/assets/main-abc123.js`)).headers.get('cache-control')).toContain('immutable')
    expect((await fetch(`${relay.origin}/sw.js`)).headers.get('cache-control')).toBe('no-cache')
  })

  it('is compressed as the browser can take it, and is the same bytes each way', async () => {
    const relay = await openRelay({}, undefined, { clientFolder: folder })
    const path = '/assets/main-abc123.js'
    const [plain, gzip, brotli] = [
      await rawGet(relay, path, {}), await rawGet(relay, path, { 'accept-encoding': 'gzip' }), await rawGet(relay, path, { 'accept-encoding': 'gzip, br' }),
    ]
    expect([plain.headers['content-encoding'], gzip.headers['content-encoding'], brotli.headers['content-encoding']]).toEqual([undefined, 'gzip', 'br'])
    expect(plain.body.toString()).toBe(script)
    expect(gunzipSync(gzip.body).toString()).toBe(script)
    expect(brotliDecompressSync(brotli.body).toString()).toBe(script)
    expect(brotli.body.byteLength).toBeLessThan(plain.body.byteLength)
  })

  it('leaves out a coding that the asker refuses (RFC 9110, 12.4.2)', async () => {
    const relay = await openRelay({}, undefined, { clientFolder: folder })
    const codingFor = async (accepted: string) => (await rawGet(relay, '/assets/main-abc123.js', { 'accept-encoding': accepted })).headers['content-encoding']
    expect(await codingFor('br;q=0, gzip')).toBe('gzip')
    expect(await codingFor('gzip;q=0.5, BR; q=0.000')).toBe('gzip')
    expect(await codingFor('br;q=0, gzip;q=0')).toBeUndefined()
    expect(await codingFor('br;q=0.1')).toBe('br')
  })

  it.each(['/../package.json', '/assets/../../package.json', '/%2e%2e/package.json', '/etc/passwd', '/j/', '/j/a/b', '/s/', '/assets/'])(
    'is all there is: %s is not found', async (path) => {
      const relay = await openRelay({}, undefined, { clientFolder: join(folder, 'assets') })
      expect((await rawGet(relay, path, {})).status).toBe(404)
    })

  it('says so when it was not built', async () => {
    const relay = await openRelay()
    const answer = await fetch(`${relay.origin}/`)
    expect([answer.status, await answer.text()]).toEqual([503, 'The page has not been built. Run: npm run build\n'])
  })
})

describe('every answer', () => {
  it.each(['/', '/api/welcome', '/nothing/here', '/s/nobody/me'])('at %s carries the headers that fence the page in', async (path) => {
    const relay = await openRelay({}, undefined, { clientFolder: folder })
    const { headers } = await fetch(`${relay.origin}${path}`)
    const policy = String(headers.get('content-security-policy'))
    expect(policy).toContain("default-src 'none'")
    expect(policy).toContain("script-src 'self';")
    expect(policy).toContain("frame-ancestors 'none'")
    expect(headers.get('x-content-type-options')).toBe('nosniff')
    expect(headers.get('referrer-policy')).toBe('no-referrer')
    expect(headers.get('x-powered-by')).toBeNull()
  })
})

describe('the API', () => {
  it('answers each misuse from its catalogue', async () => {
    const relay = await openRelay({ MAX_BODY_BYTES: 5_000 })
    const { photographer } = await relay.crew()
    const post = (path: string, body: string, headers = {}) => fetch(`${relay.origin}${path}`, {
      method: 'POST', body, headers: { 'content-type': 'application/json', ...headers },
    })
    expect(await problem(await fetch(`${relay.origin}/api/nothing`))).toEqual([404, 'not-found'])
    expect(await problem(await fetch(`${relay.origin}/api/seats`))).toEqual([405, 'wrong-method'])
    expect(await problem(await fetch(`${relay.origin}/s/${photographer.seatId}/pen`))).toEqual([405, 'wrong-method'])
    expect(await problem(await post('/api/seats', '{}', { 'content-type': 'text/plain' }))).toEqual([415, 'not-json'])
    expect(await problem(await post('/api/seats', '{nope'))).toEqual([400, 'bad-json'])
    expect(await problem(await post('/api/seats', '{"jobId":5}'))).toEqual([400, 'bad-request'])
    expect(await problem(await post('/api/seats', `"${'x'.repeat(6_000)}"`))).toEqual([413, 'too-large'])
    expect(await problem(await post('/api/jobs', '{"plan":{"title":5}}'))).toEqual([422, 'bad-plan'])
    expect(await problem(await post(`/s/${photographer.seatId}/pen`, '{"toSeatId":null}'))).toEqual([401, 'no-seat'])
  })

  it('cuts off a body that grows past the limit without saying so', async () => {
    const relay = await openRelay({ MAX_BODY_BYTES: 5_000 })
    const status = await new Promise<number>((resolve) => {
      const sending = request(`${relay.origin}/api/jobs`, { method: 'POST', headers: { 'content-type': 'application/json' } },
        (response) => resolve(response.statusCode ?? 0))
      sending.on('error', () => resolve(-1))
      for (let count = 0; count < 50; count++) sending.write('x'.repeat(1_000))
    })
    expect([413, -1]).toContain(status)
    expect((await fetch(`${relay.origin}/healthz`)).status).toBe(200)
  })

  it.each([
    ['another site', { origin: 'https://elsewhere.example' }], ['a page without an origin', { origin: 'null' }],
    ['a browser that says so', { 'sec-fetch-site': 'cross-site' }],
  ])('does nothing for %s', async (_name, headers) => {
    const relay = await openRelay()
    const { jobId, keys } = await relay.newJob()
    for (const [path, body] of [['/api/jobs', {}], ['/api/seats', { jobId, key: keys.client, name: 'X' }]] as const) {
      expect(await problem(await relay.post(path, body, headers as Record<string, string>))).toEqual([403, 'foreign-origin'])
    }
  })

  it('answers on loopback only to loopback’s names, so that no foreign name can be led here', async () => {
    const relay = await openRelay()
    expect((await rawGet(relay, '/api/welcome', { host: 'rebound.example' })).status).toBe(403)
    expect((await rawGet(relay, '/api/welcome', { host: `localhost:${new URL(relay.origin).port}` })).status).toBe(200)
  })

  it('lets in behind a proxy only the origin that was named', async () => {
    const relay = await openRelay({ PUBLIC_ORIGIN: 'https://plans.example' })
    const { jobId, keys } = await relay.newJob()
    const seat = (headers: Record<string, string>) => relay.post('/api/seats', { jobId, key: keys.client, name: 'Pell' }, headers)
    expect((await seat({ origin: relay.origin })).status).toBe(403)
    const answer = await seat({ origin: 'https://plans.example' })
    expect(answer.status).toBe(201)
    expect(answer.headers.getSetCookie()[0]).toMatch(/; Secure$/)
    expect(answer.headers.get('strict-transport-security')).toContain('max-age')
  })

  it('starts a job from a plan, which is then the plan document', async () => {
    const relay = await openRelay()
    const started = await relay.post('/api/jobs', { plan: demoPlan })
    expect(started.status).toBe(201)
    const { jobId } = (await started.json()) as { jobId: string }
    const doc = new Y.Doc()
    for (const update of (await relay.store.readDocument({ jobId, document: 'plan' })).updates) Y.applyUpdate(doc, update)
    const { plan, repairs } = readPlanFromDocument(doc)
    expect(plan).toEqual(demoPlan)
    expect(repairs).toEqual([])
  })

  it('starts no job where that is off, nor more than a visitor needs', async () => {
    expect(await problem(await (await openRelay({ NEW_JOBS: 'off' })).post('/api/jobs', {}))).toEqual([403, 'no-new-jobs'])
    const relay = await openRelay({ NEW_JOBS_PER_HOUR: 1 })
    expect((await relay.post('/api/jobs', {})).status).toBe(201)
    expect(await problem(await relay.post('/api/jobs', {}))).toEqual([429, 'too-many-tries'])
  })
})

describe('the demo job without a link', () => {
  async function openWithDemo() {
    const store = new MemoryStore()
    const access = makeAccess(store, readSettings({}))
    const keysPath = join(mkdtempSync(join(folder, 'demo-')), 'keys.json')
    const demo = await openDemoJob(store, access, keysPath)
    return { store, access, keysPath, demo, relay: await openRelay({}, store, { access, demo }) }
  }

  it.each(['photographer', 'assistant', 'client'] as const)('is opened as %s where the server offers it', async (role) => {
    const { relay, demo } = await openWithDemo()
    expect(await (await fetch(`${relay.origin}/api/welcome`)).json()).toEqual({ demoRoles: ['photographer', 'assistant', 'client'], newJobs: true })
    const answer = await relay.post('/api/demo-seat', { role, name: 'Visitor' }, { origin: relay.origin })
    expect([answer.status, await answer.json()]).toMatchObject([201, { jobId: demo.jobId, role, name: 'Visitor' }])
    expect(answer.headers.getSetCookie()[0]).toContain('HttpOnly')
  })

  it('is not opened by pages of other sites, nor where the server does not offer it', async () => {
    const { relay } = await openWithDemo()
    const body = { role: 'photographer', name: 'X' }
    expect(await problem(await relay.post('/api/demo-seat', body, { origin: 'https://elsewhere.example' }))).toEqual([403, 'foreign-origin'])
    const closed = await openRelay()
    expect(await (await fetch(`${closed.origin}/api/welcome`)).json()).toEqual({ demoRoles: [], newJobs: true })
    expect(await problem(await closed.post('/api/demo-seat', body))).toEqual([404, 'no-demo'])
  })

  it('is offered on this machine’s own addresses alone, and not past a proxy', () => {
    const offered = (environment: Record<string, string>) => mayOpenDemo(readSettings(environment))
    expect([{}, { HOST: 'localhost' }, { HOST: '::1' }, { HOST: '127.0.0.5' }].map(offered)).toEqual([true, true, true, true])
    expect([
      { HOST: '0.0.0.0' }, { HOST: '::' }, { HOST: '192.168.1.5' }, { HOST: '127.0.0.1.example' }, { DEMO: 'off' },
      { PUBLIC_ORIGIN: 'https://plans.example' }, { PROXY_HOPS: '1' },
    ].map(offered)).toEqual([false, false, false, false, false, false, false])
  })

  it('keeps its links from start to start, and makes new ones for those that no longer open', async () => {
    const { store, access, keysPath, demo } = await openWithDemo()
    expect(statSync(keysPath).mode & 0o077).toBe(0)
    expect((await openDemoJob(store, access, keysPath)).keys).toEqual(demo.keys)
    await access.renewLink(demo.jobId, 'client')
    const later = await openDemoJob(store, access, keysPath)
    expect(later.keys).toMatchObject({ photographer: demo.keys.photographer, assistant: demo.keys.assistant })
    expect(later.keys.client).not.toBe(demo.keys.client)
    expect(await access.opens(demo.jobId, later.keys.client, 'client')).toBe(true)
  })
})

describe('the settings', () => {
  it('are refused by name, each with its unit', () => {
    expect(() => readSettings({ PORT: 'many', MERGE_WINDOW_MS: '-1', TLS_CERT: 'a.pem', PUBLIC_ORIGIN: 'plans.example/x' })).toThrow(
      expect.objectContaining({ name: 'SettingsError', problems: [
        'PORT=many: takes a whole number from 0 to 65535 (port)', 'MERGE_WINDOW_MS=-1: takes a whole number from 0 to 1000 (ms)',
        expect.stringContaining('TLS_CERT and TLS_KEY'), expect.stringContaining('PUBLIC_ORIGIN='),
      ] }))
  })

  it('bind to this machine alone until told otherwise', () => {
    expect(readSettings({})).toMatchObject({ HOST: '127.0.0.1', PORT: 4200 })
    expect(readSettings({ HOST: '0.0.0.0', PORT: '80' })).toMatchObject({ HOST: '0.0.0.0', PORT: 80 })
  })
})
