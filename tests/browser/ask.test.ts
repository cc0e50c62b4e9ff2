import axe from 'axe-core'
import type { Browser, BrowserContext } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { BoardPage } from './boardPage.ts'
import { launchChromium } from './chromium.ts'
import { startServer, type RunningServer } from './runningServer.ts'

describe('asking on the board', () => {
  let browser: Browser
  let server: RunningServer
  let context: BrowserContext

  beforeAll(async () => {
    browser = await launchChromium()
    server = await startServer()
    context = await browser.newContext({ viewport: { width: 1440, height: 900 } })
  })
  afterAll(async () => {
    await browser?.close()
    await server?.stop()
  })

  it('typed wants are answered with ways; looking at one changes nothing until it is applied, and undo takes it back', async () => {
    const ines = await BoardPage.join(context, server.links.photographer, 'Ines')
    await ines.live()
    const { page } = ines
    await page.getByRole('button', { name: /nose: nose/i }).click()
    await page.getByRole('button', { name: 'Details' }).click()
    const line = page.getByLabel('Ask for')
    await line.fill('six apples')
    await line.press('Enter')
    await page.getByText(/was not understood/).waitFor()

    const before = await ines.numbers('D')
    await line.fill('D -1.5')
    await line.press('Enter')
    const look = page.getByRole('button', { name: 'Look at it' }).first()
    await look.waitFor()
    await page.getByText(/^Met: D −1\.5 \(wanted −1\.5\)$/).first().waitFor()
    await look.press('Enter')
    await ines.numbersAfter('D', before)
    await page.evaluate(axe.source)
    const faults = await page.evaluate(async () => {
      const { axe: loaded } = globalThis as unknown as { axe: typeof axe }
      return (await loaded.run('.ask')).violations.map(({ id, help }) => `${id}: ${help}`)
    })
    expect(faults).toEqual([])
    await look.press('Escape')
    await ines.untilNumbers('D', before)
    await page.getByRole('button', { name: 'Apply' }).first().press('Enter')
    await ines.numbersAfter('D', before)
    await ines.undo()
    await ines.untilNumbers('D', before)

    await line.fill('C +1.5')
    await line.press('Enter')
    await page.locator('.ask').getByText(/^C is out of power by \d/).waitFor()
    expect(await page.getByRole('button', { name: 'Apply' }).count()).toBeGreaterThan(0)
    await ines.redo()
    await page.locator('.ask').getByText('The look has changed since: ask again.').waitFor()
    expect(await page.getByRole('button', { name: 'Apply' }).count()).toBe(0)
    if (process.env['ASK_PICTURE']) await page.screenshot({ path: process.env['ASK_PICTURE'] })
    expect(ines.troubles).toEqual([])
  })
})
