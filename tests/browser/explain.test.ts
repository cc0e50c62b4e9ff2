import axe from 'axe-core'
import type { BrowserContext, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { BoardPage } from './boardPage.ts'
import { demoJob, PHONE } from './demoJob.ts'

describe('each edit says in one line what it did', () => {
  const job = demoJob()
  const contexts: BrowserContext[] = []
  let ines: BoardPage
  beforeAll(async () => {
    ines = await join('photographer', 'Ines')
  })
  afterAll(async () => {
    for (const context of contexts) await context.close()
  })

  async function join(role: 'photographer' | 'assistant', name: string): Promise<BoardPage> {
    const context = await job.newContext()
    contexts.push(context)
    const board = await BoardPage.join(context, job.server.links[role], name)
    await board.live()
    return board
  }

  const line = (page: Page) => page.getByRole('region', { name: 'What the last edit did' }).getByRole('status')
  const saying = (page: Page, words: RegExp) => line(page).filter({ hasText: words }).waitFor()

  it('own edits and others’, with their names; a drag says one line, at its end; renaming says none', async () => {
    const tobin = await join('assistant', 'Tobin')
    const lines: string[] = []
    await ines.page.exposeFunction('heard', (words: string) => lines.push(words))
    await ines.page.evaluate(() => {
      const { heard } = globalThis as unknown as { heard(words: string): void }
      const status = document.querySelector('.did-line')!
      new MutationObserver(() => heard(status.textContent ?? '')).observe(status, { childList: true, characterData: true, subtree: true })
    })

    const grabbed = await tobin.grabOnFloor('C')
    for (let i = 1; i <= 12; i++) await tobin.page.mouse.move(grabbed.x + 4 * i, grabbed.y + 2 * i)
    await ines.page.waitForTimeout(600)
    expect(lines).toEqual([])
    await tobin.page.mouse.up()
    await saying(ines.page, /^Tobin: C \d+ cm (nearer|farther|to camera (left|right))[^:]*: /)
    await saying(tobin.page, /^C \d+ cm /)
    expect(lines).toHaveLength(1)

    await ines.page.getByRole('button', { name: 'Job', exact: true }).click()
    const name = ines.page.getByLabel('Name of the job')
    await name.fill('Another title')
    await name.press('Enter')
    await ines.page.keyboard.press('Escape')
    await ines.page.getByRole('heading', { name: 'Another title' }).waitFor()
    await ines.page.waitForTimeout(800)
    expect(lines).toHaveLength(1)
    await ines.undo()

    await tobin.undo()
    await saying(ines.page, /^Tobin: C \d+ cm /)
    await ines.page.getByRole('button', { name: /^What happened: \d+/ }).click()
    const list = ines.page.getByRole('dialog', { name: 'What happened' }).getByRole('listitem')
    expect(await list.count()).toBe(2)
    await ines.page.keyboard.press('Escape')

    await ines.page.evaluate(axe.source)
    const faults = await ines.page.evaluate(async () => {
      const { axe: loaded } = globalThis as unknown as { axe: typeof axe }
      return (await loaded.run('.did')).violations.map(({ id, help }) => `${id}: ${help}`)
    })
    expect(faults).toEqual([])
    expect([...ines.troubles, ...tobin.troubles]).toEqual([])
    await tobin.page.close()
  })

  it('a whole stop of film speed is a whole stop everywhere, and undo says so too', async () => {
    const speed = ines.page.getByLabel('Film speed')
    await speed.fill('ISO 400')
    await speed.press('Enter')
    await saying(ines.page, /^ISO 400: \+1\.0 everywhere/)
    await ines.undo()
    await saying(ines.page, /^ISO 200: −1\.0 everywhere/)
    expect(ines.troubles).toEqual([])
  })

  it('stands over the flips of a phone, off the picture', async () => {
    const context = await job.newContext(PHONE)
    contexts.push(context)
    const page = await context.newPage()
    await page.goto(job.server.links.photographer)
    await page.getByLabel('Your name').fill('Ines')
    await page.getByRole('button', { name: 'Come in' }).click()
    await page.getByRole('button', { name: 'Ladder', exact: true }).click()
    const marker = page.getByRole('slider', { name: /^Light A, / })
    await marker.focus()
    for (let i = 0; i < 4; i++) await page.keyboard.press('ArrowUp')
    await page.keyboard.press('Enter')
    await saying(page, /^A power \+0\.4: \+0\.\d on the /)
    await page.getByRole('button', { name: 'Frame', exact: false }).first().click()
    const frame = (await page.getByRole('region', { name: 'Frame' }).boundingBox())!
    const said = (await line(page).boundingBox())!
    expect(said.y).toBeGreaterThanOrEqual(frame.y + Math.min(frame.height, 300))
    expect(said.x + said.width).toBeLessThanOrEqual(390)
  })
})
