import { readFileSync } from 'node:fs'
import type { BrowserContext, Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { axeFaults } from './axeFaults.ts'
import { BoardPage } from './boardPage.ts'
import { demoJob, KEPT, PHONE } from './demoJob.ts'

describe('kit, gels and power', () => {
  const job = demoJob()
  let context: BrowserContext
  let ines: BoardPage

  beforeAll(async () => {
    context = await job.newContext()
    ines = await BoardPage.join(context, job.server.links.photographer, 'Ines')
  })
  afterEach(async () => {
    expect(ines.troubles).toEqual([])
    await ines.page.keyboard.press('Escape')
    await expect.poll(() => ines.page.locator('.full-page').count()).toBe(0)
  })
  afterAll(async () => {
    await context?.close()
  })

  const offer = (page: Page, title: string) => page.locator('.page-menu-entry').filter({ hasText: new RegExp(`^${title}`) })

  async function open(page: Page, title: string): Promise<void> {
    await page.getByRole('button', { name: 'Set day' }).click()
    await offer(page, title).click()
    await page.locator('.kit-page').waitFor()
  }

  it('what is packed in a van without a network is packed for everybody afterwards', async () => {
    await open(ines.page, 'Order and pack')
    await ines.page.getByRole('checkbox', { name: /Octa 100 own 1/ }).check()

    const van = await job.newContext({ ...PHONE, ...KEPT })
    const phone = await van.newPage()
    await phone.goto(job.server.links.assistant)
    await phone.getByLabel('Your name').fill('Tobin')
    await phone.getByRole('button', { name: 'Come in' }).click()
    await phone.getByRole('tab', { name: 'Job' }).or(phone.getByRole('button', { name: 'Job' })).first().click()
    await offer(phone, 'Order and pack').click()
    await phone.getByText('packed by Ines').waitFor()
    const body = phone.locator('.full-page-body')
    expect(await body.evaluate((element) => element.scrollWidth - element.clientWidth)).toBe(0)

    await van.setOffline(true)
    await phone.getByRole('checkbox', { name: /^5 Head 1000/ }).check()
    await ines.page.getByRole('checkbox', { name: /Reflector 65°/ }).check()
    await phone.getByRole('status').filter({ hasText: '2 of ' }).waitFor()
    await van.setOffline(false)
    for (const page of [phone, ines.page]) await page.getByRole('status').filter({ hasText: '3 of ' }).waitFor()
    await van.close()
  })

  it('the order comes as a table', async () => {
    await open(ines.page, 'Order and pack')
    const [file] = await Promise.all([ines.page.waitForEvent('download'), ines.page.getByRole('button', { name: 'Order list as CSV' }).click()])
    expect(file.suggestedFilename()).toBe('Late Harvest, order.csv')
    const rows = readFileSync(await file.path(), 'utf8').split('\r\n')
    expect(rows[0]).toMatch(/^\uFEFFCase,Item,/)
    expect(rows.find((row) => row.startsWith('Heads,'))).toContain(',4,1,5,0,')
  })

  it('a strip’s front fits no sheet, and each way that does is drawn', async () => {
    const { page } = ines
    await ines.tape('B').click()
    await page.getByRole('button', { name: 'Details' }).click()
    await page.getByRole('radio', { name: 'Over the front' }).click()
    await open(page, 'Gel cuts')
    await page.getByText('B: 145 × 40 cm fits no sheet.').waitFor()
    await page.getByRole('button', { name: '3 pieces joined' }).click()
    const apricot = page.getByRole('region', { name: 'Apricot' })
    await apricot.getByRole('img', { name: /B 1\/3/ }).waitFor()
    expect(await apricot.locator('.cut-joined').count()).toBe(3)
    await apricot.getByRole('radio', { name: 'Off a roll' }).click()
    await apricot.getByRole('img', { name: /^Roll .*B, / }).waitFor()
    await apricot.getByRole('radio', { name: 'Sheets only' }).click()
    await apricot.getByRole('button', { name: 'At the head: 30 × 30 cm' }).click()
    await apricot.getByRole('img', { name: /B, 30 × 30 cm/ }).waitFor()
    expect(await axeFaults(page, '.full-page')).toEqual([])
  })

  it('a steamer among the heads is over the breaker, and one press plugs it elsewhere', async () => {
    const { page } = ines
    await open(page, 'Power')
    await page.getByRole('button', { name: 'Steamer' }).click()
    await page.getByLabel('Circuit of Steamer').selectOption({ label: 'Left wall' })
    const left = page.getByRole('region', { name: 'Left wall' })
    await left.getByText('over the breaker').waitFor()
    expect(await axeFaults(page, '.full-page')).toEqual([])
    await page.getByRole('button', { name: 'Plug so' }).click()
    await left.getByText('within the line').waitFor()
    await page.getByRole('region', { name: 'Tether station' }).getByText('Steamer', { exact: true }).waitFor()
    await page.getByLabel('Circuit of D').selectOption({ label: 'Tether station' })
    await page.getByRole('region', { name: 'Tether station' }).getByLabel('Circuit of D').waitFor()
  })
})
