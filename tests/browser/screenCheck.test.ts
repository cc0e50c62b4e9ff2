import type { BrowserContext, Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { axeFaults } from './axeFaults.ts'
import { BoardPage } from './boardPage.ts'
import { demoJob } from './demoJob.ts'

describe('the screen check', () => {
  const job = demoJob()
  let context: BrowserContext
  let ines: BoardPage
  let page: Page
  beforeAll(async () => {
    context = await job.newContext()
    ines = await BoardPage.join(context, job.server.links.client, 'Saskia')
    page = ines.page
  })
  beforeEach(async () => {
    await page.getByRole('button', { name: 'Agree', exact: true }).click()
    await page.getByRole('button', { name: /^Screen check/ }).click()
  })
  afterEach(async () => {
    expect(ines.troubles).toEqual([])
    await page.keyboard.press('Escape')
    await expect.poll(() => page.locator('.full-page').count()).toBe(0)
  })
  afterAll(async () => {
    await context?.close()
  })
  const touch = (name: string) => page.getByRole('button', { name, exact: true }).click()

  it('names night tint and a dim screen in words, and the relay keeps what was answered', async () => {
    expect(await axeFaults(page, '.full-page')).toEqual([])
    await touch('Nothing coloured')
    expect(await lightest(page)).toBeLessThan(255)
    await touch('Mark 4')
    expect(await lightest(page)).toBeLessThan(255)
    await touch('Mark 11')
    await touch('Yellowish')
    await touch('Clearly darker than the paper')
    expect(await axeFaults(page, '.full-page')).toEqual([])
    // Dealt shuffled: 4 1 6 3 0 5 2 7. The bluest is the fifth patch.
    for (const patch of [5, 2, 7, 4, 1, 6, 3, 8]) await page.getByRole('button', { name: new RegExp(`^Patch ${patch}\\b`) }).click()
    await page.getByRole('heading', { name: 'Night tint · Too dim' }).waitFor()
    await page.getByLabel(/^What screen is it/).fill('my phone')
    const sent = page.waitForRequest((request) => request.url().endsWith('/notes') && request.method() === 'POST')
    await touch('Keep this result')
    const { commands } = (await sent).postDataJSON() as { commands: { do: string; result: object }[] }
    expect(commands.find((command) => command.do === 'screen-check')!.result).toMatchObject({
      neutralSurround: true, darkStepsSeen: 4, lightStepsSeen: 11, nightTint: true, tooDim: true, screenWords: 'my phone', hueOrder: [0, 1, 2, 3, 4, 5, 6, 7],
    })
    await page.getByText(/^Kept with this job/).waitFor()
    expect(await axeFaults(page, '.full-page')).toEqual([])
  })

  it('measures a photographed swatch against its grey card', async () => {
    await touch('By a photograph')
    // Card and swatch, both under light that makes red 1.3 times and blue 0.7 times what it was (in linear light).
    const png = await page.evaluate(() => {
      const canvas = document.createElement('canvas')
      canvas.width = 400
      canvas.height = 200
      const context = canvas.getContext('2d')!
      const encoded = (linear: number) => Math.round(255 * (1.055 * linear ** (1 / 2.4) - 0.055))
      const lit = ([r, g, b]: readonly number[]) => `rgb(${encoded(1.3 * r!)} ${encoded(g!)} ${encoded(0.7 * b!)})`
      context.fillStyle = lit([0.18, 0.18, 0.18])
      context.fillRect(0, 0, 200, 200)
      // #6a4c93 in linear sRGB (IEC 61966-2-1).
      context.fillStyle = lit([0.1441, 0.0723, 0.2918])
      context.fillRect(200, 0, 200, 200)
      return canvas.toDataURL('image/png').split(',')[1]!
    })
    await page.locator('input[type="file"]').setInputFiles({ name: 'desk.png', mimeType: 'image/png', buffer: Buffer.from(png, 'base64') })
    const photo = page.getByRole('button', { name: /^desk\.png/ })
    const { width, height } = (await photo.boundingBox())!
    await photo.click({ position: { x: 0.25 * width, y: 0.5 * height } })
    await photo.click({ position: { x: 0.75 * width, y: 0.5 * height } })
    await page.getByText(/: the same colour\./).waitFor()
    expect(await axeFaults(page, '.full-page')).toEqual([])

    await touch('By touch')
    for (const answer of ['Nothing coloured', 'Mark 12', 'Mark 12', 'Plain grey', 'About as bright, or brighter']) await touch(answer)
    for (const patch of [5, 2, 7, 4, 1, 6, 3, 8]) await page.getByRole('button', { name: new RegExp(`^Patch ${patch}\\b`) }).click()
    await page.getByRole('heading', { name: 'Good enough to judge colour on' }).waitFor()
    const sent = page.waitForRequest((request) => request.url().endsWith('/notes') && request.method() === 'POST')
    await touch('Keep this result')
    const { commands } = (await sent).postDataJSON() as { commands: { do: string; result: { swatchPhotoHash: string } }[] }
    const { swatchPhotoHash } = commands.find((command) => command.do === 'screen-check')!.result
    expect(swatchPhotoHash).toMatch(/^[0-9a-f]{64}$/)
    const kept = await page.evaluate(async (hash) => (await fetch(`${location.pathname}/kept/${hash}`)).headers.get('content-type'), swatchPhotoHash)
    expect(kept).toBe('image/jpeg')
  })
})

/** The lightest ground or mark painted by style in the page, 0-255. */
function lightest(page: Page): Promise<number> {
  return page.locator('.full-page').evaluate((root) => Math.max(...[...root.querySelectorAll('*')].flatMap((each) =>
    (/^rgb\(/.test(getComputedStyle(each).backgroundColor) ? getComputedStyle(each).backgroundColor.match(/\d+/g)!.map(Number) : [0]))))
}
