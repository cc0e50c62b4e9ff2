import type { BrowserContext, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { axeFaults } from './axeFaults.ts'
import { BoardPage } from './boardPage.ts'
import { demoJob, PHONE } from './demoJob.ts'

// The readings of the demo job's script, typed from there as the assistant says them, and what is to be turned.
const script = [
  { question: /^D alone\./, said: '4 and 9', answer: /Read 4 and 9, planned 5\.6 and 5: turn up 0\.6/ },
  { question: /^B alone\./, said: 'eight and six', answer: /Read 8 and 6, planned 8 and 2: turn down 0\.4/ },
  { question: /^C alone\./, said: '2.8 9', answer: /Read 2\.8 and 9, planned 4 and 0: turn up 0\.1/ },
  { question: /^A alone\./, said: '8 and 0', answer: /Read 8 and 0, planned 8 and 0: leave it as it is/ },
] as const

describe('the scripted readings, taken on a phone', () => {
  const job = demoJob()
  const contexts: BrowserContext[] = []
  let ines: BoardPage
  let tobin: Page

  const bookOf = (page: Page) => page.getByRole('dialog', { name: /^Meter book/ })
  async function openBook(page: Page): Promise<void> {
    await page.getByRole('button', { name: 'Set day' }).click()
    await page.getByRole('button', { name: /^Meter book/ }).click()
    await bookOf(page).waitFor()
  }

  beforeAll(async () => {
    const laptop = await job.newContext()
    const phone = await job.newContext(PHONE)
    contexts.push(laptop, phone)
    ines = await BoardPage.join(laptop, job.server.links.photographer, 'Ines')
    tobin = await phone.newPage()
    await tobin.goto(job.server.links.assistant)
    await tobin.getByLabel('Your name').fill('Tobin')
    await tobin.getByRole('button', { name: 'Come in' }).click()
    await tobin.getByRole('button', { name: 'Job', exact: true }).or(tobin.getByRole('tab', { name: 'Job' })).click()
    await tobin.getByRole('button', { name: /^Meter book/ }).click()
    await bookOf(tobin).waitFor()
    await openBook(ines.page)
  })
  afterAll(async () => {
    for (const context of contexts) await context.close()
  })

  it('each is asked for in its order, understood, and answered with what to turn', async () => {
    for (const { question, said, answer } of script) {
      await expect.poll(() => bookOf(tobin).getByRole('region', { name: 'Reading to take' }).getByRole('heading').textContent()).toMatch(question)
      await bookOf(tobin).getByLabel('The meter shows').fill(said)
      await bookOf(tobin).getByRole('button', { name: 'Take it' }).click()
      await expect.poll(() => bookOf(tobin).getByRole('region', { name: 'Answer' }).textContent()).toMatch(answer)
      await bookOf(tobin).getByRole('button', { name: /^Next: / }).click()
    }
    expect(await axeFaults(tobin, '.full-page')).toEqual([])
  })

  it('the photographer sees them, what they taught, and the new predictions', async () => {
    const book = bookOf(ines.page)
    await expect.poll(() => book.getByRole('region', { name: 'Readings taken' }).getByText('Tobin').count()).toBe(4)
    const learned = book.getByRole('region', { name: 'Learned' })
    const row = (name: RegExp) => learned.getByRole('row', { name }).textContent()
    // Strip about +0.4 and reflector about -0.6 by the script; the head all four share takes its part.
    await expect.poll(() => row(/^Strip 35/)).toMatch(/\+0\.[34]/)
    await expect.poll(() => row(/^Reflector/)).toMatch(/−0\.[456]/)
    await expect.poll(() => row(/^B/)).toMatch(/\+0\.[34].*0\.670\.10/)
    expect(await axeFaults(ines.page, '.full-page')).toEqual([])
    await ines.page.keyboard.press('Escape')
    await expect.poll(() => ines.ladder('B').getAttribute('aria-valuetext')).toMatch(/0\.[56]/)
    expect(ines.troubles).toEqual([])
  })

  it('a reading that is refused says why, and one that is withdrawn teaches no more', async () => {
    const book = bookOf(tobin)
    await book.getByLabel('The meter shows').fill('8 and 12')
    await book.getByRole('button', { name: 'Take it' }).click()
    await book.getByText('Tenths go from 0 to 9').waitFor()
    await book.getByRole('button', { name: 'Withdraw 8 and 6 of B' }).click()
    await expect.poll(() => book.getByRole('region', { name: 'Learned' }).getByRole('row', { name: /^Strip 35/ }).count()).toBe(0)
    await expect.poll(() => book.getByRole('region', { name: 'Reading to take' }).getByRole('heading').textContent()).toMatch(/^B alone\./)
  })
})
