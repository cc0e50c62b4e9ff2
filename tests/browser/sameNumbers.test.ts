import { execFileSync } from 'node:child_process'
import { createServer, type Server } from 'node:http'
import type { AddressInfo } from 'node:net'
import type { Browser } from 'playwright-core'
import { build, type Rolldown } from 'vite'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { sharedChromium } from './chromium.ts'
import { firstDifference } from './firstDifference.ts'
import { predictionsOfDemo } from './predictionsOfDemo.ts'

/** The core as one plain script, as a page and a worker can load it. */
async function coreScript(): Promise<string> {
  const built = await build({
    configFile: false,
    logLevel: 'error',
    build: {
      write: false,
      minify: false,
      lib: { entry: 'tests/browser/predictionsOfDemo.ts', name: 'core', formats: ['iife'] },
    },
  })
  const [output] = built as Rolldown.RolldownOutput[]
  return (output!.output[0] as Rolldown.OutputChunk).code
}

describe('same plan, same numbers', () => {
  let browser: Browser
  let server: Server
  let address: string
  const fromNode = predictionsOfDemo()

  beforeAll(async () => {
    const script = await coreScript()
    server = createServer((request, response) => {
      const isScript = request.url === '/core.js'
      response.writeHead(200, { 'content-type': `${isScript ? 'text/javascript' : 'text/html'}; charset=utf-8` })
      response.end(isScript ? script : '<!doctype html><title>numbers</title>')
    })
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
    address = `http://127.0.0.1:${(server.address() as AddressInfo).port}`
    browser = await sharedChromium()
  })

  afterAll(async () => {
    server?.close()
  })

  it('in the page', async () => {
    const page = await browser.newPage()
    await page.goto(address)
    await page.addScriptTag({ url: '/core.js' })
    const fromPage = await page.evaluate(() => (globalThis as unknown as { predictionsOfDemo(): string }).predictionsOfDemo())
    expect(firstDifference(fromPage, fromNode)).toBeNull()
    await page.close()
  })

  it('in a worker', async () => {
    const page = await browser.newPage()
    await page.goto(address)
    const fromWorker = await page.evaluate(async (coreUrl) => {
      const source = `importScripts(${JSON.stringify(coreUrl)}); postMessage(predictionsOfDemo())`
      const worker = new Worker(URL.createObjectURL(new Blob([source], { type: 'text/javascript' })))
      return new Promise<string>((resolve, reject) => {
        worker.onmessage = (event) => resolve(event.data as string)
        worker.onerror = (event) => reject(new Error(event.message))
      })
    }, `${address}/core.js`)
    expect(firstDifference(fromWorker, fromNode)).toBeNull()
    await page.close()
  })

  it('on the command line, to the 12 digits it prints', () => {
    const rounded: unknown = JSON.parse(fromNode, (_, value: unknown) => (typeof value === 'number' ? Number(value.toPrecision(12)) : value))
    const looks = Object.entries(demoPlan.looks)
    const printed = looks.map(([lookId]) =>
      JSON.parse(execFileSync('npx', ['--no-install', 'tsx', 'server/cli/predict.ts', '--demo', '--look', lookId], { encoding: 'utf8' })) as unknown)
    expect(firstDifference(JSON.stringify(printed), JSON.stringify(rounded))).toBeNull()
  })

  it('the elementary functions they rest on agree', async () => {
    // Not all of Math does: sin, cos and pow differ between engine versions, which is why the core avoids them.
    const names = ['exp', 'log', 'log2', 'tan', 'atan', 'acos', 'asin', 'cbrt', 'sqrt'] as const
    const sample = (functions: readonly string[]): string => JSON.stringify(functions.map((name) => {
      const call = Math[name as 'exp']
      return Array.from({ length: 5_000 }, (_, i) => String(call(((i * 7919) % 5000) / 2500 - (name === 'log' || name === 'log2' || name === 'sqrt' ? 0 : 1))))
    }))
    const page = await browser.newPage()
    await page.goto(address)
    const fromPage = await page.evaluate(`(${sample.toString().replaceAll('__name', '((f) => f)')})(${JSON.stringify(names)})`)
    expect(firstDifference(String(fromPage), sample(names))).toBeNull()
    await page.close()
  })
})
