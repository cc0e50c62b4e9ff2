import type { BrowserContext, Page } from 'playwright-core'
import { afterEach, describe, expect, it } from 'vitest'
import { axeFaults } from './axeFaults.ts'
import { BoardPage } from './boardPage.ts'
import { demoJob, LAPTOP, PHONE } from './demoJob.ts'

/** Mean luma of a stand-in's picture over the middle of the face, 0-255. */
function faceOf(page: Page, key: string): Promise<number> {
  return page.locator(`[data-stand-in="${key}"] canvas`).evaluate((canvas: HTMLCanvasElement) => {
    const { width, height } = canvas
    const { data } = canvas.getContext('2d')!.getImageData(Math.round(0.4 * width), Math.round(0.3 * height), Math.round(0.2 * width), Math.round(0.1 * height))
    let sum = 0
    for (let i = 0; i < data.length; i += 4) sum += 0.2126 * data[i]! + 0.7152 * data[i + 1]! + 0.0722 * data[i + 2]!
    return (4 * sum) / data.length
  })
}

describe('the look on stand-ins', () => {
  const job = demoJob()
  let context: BrowserContext
  afterEach(() => context?.close())

  it('shows the cast first and five skins, each darker than the one before, with words, and remembers that all were seen', async () => {
    context = await job.newContext(LAPTOP)
    const ines = await BoardPage.join(context, job.server.links.photographer, 'Ines')
    const { page } = ines
    const opener = page.getByRole('button', { name: 'Agree', exact: true })
    await opener.click()
    await page.getByRole('button', { name: /^Stand-ins/ }).click()
    await page.getByText('Stand-ins not yet seen').waitFor()
    await page.getByText('Stand-ins seen', { exact: true }).waitFor({ timeout: 60_000 })
    const keys = await page.locator('[data-stand-in]').evaluateAll((all) => all.map((each) => each.getAttribute('data-stand-in')))
    expect(keys).toHaveLength(14)
    expect(keys[0]).toBe('own')
    for (const sheen of ['matt', 'dewy']) {
      const faces: number[] = []
      for (let skin = 0; skin < 5; skin++) faces.push(await faceOf(page, `${sheen}-${skin}`))
      faces.slice(1).forEach((face, i) => expect(face, `${sheen} ${i + 1}`).toBeLessThan(faces[i]!))
    }
    await page.locator('[data-stand-in="matt-4"] .stand-in-line').filter({ hasText: /dark/ }).first().waitFor({ timeout: 60_000 })
    expect(await axeFaults(page, '.full-page')).toEqual([])
    await page.keyboard.press('Escape')
    await expect.poll(() => page.locator('.full-page').count()).toBe(0)
    await ines.stepPower('A', 5)
    await opener.click()
    await page.getByRole('button', { name: /^Stand-ins/ }).click()
    await page.getByText('Stand-ins seen before the last change').waitFor()
    expect(ines.troubles).toEqual([])
  })

  it('is a row to swipe on a phone, and not seen before it was swiped through', async () => {
    context = await job.newContext(PHONE)
    const page = await context.newPage()
    await page.goto(job.server.links.client)
    await page.getByLabel('Your name').fill('Saskia')
    await page.getByRole('button', { name: 'Come in' }).click()
    await page.getByRole('button', { name: 'Show the numbers' }).click()
    await page.getByRole('button', { name: 'Job', exact: true }).click()
    await page.getByRole('button', { name: /^Stand-ins/ }).click()
    await page.locator('[data-stand-in="light-hair"] canvas[data-picture="drawn"]').waitFor({ timeout: 60_000, state: 'attached' })
    await page.getByText('Stand-ins not yet seen').waitFor()
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390)
    for (const row of await page.locator('.stand-ins-row').all()) {
      for (const cell of await row.locator('.stand-in').all()) {
        await cell.scrollIntoViewIfNeeded()
        // What is in sight is told with the next frame.
        await page.evaluate(() => new Promise((told) => requestAnimationFrame(() => requestAnimationFrame(told))))
      }
    }
    await page.getByText('Stand-ins seen', { exact: true }).waitFor()
  })
})
