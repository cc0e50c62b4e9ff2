import type { BrowserContext, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { axeFaults } from './axeFaults.ts'
import { BoardPage } from './boardPage.ts'
import { demoJob, LAPTOP } from './demoJob.ts'

/** What comes from the relay under a name by which something is kept, changed on its way as a faulty store would. */
const TAMPERINGS = {
  // A strobe with a hundred watt-seconds more: still a plan, but not that one.
  'the plan': (bytes: Buffer) => (bytes.includes('"schemaVersion"') ? Buffer.from(bytes.toString().replace('"energyJoules":', '"energyJoules":1')) : bytes),
  // One bit of the last byte: still shown as a picture. "\x89PNG" is how one begins (ISO/IEC 15948, 5.2).
  'a picture': (bytes: Buffer) => (bytes.subarray(1, 4).toString() === 'PNG' ? Buffer.concat([bytes.subarray(0, -1), Buffer.from([bytes.at(-1)! ^ 1])]) : bytes),
}

describe('a lock that is not what was locked', () => {
  const job = demoJob()
  const contexts: BrowserContext[] = []
  let tobin: BoardPage

  async function agreed({ page }: BoardPage): Promise<void> {
    await page.getByRole('button', { name: 'Agree', exact: true }).click()
    await page.getByRole('button', { name: /^Agreed/ }).click()
    await page.getByRole('dialog', { name: 'Agreed' }).waitFor()
  }
  const card = (page: Page) => page.getByRole('article', { name: 'Lock 1' })

  beforeAll(async () => {
    for (let i = 0; i < 2; i++) contexts.push(await job.newContext({ ...LAPTOP, serviceWorkers: 'block' }))
    const ines = await BoardPage.join(contexts[0]!, job.server.links.photographer, 'Ines')
    await ines.live()
    await agreed(ines)
    await ines.page.getByRole('button', { name: /^Lock Look 1/ }).click()
    await card(ines.page).getByText('As locked').waitFor()
    tobin = await BoardPage.join(contexts[1]!, job.server.links.assistant, 'Tobin')
    await tobin.live()
  })
  afterAll(async () => {
    for (const context of contexts) await context.close()
  })

  it.each(Object.entries(TAMPERINGS))('is said loudly, in words, where %s differs', async (_what, tamper) => {
    const { page } = tobin
    let changed = 0
    await page.route('**/kept/*', async (route) => {
      const response = await route.fetch()
      const bytes = await response.body()
      const body = tamper(bytes)
      if (!body.equals(bytes)) changed += 1
      await route.fulfill({ response, body })
    })
    await agreed(tobin)
    const alert = card(page).getByRole('alert')
    await alert.getByText('This does not match its seal').waitFor()
    expect(changed).toBeGreaterThan(0)
    expect(await card(page).getByText(/^As locked: plan/).count()).toBe(0)
    // Loud: bold, and bounded by a line that is no part of the calm cards.
    const look = await alert.evaluate((element) => ({ weight: Number(getComputedStyle(element).fontWeight), border: getComputedStyle(element).borderTopWidth }))
    expect([look.weight >= 500, look.border]).toEqual([true, '2px'])
    expect(await axeFaults(page, '.full-page')).toEqual([])
    await page.unrouteAll()
    await page.keyboard.press('Escape')
    await expect.poll(() => page.locator('.full-page').count()).toBe(0)
  })

  it('is believed again once what comes is what was kept', async () => {
    await agreed(tobin)
    await card(tobin.page).getByText('As locked').waitFor()
    expect(await card(tobin.page).getByRole('alert').count()).toBe(0)
    expect(tobin.troubles).toEqual([])
  })
})
