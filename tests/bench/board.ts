import chromiumPackage from '@sparticuz/chromium'
import { BoardPage } from '../browser/boardPage.ts'
import { launchChromium } from '../browser/chromium.ts'
import { startServer } from '../browser/runningServer.ts'
import type { BenchRow } from './row.ts'

const DRAG_MS = 3_000

/** The board in a real browser with a software renderer: first picture on a fresh visit, and a light dragged for 3 s. */
export async function boardRows(): Promise<BenchRow[]> {
  process.env['CHROME_PATH'] ??= await chromiumPackage.executablePath()
  const server = await startServer()
  const browser = await launchChromium()
  try {
    const context = await browser.newContext({ viewport: { width: 1440, height: 900 } })
    const page = await context.newPage()
    await page.goto(server.links.photographer)
    await page.getByLabel('Your name').fill('Ines')
    const joinedMs = Date.now()
    await page.getByRole('button', { name: 'Come in' }).click()
    await page.locator('.frame-print canvas:is([data-picture="sketched"], [data-picture="drawn"])').waitFor()
    const firstPictureMs = Date.now() - joinedMs
    await page.locator('.frame-print canvas[data-picture="drawn"]').waitFor()
    const fullPictureMs = Date.now() - joinedMs
    await context.close()

    const ines = await BoardPage.join(await browser.newContext({ viewport: { width: 1440, height: 900 } }), server.links.photographer, 'Ines')
    await ines.page.locator('.frame-print canvas[data-picture="drawn"]').waitFor()
    await ines.page.waitForTimeout(2_000)
    await ines.page.evaluate(() => {
      const counts = { pictures: 0, longestTaskMs: 0 }
      Object.assign(globalThis, { counts })
      const put = CanvasRenderingContext2D.prototype.putImageData
      CanvasRenderingContext2D.prototype.putImageData = function (this: CanvasRenderingContext2D, ...args: Parameters<typeof put>) {
        if (this.canvas.closest('.frame-print')) counts.pictures++
        return put.apply(this, args)
      } as typeof put
      new PerformanceObserver((list) => {
        for (const entry of list.getEntries()) counts.longestTaskMs = Math.max(counts.longestTaskMs, entry.duration)
      }).observe({ type: 'longtask' })
    })
    const from = await ines.grabOnFloor('C')
    const startedMs = Date.now()
    let steps = 0
    for (; Date.now() - startedMs < DRAG_MS; steps++) {
      await ines.page.mouse.move(from.x - 40 + 40 * Math.cos(steps / 12), from.y + 40 * Math.sin(steps / 12))
    }
    const tookMs = Date.now() - startedMs
    const counts = await ines.page.evaluate(() => (globalThis as unknown as { counts: { pictures: number; longestTaskMs: number } }).counts)
    await ines.page.mouse.up()
    return [
      { name: 'board: first picture after coming in, fresh visit', value: firstPictureMs, unit: 'ms', target: 1_500, better: 'lower', note: 'small and coarse; the subject is fetched from when the door opens' },
      { name: 'board: the same in full', value: fullPictureMs, unit: 'ms', target: null, better: 'lower', note: 'at the size of the print' },
      { name: 'board: Frames a second while a light is dragged', value: (counts.pictures * 1_000) / tookMs, unit: '1/s', target: 30, better: 'higher', note: `3 s, demo look, software renderer; the hand moved ${(steps / tookMs * 1_000).toFixed(0)} times a second` },
      { name: 'board: longest main-thread task in that drag', value: counts.longestTaskMs, unit: 'ms', target: 50, better: 'lower', note: '0 means none over 50 ms' },
    ]
  } finally {
    await browser.close()
    await server.stop()
  }
}
