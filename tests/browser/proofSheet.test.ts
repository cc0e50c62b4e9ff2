import type { BrowserContext } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { axeFaults } from './axeFaults.ts'
import { BoardPage } from './boardPage.ts'
import { demoJob, PHONE } from './demoJob.ts'

describe('looks side by side', () => {
  const job = demoJob()
  let context: BrowserContext
  let ines: BoardPage
  let tobin: BoardPage

  beforeAll(async () => {
    context = await job.newContext()
    ines = await BoardPage.join(context, job.server.links.photographer, 'Ines')
    tobin = await BoardPage.join(context, job.server.links.assistant, 'Tobin')
    await Promise.all([ines, tobin].map(async ({ page }) => {
      await page.getByRole('button', { name: /^Look: / }).click()
      await page.getByRole('button', { name: 'Looks side by side…' }).click()
      await page.locator('.proof canvas[data-picture="drawn"]').nth(1).waitFor()
    }))
  })
  afterAll(async () => {
    await context?.close()
  })

  it('zoom and move together, by wheel and by keys', async () => {
    const { page } = ines
    const moves = () => page.locator('.proof-picture').evaluateAll((all) => all.map((each) => (each as HTMLElement).style.transform))
    const box = (await page.locator('[data-proof]').first().boundingBox())!
    await page.mouse.move(box.x + box.width * 0.5, box.y + box.height * 0.3)
    await page.keyboard.down('Control')
    await page.mouse.wheel(0, -300)
    await page.keyboard.up('Control')
    await expect.poll(async () => new Set(await moves()).size).toBe(1)
    await expect.poll(async () => (await moves())[0]).toContain('scale(2.7')
    await page.getByRole('application').press('ArrowLeft')
    const moved = await moves()
    expect(new Set(moved).size).toBe(1)
    await page.getByRole('application').press('0')
    await expect.poll(async () => (await moves())[0]).toContain('scale(1)')
    expect(ines.troubles).toEqual([])
  })

  it('are voted on without anybody seeing how another voted, and opened together', async () => {
    await ines.page.getByRole('button', { name: 'Ask for votes…' }).click()
    await ines.page.getByLabel(/^Ask everybody/).fill('Which dusk?')
    await ines.page.getByRole('button', { name: 'Ask for votes' }).click()
    await tobin.page.getByText('Which dusk?').waitFor()
    const [first, second] = await ines.page.locator('.proof-name').allTextContents()
    await tobin.page.getByLabel(`Why ${second}`).fill('the deeper green')
    await tobin.page.getByRole('button', { name: `Vote: ${second}` }).click()
    await ines.page.getByRole('status').filter({ hasText: '1 person has voted' }).waitFor()
    expect(await ines.page.getByText('the deeper green').count()).toBe(0)
    expect(await tobin.page.getByRole('button', { name: 'Open the votes' }).count()).toBe(0)
    await ines.page.getByRole('button', { name: `Vote: ${first}` }).click()
    await ines.page.getByRole('status').filter({ hasText: '2 people have voted' }).waitFor()
    await ines.page.getByRole('button', { name: 'Open the votes' }).click()
    await tobin.page.getByText('the deeper green').waitFor()
    await ines.page.getByRole('article', { name: second! }).getByText('Tobin').waitFor()
    expect([ines.troubles, tobin.troubles]).toEqual([[], []])
  })

  it('say what tells them apart, what shows most first, and nothing is wrong for a reader', async () => {
    await ines.page.locator('.proof-differences li').first().waitFor()
    const seen = await ines.page.locator('.proof-differences').first().locator('li').evaluateAll((all) => all.map((each) => each.getAttribute('data-visibility')))
    expect(seen[0]).toBe('visible')
    expect(await axeFaults(ines.page, '.full-page')).toEqual([])
    // On a phone the pictures come first and nothing is wider than it.
    await ines.page.setViewportSize(PHONE.viewport)
    await expect.poll(async () => (await ines.page.locator('[data-proof]').first().boundingBox())!.y).toBeLessThan(PHONE.viewport.height / 4)
    expect(await ines.page.locator('.full-page-body').evaluate((body) => body.scrollWidth)).toBeLessThanOrEqual(PHONE.viewport.width)
    await ines.page.keyboard.press('Escape')
    await expect.poll(() => ines.page.locator('.full-page').count()).toBe(0)
  })
})
