import type { BrowserContext } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { axeFaults } from './axeFaults.ts'
import { BoardPage } from './boardPage.ts'
import { demoJob, LAPTOP, PHONE } from './demoJob.ts'

describe('a call', () => {
  const job = demoJob()
  const contexts: BrowserContext[] = []
  let ines: BoardPage
  let pell: BoardPage

  beforeAll(async () => {
    for (const context of [await job.newContext(), await job.newContext()]) contexts.push(context)
    const joined = await Promise.all([
      BoardPage.join(contexts[0]!, job.server.links.photographer, 'Ines'), BoardPage.join(contexts[1]!, job.server.links.client, 'Pell'),
    ])
    ines = joined[0]
    pell = joined[1]
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

  it('shows the leader\'s Before while it is held, and says in words what page the leader has open', async () => {
    await pell.page.getByRole('button', { name: 'Look with Ines again' }).click()
    const before = await pell.numbers('C')
    await ines.stepPower('C', -4)
    await expect.poll(() => pell.numbers('C')).not.toBe(before)
    await ines.page.getByRole('button', { name: /^Before/ }).first().hover()
    await ines.page.mouse.down()
    await pell.page.getByText('Before, as Ines sees it').waitFor()
    await ines.page.mouse.up()
    await expect.poll(() => pell.page.getByText('Before, as Ines sees it').count()).toBe(0)

    await ines.page.getByRole('button', { name: 'Agree', exact: true }).click()
    await ines.page.getByRole('button', { name: /^Proof sheet/ }).click()
    await pell.page.getByText('Ines has the proof sheet open').waitFor()
    await pell.page.setViewportSize(PHONE.viewport)
    await pell.page.getByText('Ines has the proof sheet open').waitFor()
    expect(await axeFaults(pell.page, '.look-with')).toEqual([])
    expect(await pell.page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(PHONE.viewport.width)
    await pell.page.getByRole('button', { name: 'Open it here' }).click()
    await pell.page.getByRole('dialog', { name: 'Proof sheet' }).waitFor()
    await pell.page.keyboard.press('Escape')
    await ines.page.keyboard.press('Escape')
    await expect.poll(() => pell.page.getByText('Ines has the proof sheet open').count()).toBe(0)
    await pell.page.setViewportSize(LAPTOP.viewport)
    await pell.page.getByRole('button', { name: 'Stop', exact: true }).click()
  })

  it('takes a pointer away when the finger lifts', async () => {
    await pell.page.setViewportSize(LAPTOP.viewport)
    const touched = (type: string) => ines.page.locator('.frame-print').dispatchEvent(type, { pointerType: 'touch', pointerId: 7, clientX: 300, clientY: 300, bubbles: true })
    await touched('pointermove')
    await pell.page.locator('.frame-pointer').waitFor()
    await touched('pointerup')
    await expect.poll(() => pell.page.locator('.frame-pointer').count()).toBe(0)
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

  it('lets go of a leader who has left, and says so', async () => {
    await pell.page.getByRole('button', { name: 'Look with Ines again' }).click()
    await pell.page.getByText('You look with Ines').waitFor()
    await ines.page.close()
    await pell.page.getByText('Ines has left. You look on your own').waitFor({ timeout: 15_000 })
  })
})
