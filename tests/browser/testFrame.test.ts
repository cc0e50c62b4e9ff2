import type { BrowserContext, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { framePng } from '../../server/picture/framePng.ts'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { axeFaults } from './axeFaults.ts'
import { BoardPage } from './boardPage.ts'
import { demoJob, PHONE } from './demoJob.ts'

const dusk = demoPlan.looks['dusk']!
const bareC = { ...demoPlan, looks: { ...demoPlan.looks, dusk: { ...dusk, lights: { ...dusk.lights, c: { ...dusk.lights['c']!, gelIds: [] } } } } }

describe('a test frame made with C\'s gel missing', () => {
  const job = demoJob()
  const contexts: BrowserContext[] = []
  let photograph: Buffer
  beforeAll(() => {
    photograph = Buffer.from(framePng(bareC, 'dusk', 240))
  })
  afterAll(async () => {
    for (const context of contexts) await context.close()
  })

  const frameOf = (page: Page) => page.getByRole('dialog', { name: /^Test frame/ })
  const give = (page: Page, name: string, buffer: Buffer) =>
    frameOf(page).locator('input[type=file]').first().setInputFiles({ name, mimeType: 'image/png', buffer })

  it('is told on a laptop: what differs, whose gel to look at, and the next suspects', async () => {
    const context = await job.newContext()
    contexts.push(context)
    const { page, troubles } = await BoardPage.join(context, job.server.links.photographer, 'Ines')
    await page.getByRole('button', { name: 'Set day' }).click()
    await page.getByRole('button', { name: /^Test frame/ }).click()
    const sent: string[] = []
    page.on('request', (request) => request.method() !== 'GET' && sent.push(request.url()))
    await give(page, 'frame.png', photograph)

    const mark = frameOf(page).getByRole('button', { name: /^3, middle of the mouth/ })
    const before = (await mark.boundingBox())!
    await mark.focus()
    await page.keyboard.press('Shift+ArrowRight')
    const moved = (await mark.boundingBox())!
    expect(moved.x).toBeGreaterThan(before.x)
    await page.keyboard.press('Shift+ArrowLeft')
    await frameOf(page).getByRole('button', { name: 'The points lie right' }).click()
    const verdict = frameOf(page).getByRole('status', { name: 'Verdict' })
    await verdict.waitFor({ timeout: 60_000 })
    expect(await verdict.textContent()).toContain('C\'s violet gel is missing')
    expect(await verdict.textContent()).toContain('Look at C\'s gel first.')
    // Without its violet sheet, which loses three stops, C is brighter wherever it reaches and nothing has clipped.
    const differs = await frameOf(page).getByRole('region', { name: 'Where it differs' }).textContent()
    expect(differs).toMatch(/background top right .* stops? brighter/)
    expect(differs).not.toMatch(/darker/)

    const sizes = await frameOf(page).locator('.tf-frame').evaluateAll((frames) => frames.map((frame) => `${frame.clientWidth} ${frame.clientHeight}`))
    expect(sizes).toHaveLength(2)
    expect(new Set(sizes).size).toBe(1)
    expect(await axeFaults(page, '.full-page')).toEqual([])
    await frameOf(page).getByRole('radio', { name: 'Wipe' }).click()
    const wipe = frameOf(page).getByRole('slider', { name: /covers the prediction/ })
    await wipe.focus()
    await page.keyboard.press('Home')
    expect(await wipe.getAttribute('aria-valuenow')).toBe('0')
    // The photograph stays on the device.
    expect(sent).toEqual([])
    expect(troubles).toEqual([])
  })

  it('is told on a phone, with nothing to scroll sideways; and what is no picture is said to be none', async () => {
    const context = await job.newContext(PHONE)
    contexts.push(context)
    const page = await context.newPage()
    await page.goto(job.server.links.assistant)
    await page.getByLabel('Your name').fill('Tobin')
    await page.getByRole('button', { name: 'Come in' }).click()
    await page.getByRole('button', { name: 'Job', exact: true }).or(page.getByRole('tab', { name: 'Job' })).click()
    await page.getByRole('button', { name: /^Test frame/ }).click()
    await give(page, 'notes.png', Buffer.from('no picture'))
    await frameOf(page).getByText('is no picture this browser can show').waitFor()
    await give(page, 'frame.png', photograph)
    await frameOf(page).getByRole('button', { name: 'The points lie right' }).click()
    const verdict = frameOf(page).getByRole('status', { name: 'Verdict' })
    await verdict.waitFor({ timeout: 60_000 })
    expect(await verdict.textContent()).toContain('C\'s violet gel is missing')
    const body = page.locator('.full-page-body')
    expect(await body.evaluate((element) => element.scrollWidth - element.clientWidth)).toBe(0)
  })
})
