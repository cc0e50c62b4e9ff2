import { mkdtempSync, rmSync } from 'node:fs'
import { connect } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import * as Y from 'yjs'
import { makeLog } from '../../server/log.ts'
import { readSettings, SettingsError } from '../../server/settings.ts'
import { SqliteStore } from '../../server/store/sqliteStore.ts'
import { MemoryStore } from '../../server/store/memoryStore.ts'
import { StoreError } from '../../server/store/storeError.ts'
import { openRelay, type TestRelay } from './openRelay.ts'
import { rawJoin, syncMessage, updateSetting } from './rawPeer.ts'
import { startRelay, takeSeat } from './startedRelay.ts'

const folder = mkdtempSync(join(tmpdir(), 'halfstop-operate-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

/** Values by name and labels, as Prometheus reads its text format (https://prometheus.io/docs/instrumenting/exposition_formats/). */
async function metricsOf(relay: Pick<TestRelay, 'origin'>, headers: Record<string, string> = {}): Promise<Map<string, number>> {
  const answer = await fetch(`${relay.origin}/metrics`, { headers })
  expect([answer.status, answer.headers.get('content-type')]).toEqual([200, 'text/plain; version=0.0.4; charset=utf-8'])
  const lines = (await answer.text()).split('\n').filter((line) => line !== '' && !line.startsWith('#'))
  return new Map(lines.map((line) => {
    const [, name, value] = /^(\S+|\S+\{.*\}) ([-+0-9.eEINaNf]+)$/.exec(line) ?? []
    return [name ?? `unread: ${line}`, Number(value)]
  }))
}

describe('what an operator can ask', () => {
  it('counts people, rooms, edits, deliveries, bytes, appends and refusals', async () => {
    const relay = await openRelay({ MERGE_WINDOW_MS: 200 })
    const { photographer, assistant, client } = await relay.crew()
    const [working, helping, watching] = [await rawJoin(relay, photographer), await rawJoin(relay, assistant), await rawJoin(relay, client)]
    working.send(syncMessage(2, updateSetting('first', 1)))
    const before = watching.heard.indexOf(await watching.hear('change'))
    // The first opens the window in which these two wait together.
    working.send(syncMessage(2, updateSetting('second', 1)))
    helping.send(syncMessage(2, updateSetting('third', 1)))
    await watching.hear('change', () => true, before + 1)
    watching.send(syncMessage(2, updateSetting('not mine to write', 1)))
    await watching.hear('denied')
    helping.send(new Uint8Array([9]))
    await helping.closed
    await relay.post('/api/seats', { jobId: 'nowhere', key: 'wrong', name: 'X' })
    const metrics = await metricsOf(relay)
    expect(Object.fromEntries([...metrics].filter(([name]) => /^halfstop_/.test(name)))).toMatchObject({
      'halfstop_people': 2, 'halfstop_rooms': 1, 'halfstop_ready': 1,
      'halfstop_edits_total': 3, 'halfstop_edits_merged_total': 1, 'halfstop_deliveries_total': 9,
      'halfstop_store_append_seconds_count': 2,
      'halfstop_refusals_total{what="edit",code="no-pen"}': 1,
      'halfstop_refusals_total{what="connection",code="badFrame"}': 1,
      'halfstop_refusals_total{what="request",code="wrong-key"}': 1,
    })
    expect(metrics.get('halfstop_messages_total')).toBe(5)
    expect(metrics.get('halfstop_sent_bytes_total{carries="edits"}')).toBeGreaterThan(60)
    expect(metrics.get('halfstop_received_bytes_total')).toBeGreaterThan(60)
  })

  it('is shown to this machine alone, or to whoever brings the key', async () => {
    const status = async (relay: TestRelay, headers: Record<string, string> = {}) =>
      (await fetch(`${relay.origin}/metrics`, { headers })).status
    const local = await openRelay()
    expect(await status(local)).toBe(200)
    const behindProxy = await openRelay({ PROXY_HOPS: 1 })
    expect(await status(behindProxy)).toBe(404)
    const key = 'k'.repeat(32)
    const withKey = await openRelay({ PROXY_HOPS: 1, METRICS_KEY: key })
    expect([await status(withKey), await status(withKey, { authorization: `Bearer ${'x'.repeat(32)}` })]).toEqual([404, 404])
    expect(await status(withKey, { authorization: `Bearer ${key}` })).toBe(200)
  })

  it('does not print a secret setting that cannot be used', () => {
    const read = () => readSettings({ METRICS_KEY: 'too short' })
    expect(read).toThrow(SettingsError)
    expect(read).not.toThrow(/too short/)
  })

  it('tells the living from the ready: while edits are not kept, nobody new should be sent here', async () => {
    class FullStore extends MemoryStore {
      override async append(): Promise<number> {
        throw new StoreError('full', 'no space')
      }
    }
    const relay = await openRelay({}, new FullStore())
    const status = async (path: string) => (await fetch(`${relay.origin}${path}`)).status
    const { photographer } = await relay.crew()
    const working = await rawJoin(relay, photographer)
    expect([await status('/healthz'), await status('/readyz')]).toEqual([200, 200])
    working.send(syncMessage(2, updateSetting('edit', 1)))
    await working.hear('denied')
    expect([await status('/healthz'), await status('/readyz')]).toEqual([200, 503])
    expect((await metricsOf(relay)).get('halfstop_ready')).toBe(0)
  })
})

describe('the log', () => {
  it('is one JSON object a line, and strikes out what must never stand in it', () => {
    const lines: string[] = []
    const log = makeLog('info', (line) => lines.push(line))
    log.debug('not this')
    log.warn('came in', { seatId: 's1', name: 'Ines', key: 'abc', secret: 'def', url: '/j/x#abc' })
    expect(lines.length).toBe(1)
    expect(JSON.parse(lines[0] ?? '')).toMatchObject({ level: 'warn', event: 'came in', seatId: 's1' })
    expect(lines[0]).toMatch(/"time":"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z"/)
    for (const secret of ['Ines', 'abc', 'def']) expect(lines[0]).not.toContain(secret)
  })
})

describe('told to stop', () => {
  it('keeps what was acknowledged and is gone within 5 s, whoever hangs on', { timeout: 60_000 }, async () => {
    const dataFolder = join(folder, 'stopped')
    const relay = await startRelay({ DATA_DIR: dataFolder, LOG_LEVEL: 'debug' })
    expect((await metricsOf(relay)).has('nodejs_eventloop_lag_p99_seconds')).toBe(true)
    const seats = [
      await takeSeat(relay.origin, relay.links.assistant as string, 'Tobin'), await takeSeat(relay.origin, relay.links.client as string, 'Pell'),
    ] as const
    const working = await rawJoin(relay, seats[0])
    const deaf = await rawJoin(relay, seats[1])
    await working.document()
    deaf.socket.pause()
    const port = Number(new URL(relay.origin).port)
    const halfOpen = connect(port, '127.0.0.1', () => halfOpen.write('GET /s/x/plan HTTP/1.1\r\nHost: 127.0.0.1\r\nUpgrade: websocket\r\n'))
    halfOpen.on('error', () => {})
    const acknowledged = new Y.Doc()
    const typing = setInterval(() => working.socket.readyState === 1 && working.send(syncMessage(2, updateSetting(`k${Math.random()}`, 1))), 2)
    await working.hear('change')
    const startedMs = performance.now()
    expect(await relay.end('SIGTERM')).toBe(0)
    const tookMs = performance.now() - startedMs
    clearInterval(typing)
    expect(tookMs).toBeLessThan(5_000)
    expect((await working.closed).code).toBe(1001)
    for (const heard of working.heard) if (heard.kind === 'change' || heard.kind === 'answer') Y.applyUpdate(acknowledged, heard.update)
    const store = new SqliteStore(join(dataFolder, 'halfstop.db'))
    const kept = new Y.Doc()
    for (const update of (await store.readDocument({ jobId: seats[0].jobId, document: 'plan' })).updates) Y.applyUpdate(kept, update)
    await store.close()
    expect(acknowledged.getMap('m').size).toBeGreaterThan(0)
    expect(kept.getMap('m').toJSON()).toEqual(acknowledged.getMap('m').toJSON())
    halfOpen.destroy()
  })
})
