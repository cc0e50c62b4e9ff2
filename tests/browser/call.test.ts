import type { BrowserContext } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { axeFaults } from './axeFaults.ts'
import { BoardPage } from './boardPage.ts'
import { demoJob } from './demoJob.ts'

describe('a call', () => {
  const job = demoJob()
  const contexts: BrowserContext[] = []
  let ines: BoardPage
  let pell: BoardPage

  beforeAll(async () => {
    for (const context of [await job.newContext(), await job.newContext()]) contexts.push(context)
    ines = await BoardPage.join(contexts[0]!, job.server.links.photographer, 'Ines')
    pell = await BoardPage.join(contexts[1]!, job.server.links.client, 'Pell')
    await Promise.all([ines.live(), pell.live()])
  })
  afterAll(async () => {
    for (const context of contexts) await context.close()
  })

  const look = ({ page }: BoardPage) => page.getByRole('button', { name: /^Look: / }).getAttribute('aria-label')
  const view = ({ page }: BoardPage) => page.getByRole('radiogroup', { name: 'Look at the picture as' }).getByRole('radio', { checked: true }).textContent()
  async function showLook({ page }: BoardPage, name: string): Promise<void> {
    await page.getByRole('button', { name: /^Look: / }).click()
    await page.getByRole('button', { name, exact: true }).click()
  }

  it('is looked at together: the leader\'s look and view within a second, and never their hands', async () => {
    await pell.page.getByRole('button', { name: /here$/ }).click()
    await pell.page.getByRole('button', { name: 'Look with Ines' }).click()
    await pell.page.keyboard.press('Escape')
    await pell.page.getByText('You look with Ines').waitFor()
    await showLook(ines, 'Look 2, First light')
    await expect.poll(() => look(pell), { timeout: 1_000 }).toContain('First light')
    await ines.page.getByRole('radio', { name: 'Stops' }).click()
    await expect.poll(() => view(pell), { timeout: 1_000 }).toBe('Stops')
    expect(await axeFaults(pell.page, '.look-with')).toEqual([])
    // Whom one looks with does not look with one: who leads is one person.
    await ines.page.getByRole('button', { name: /here$/ }).click()
    await ines.page.getByText('looks with you').waitFor()
    await ines.page.keyboard.press('Escape')
  })

  it('is left and joined again with one touch', async () => {
    await pell.page.getByRole('button', { name: 'Stop', exact: true }).click()
    await showLook(ines, 'Look 1, Dusk in an orchard')
    await ines.page.waitForTimeout(300)
    expect(await look(pell)).toContain('First light')
    await pell.page.getByRole('button', { name: 'Look with Ines again' }).click()
    await expect.poll(() => look(pell), { timeout: 1_000 }).toContain('Dusk')
    await pell.page.getByRole('button', { name: 'Stop', exact: true }).click()
  })

  it('has everybody\'s pointer at the same place of the picture, whatever the size of the screen', async () => {
    await pell.page.setViewportSize({ width: 1100, height: 760 })
    const frame = (await ines.page.locator('.frame-print').boundingBox())!
    await ines.page.mouse.move(frame.x + frame.width * 0.3, frame.y + frame.height * 0.4)
    await pell.page.locator('.frame-pointer').waitFor()
    await expect.poll(async () => {
      const [print, dot] = [(await pell.page.locator('.frame-print').boundingBox())!, (await pell.page.locator('.frame-pointer').boundingBox())!]
      return [(dot.x + dot.width / 2 - print.x) / print.width, (dot.y + dot.height / 2 - print.y) / print.height].map((share) => Math.round(share * 100))
    }).toEqual([30, 40])
    expect(await pell.page.locator('.frame-pointer-name').textContent()).toBe('Ines')
    await ines.page.mouse.move(4, 4)
    await expect.poll(() => pell.page.locator('.frame-pointer').count()).toBe(0)
    expect([ines.troubles, pell.troubles]).toEqual([[], []])
  })
})
