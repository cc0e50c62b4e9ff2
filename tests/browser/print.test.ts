import { readFileSync } from 'node:fs'
import jsqr from 'jsqr'
import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { cornerOf, readPdf, type Pixels } from '../client/pdfPages.ts'
import { axeFaults } from './axeFaults.ts'
import { BoardPage } from './boardPage.ts'
import { demoJob, PHONE } from './demoJob.ts'

/** By a decoder that is not ours (jsqr). */
function decoded({ data, width, height }: Pixels): string {
  // jsqr is CommonJS, and says so differently to types and to Node.
  const read = ((jsqr as unknown as { default?: typeof jsqr }).default ?? jsqr) as unknown as (data: Uint8ClampedArray, width: number, height: number) => { data: string } | null
  return read(data, width, height)?.data ?? ''
}

describe('a print that is scanned after the plan has moved', () => {
  const job = demoJob()

  async function openedFromMenu(page: Page, menu: 'Agree' | 'Set day', entry: RegExp): Promise<void> {
    await page.getByRole('button', { name: menu, exact: true }).click()
    await page.getByRole('button', { name: entry }).click()
  }
  async function locked({ page }: BoardPage, number: number): Promise<void> {
    await openedFromMenu(page, 'Agree', /^Agreed/)
    if (number > 1) await page.getByRole('button', { name: 'Lock anew…' }).click()
    await page.getByRole('button', { name: /^Lock Look 1/ }).click()
    await page.getByRole('article', { name: `Lock ${number}` }).getByText('As locked').waitFor()
    await page.keyboard.press('Escape')
  }
  async function saved({ page }: BoardPage): Promise<string> {
    await openedFromMenu(page, 'Set day', /^Print/)
    await page.getByText('7 pages').waitFor()
    expect(await axeFaults(page, '.full-page')).toEqual([])
    const download = page.waitForEvent('download')
    await page.getByRole('button', { name: 'Save PDF' }).click()
    const pages = await readPdf(readFileSync(await (await download).path()))
    await page.getByRole('button', { name: 'Close' }).click()
    return decoded(cornerOf(await pages[3]!.render(3), [1, 1]))
  }

  it('says on the assistant’s phone which stand differs, and by what lock it is superseded', async () => {
    const ines = await BoardPage.join(await job.newContext(), job.server.links.photographer, 'Ines')
    await ines.live()
    await locked(ines, 1)
    const address = await saved(ines)
    expect(new URL(address).origin).toBe(job.server.origin)
    expect(address).toMatch(/\/p\/[\w-]+\?l=[\w-]+&v=1\.[0-9a-f]{12}&/)
    for (const link of Object.values(job.server.links)) expect(address).not.toContain(new URL(link).hash.slice(1))

    // A phone that has no seat in the job is told how to get one; so is one that follows its link, and then scans again.
    const phone = await (await job.newContext(PHONE)).newPage()
    await phone.goto(address)
    await phone.getByText('Open the link you were given for it, then scan again').waitFor()
    await phone.goto(job.server.links.assistant)
    await phone.getByLabel('Your name').fill('Tobin')
    await phone.getByRole('button', { name: 'Come in' }).tap()
    await phone.getByRole('button', { name: 'Job', exact: true }).waitFor()
    await phone.goto(address)
    const page = phone.getByRole('dialog', { name: 'What differs since this print' })
    await page.getByText('Lock 1 stands.').waitFor()
    await page.getByText('No stand differs from this print').waitFor()
    expect(new URL(phone.url()).pathname).toMatch(/^\/s\//)
    expect(await axeFaults(phone, '.full-page')).toEqual([])

    await ines.tape('B').focus()
    await ines.page.keyboard.press('Shift+ArrowLeft')
    await page.getByRole('heading', { name: '1 stand differs' }).waitFor()
    await page.getByRole('listitem').filter({ hasText: /^B .*to camera left/ }).waitFor()
    await page.getByRole('alert').getByText('Lock 1 stands, but the plan no longer has B as agreed.').waitFor()
    expect(await axeFaults(phone, '.full-page')).toEqual([])

    await locked(ines, 2)
    await phone.goto(address)
    await page.getByRole('alert').getByText('Superseded by lock 2').waitFor()
    await page.getByRole('listitem').filter({ hasText: /^B .*to camera left/ }).waitFor()
    expect(await phone.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(PHONE.viewport.width)

    // A print needs no network, once its page was opened on this device.
    await ines.page.context().setOffline(true)
    expect(new URL(await saved(ines)).searchParams.get('v')).toMatch(/^2\./)
    await ines.page.context().setOffline(false)

    await phone.goto(address.replace(/\/p\/[\w-]+/, '/p/another-job'))
    await phone.getByText('This print belongs to another job').waitFor()
    expect(ines.troubles).toEqual([])
    // Two locks, each drawn by the relay, and a print: minutes on a machine that does much else.
  }, 240_000)
})
