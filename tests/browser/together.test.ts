import type { Browser, BrowserContext } from 'playwright-core'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { BoardPage } from './boardPage.ts'
import { sharedChromium } from './chromium.ts'
import { LAPTOP } from './demoJob.ts'
import { startServer, type RunningServer } from './runningServer.ts'

/**
 * Not kept on the device, as other checks' pages: one that is about to be when the relay is killed is told so by the
 * browser's own log, which the page cannot keep quiet.
 */
const UNKEPT = { ...LAPTOP, serviceWorkers: 'block' } as const

/** Three people, three tabs of one browser: one cookie jar, as on one machine on the set. */
describe('three people on one board', () => {
  let browser: Browser
  let server: RunningServer
  let context: BrowserContext
  let ines: BoardPage
  let tobin: BoardPage
  let saskia: BoardPage

  beforeAll(async () => {
    browser = await sharedChromium()
    // One of its own: it is killed.
    server = await startServer()
    context = await browser.newContext(UNKEPT)
    ines = await BoardPage.join(context, server.links.photographer, 'Ines')
    tobin = await BoardPage.join(context, server.links.assistant, 'Tobin')
    saskia = await BoardPage.join(context, server.links.client, 'Saskia')
  })
  afterEach(async () => {
    expect([...ines.troubles, ...tobin.troubles, ...saskia.troubles]).toEqual([])
  })
  afterAll(async () => {
    await context?.close()
    await server?.stop()
  })

  it('the key leaves the address bar, and each tab keeps its own seat', async () => {
    const urls = [ines, tobin, saskia].map(({ page }) => page.url())
    expect(urls.every((url) => !url.includes('#') && url.includes('/s/'))).toBe(true)
    expect(new Set(urls).size).toBe(3)
    await Promise.all([ines, tobin, saskia].map(async (board) => {
      await board.page.reload()
      await board.ready()
      await board.live()
    }))
    await ines.page.getByRole('button', { name: /^3 here/ }).waitFor()
  })

  it('undo takes back one’s own work and never another’s', async () => {
    const start = { A: await ines.numbers('A'), B: await ines.numbers('B') }
    await ines.stepPower('A', 3)
    const inesDid = await ines.numbersAfter('A', start.A)
    await tobin.untilNumbers('A', inesDid)
    await tobin.stepPower('B', -4)
    const tobinDid = await tobin.numbersAfter('B', start.B)
    await ines.untilNumbers('B', tobinDid)
    while (await ines.page.getByRole('button', { name: 'Undo' }).isEnabled()) await ines.undo()
    for (const board of [ines, tobin]) {
      await board.untilNumbers('A', start.A)
      await board.untilNumbers('B', tobinDid)
    }
    await tobin.undo()
    await expect.poll(() => tobin.numbers('B')).not.toBe(tobinDid)
    expect(await tobin.numbers('A')).toBe(start.A)
  })

  it('two lights dragged at once both end where each hand left them, and each sees the other while it moves', async () => {
    const before = { A: await ines.numbers('A'), B: await tobin.numbers('B') }
    const a = await ines.grabOnFloor('A')
    const b = await tobin.grabOnFloor('B')
    for (let step = 1; step <= 10; step++) {
      await ines.page.mouse.move(a.x - 3 * step, a.y + 2 * step)
      await tobin.page.mouse.move(b.x + 1.5 * step, b.y - step)
    }
    // Still in the hand: the other board's numbers follow already.
    await tobin.numbersAfter('A', before.A)
    await ines.numbersAfter('B', before.B)
    await ines.page.mouse.up()
    await tobin.page.mouse.up()
    const moved = { A: await ines.numbers('A'), B: await tobin.numbers('B') }
    expect(moved.A).not.toBe(before.A)
    expect(moved.B).not.toBe(before.B)
    for (const board of [ines, tobin, saskia]) {
      await board.untilNumbers('A', moved.A)
      await board.untilNumbers('B', moved.B)
    }
    // Kept, not only shown: a newcomer reads the same.
    await saskia.page.reload()
    await saskia.ready()
    await saskia.untilNumbers('A', moved.A)
    await saskia.untilNumbers('B', moved.B)
  })

  it('a client without the pen moves nothing; with it, something; and gives it back', async () => {
    const start = await ines.numbers('A')
    await saskia.stepPower('A', 3)
    const grabbed = await saskia.grabOnFloor('A')
    await saskia.page.mouse.move(grabbed.x - 40, grabbed.y + 10, { steps: 5 })
    await saskia.page.mouse.up()
    expect(await saskia.numbers('A')).toBe(start)
    expect(await ines.numbers('A')).toBe(start)

    await ines.page.getByRole('button', { name: /^\d here/ }).click()
    await ines.page.getByRole('button', { name: 'Hand over the pen to Saskia' }).click()
    await ines.page.keyboard.press('Escape')
    await expect.poll(async () => {
      await saskia.stepPower('A', 2)
      return saskia.numbers('A')
    }).not.toBe(start)
    await ines.untilNumbers('A', await saskia.numbers('A'))
  })

  it('edits made while the relay is gone merge when it is back', async () => {
    const start = { A: await ines.numbers('A'), B: await ines.numbers('B') }
    await server.kill()
    await ines.page.getByRole('button', { name: /^Connection: (?!Live)/ }).waitFor()
    await tobin.page.getByRole('button', { name: /^Connection: (?!Live)/ }).waitFor()
    await ines.stepPower('A', 5)
    await tobin.stepPower('B', -5)
    const did = { A: await ines.numbersAfter('A', start.A), B: await tobin.numbersAfter('B', start.B) }
    server = await startServer({ dataDir: server.dataDir, port: server.port })
    for (const board of [ines, tobin, saskia]) {
      await board.untilNumbers('A', did.A)
      await board.untilNumbers('B', did.B)
    }
  })

  it('what another person saw is there after kill -9 and a reload', async () => {
    const start = await ines.numbers('C')
    await ines.stepPower('C', -6)
    const did = await ines.numbersAfter('C', start)
    await tobin.untilNumbers('C', did)
    await server.kill()
    // Ines's own copy is gone with her browser; only the relay can know.
    await ines.page.close()
    server = await startServer({ dataDir: server.dataDir, port: server.port })
    const fresh = await browser.newContext(UNKEPT)
    const newcomer = await BoardPage.join(fresh, server.links.photographer, 'Ines')
    await newcomer.untilNumbers('C', did)
    expect(newcomer.troubles).toEqual([])
    await fresh.close()
  })
})
