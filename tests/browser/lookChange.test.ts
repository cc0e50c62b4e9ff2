import { readFileSync } from 'node:fs'
import { decode, encode } from 'fast-png'
import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { readJobFile } from '../../shared-core/plan/read.ts'
import { axeFaults } from './axeFaults.ts'
import { BoardPage } from './boardPage.ts'
import { demoJob, KEPT, LAPTOP, PHONE } from './demoJob.ts'
import { zipEntries } from './zipEntries.ts'

describe('from one look to the next, and what is left of both', () => {
  const job = demoJob()

  it('moves are ticked by two, what stood is recorded without a network, and the folder for retouch is made', async () => {
    const laptop = await job.newContext({ ...LAPTOP, ...KEPT })
    const ines = await BoardPage.join(laptop, job.server.links.photographer, 'Ines')
    const phone = await job.newContext({ ...PHONE, ...KEPT })
    const tobin = await phone.newPage()
    await tobin.goto(job.server.links.assistant)
    await tobin.getByLabel('Your name').fill('Tobin')
    await tobin.getByRole('button', { name: 'Come in' }).tap()

    // Each page brings its own looks along: the choice of a look is a thumb's size (WCAG 2.2, 2.5.5: 44 px) before any other page was open.
    await open(tobin, 'Job', 'Hand-over')
    expect((await tobin.getByLabel('Look', { exact: true }).boundingBox())!.height).toBeGreaterThanOrEqual(44)
    await tobin.keyboard.press('Escape')

    await open(ines.page, 'Set day', 'Look change')
    await open(tobin, 'Job', 'Look change')
    for (const page of [ines.page, tobin]) await page.getByLabel('To', { exact: true }).selectOption({ label: 'Look 2, First light' })
    await ines.page.getByText('0 of 12 done').waitFor()
    expect(await axeFaults(ines.page, '.full-page')).toEqual([])
    expect(await axeFaults(tobin, '.full-page')).toEqual([])
    // On a phone one person's moves at a time; on a laptop both.
    expect(await tobin.locator('.moves-column:visible').count()).toBe(1)
    expect(await ines.page.locator('.moves-column:visible').count()).toBe(2)
    expect(await tobin.locator('.full-page-body').evaluate((body) => body.scrollWidth - body.clientWidth)).toBe(0)

    await phone.setOffline(true)
    await tobin.getByRole('checkbox', { name: 'B: power down' }).tap()
    await tobin.getByRole('radio', { name: 'Theirs' }).tap()
    await tobin.getByRole('checkbox', { name: 'D: power down' }).tap()
    await tobin.getByText('2 of 12 done').waitFor()
    await ines.page.getByRole('checkbox', { name: 'C: take away' }).click()
    await phone.setOffline(false)
    for (const page of [ines.page, tobin]) await page.getByText('3 of 12 done').waitFor()

    // At wrap, in the basement: all as planned, one exception, a photograph.
    await tobin.keyboard.press('Escape')
    await open(tobin, 'Job', 'As shot')
    await phone.setOffline(true)
    await tobin.getByRole('button', { name: 'All as planned' }).tap()
    await tobin.getByText('5 of 5 recorded').waitFor()
    await tobin.getByRole('button', { name: 'Correct A' }).tap()
    await tobin.getByLabel('Front to the nose, as shot').fill('1.20')
    await tobin.getByLabel('Front to the nose, as shot').press('Enter')
    await tobin.getByText(/front to the nose: planned 1\.\d\d m, as shot 1\.20 m/).waitFor()
    // What nobody read stands empty, and is empty again when it is cleared.
    const reading = tobin.getByLabel('Reading, as shot')
    expect([await reading.inputValue(), await reading.getAttribute('placeholder')]).toEqual(['', 'not read'])
    await reading.fill('5.6')
    await reading.press('Enter')
    await tobin.getByText(/reading: planned f\/\S+.*, as shot f\/5\.6/).waitFor()
    await reading.fill('')
    await reading.press('Enter')
    await tobin.getByText(/, as shot f\/5\.6/).waitFor({ state: 'detached' })
    expect(await reading.inputValue()).toBe('')
    const grey = (value: number) => Buffer.from(encode({ width: 8, height: 8, channels: 3, data: new Uint8Array(192).fill(value) }))
    await tobin.getByLabel('Photograph A').setInputFiles({ name: 'a.png', mimeType: 'image/png', buffer: grey(119) })
    await tobin.getByText('1 photograph waits').waitFor()
    expect(await axeFaults(tobin, '.full-page')).toEqual([])
    await phone.setOffline(false)
    await tobin.getByText('1 photograph waits').waitFor({ state: 'detached', timeout: 30_000 })

    await ines.page.keyboard.press('Escape')
    await ines.page.waitForFunction(() => navigator.serviceWorker.controller !== null)
    await open(ines.page, 'Set day', 'As shot')
    await ines.page.getByText('as shot 1.20 m').waitFor()
    await ines.page.getByAltText('A at wrap').waitFor()
    const isSeen = await ines.page.getByAltText('A at wrap').evaluate((image) => (image as HTMLImageElement).decode().then(() => (image as HTMLImageElement).naturalWidth))
    expect(isSeen).toBe(8)

    // The folder needs no network either, but for a photograph that this laptop has never shown: that one is named as missing.
    await ines.page.keyboard.press('Escape')
    await tobin.getByLabel('Photograph A').setInputFiles({ name: 'a2.png', mimeType: 'image/png', buffer: grey(60) })
    await open(ines.page, 'Set day', 'Hand-over')
    await ines.page.getByText('2 photographs of the stands at wrap').waitFor()
    expect(await axeFaults(ines.page, '.full-page')).toEqual([])
    await laptop.setOffline(true)
    const [file] = await Promise.all([ines.page.waitForEvent('download', { timeout: 120_000 }), ines.page.getByRole('button', { name: 'Make the folder' }).click()])
    const files = zipEntries(readFileSync(await file.path()))
    expect([...files.keys()]).toEqual(expect.arrayContaining(['READ ME FIRST.txt', 'What is meant.txt', 'Recipe.txt', 'Frame as intended.png', 'A alone.png', 'B alone.png', 'C alone.png', 'D alone.png']))
    // A JPEG file begins so: ISO/IEC 10918-1, B.1.1.3, the markers SOI and APP0.
    expect(files.get('photographs/A-1.jpg')!.subarray(0, 4).toString('hex')).toBe('ffd8ffe0')
    expect(files.has('photographs/A-2.jpg')).toBe(false)
    expect(files.get('As shot.txt')!.toString('utf8')).toMatch(/ {2}Photograph: photographs\/A-1\.jpg\.\n {2}MISSING: photographs\/A-2\.jpg: it lies with the relay/)
    await ines.page.getByRole('alert').getByText('One photograph could not be had').waitFor()
    await laptop.setOffline(false)
    const frame = decode(files.get('Frame as intended.png')!)
    const alone = decode(files.get('A alone.png')!)
    // An upright 24 x 36 frame.
    for (const picture of [frame, alone]) expect([picture.width, picture.height]).toEqual([1_000, 1_500])
    expect(frame.data).not.toEqual(alone.data)
    expect(files.get('What is meant.txt')!.toString('utf8')).toMatch(/violet on .* is THE LOOK/)
    expect(files.get('As shot.txt')!.toString('utf8')).toContain('as shot 1.20 m')
    expect(files.get('As shot.txt')!.toString('utf8')).not.toMatch(/reads f/)
    expect(readJobFile(files.get('Plan as shot.halfstop.json')!.toString('utf8')).ok).toBe(true)
    expect(ines.troubles).toEqual([])
  })
})

async function open(page: Page, menu: string, title: string): Promise<void> {
  await page.getByRole('button', { name: menu, exact: true }).click()
  await page.getByRole('button', { name: new RegExp(`^${title}`) }).click()
  await page.getByRole('dialog', { name: title }).waitFor()
}
