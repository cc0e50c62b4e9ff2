import type { BrowserContext } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { axeFaults } from './axeFaults.ts'
import { BoardPage } from './boardPage.ts'
import { demoJob, PHONE } from './demoJob.ts'

describe('a colour call of three people, from a wish to a lock and after', () => {
  const job = demoJob()
  const contexts: BrowserContext[] = []
  let ines: BoardPage
  let tobin: BoardPage
  let pell: BoardPage

  async function join(role: 'photographer' | 'assistant' | 'client', name: string): Promise<BoardPage> {
    const context = await job.newContext()
    contexts.push(context)
    return BoardPage.join(context, job.server.links[role], name)
  }
  const agreed = async ({ page }: BoardPage) => {
    await page.getByRole('button', { name: 'Agree', exact: true }).click()
    await page.getByRole('button', { name: /^Agreed/ }).click()
    await page.getByRole('dialog', { name: 'Agreed' }).waitFor()
  }
  const shut = async ({ page }: BoardPage) => {
    await page.keyboard.press('Escape')
    await expect.poll(() => page.locator('.full-page').count()).toBe(0)
  }

  beforeAll(async () => {
    [ines, tobin, pell] = await Promise.all([join('photographer', 'Ines'), join('assistant', 'Tobin'), join('client', 'Pell')])
    await Promise.all([ines, tobin, pell].map((each) => each.live()))
  })
  afterAll(async () => {
    for (const context of contexts) await context.close()
  })

  it('the client says "That one", and it opens exactly as it was though the plan has gone on', async () => {
    const powerThen = await pell.numbers('C')
    await pell.page.getByRole('button', { name: 'That one' }).click()
    await agreed(pell)
    await pell.page.getByRole('button', { name: /^Look at what Pell meant/ }).waitFor()
    await shut(pell)
    await ines.stepPower('C', -7)
    await expect.poll(() => pell.numbers('C')).not.toBe(powerThen)
    await agreed(pell)
    await pell.page.getByRole('button', { name: /^Look at what Pell meant/ }).click()
    await pell.page.getByText('Nothing here can be changed').waitFor()
    await expect.poll(() => pell.numbers('C')).toBe(powerThen)
    await pell.page.getByRole('button', { name: 'Back to now' }).click()
    await expect.poll(() => pell.numbers('C')).not.toBe(powerThen)
  })

  it('the photographer locks the look, and the client says yes to it on an unchecked screen', async () => {
    await agreed(ines)
    await ines.page.getByLabel('Conditions, if any').fill('If the print matches')
    await ines.page.getByRole('button', { name: /^Lock Look 1/ }).click()
    await ines.page.getByRole('article', { name: 'Lock 1' }).getByText('As locked').waitFor()
    expect(await axeFaults(ines.page, '.full-page')).toEqual([])
    await shut(ines)
    await pell.page.getByRole('button', { name: 'Lock 1 · unchanged' }).click()
    const card = pell.page.getByRole('article', { name: 'Lock 1' })
    await card.getByText('Conditions: If the print matches').waitFor()
    await card.locator('summary').click()
    await expect.poll(() => card.locator('.lock-card-lights li').allTextContents()).toContainEqual(expect.stringMatching(/^C .*Umbrella 165/i))
    expect(await pell.page.getByRole('button', { name: /^Lock Look 1/ }).count()).toBe(0)
    await card.getByRole('button', { name: 'Yes', exact: true }).click()
    await card.getByText('said yes').filter({ hasText: 'screen not checked' }).waitFor()
    await card.getByText('As locked').waitFor()
    await shut(pell)
  })

  it('what the assistant changes since is told by what it does to the picture, and whether the client is asked again', async () => {
    const before = await tobin.numbers('C')
    await tobin.stepPower('C', 9)
    await expect.poll(() => tobin.numbers('C')).not.toBe(before)
    await tobin.tape('B').click()
    await tobin.page.getByRole('button', { name: 'Details' }).click()
    await tobin.page.locator('summary').filter({ hasText: 'Place and aim' }).click()
    await tobin.page.getByRole('switch', { name: 'Sandbag' }).click()

    await pell.page.getByRole('button', { name: 'Lock 1 · changed, ask again' }).click()
    const list = pell.page.getByRole('list', { name: 'Since lock 1' })
    await expect.poll(() => list.getByRole('listitem').count()).toBe(2)
    const rows = await list.getByRole('listitem').allInnerTexts()
    expect(rows[0]).toMatch(/^visible\s+C power \+0\.9/)
    expect(rows[1]).toMatch(/^not visible\s+B sandbag (on|off)/)
    await pell.page.getByText('The client has to be asked again').waitFor()
    expect(await axeFaults(pell.page, '.full-page')).toEqual([])
    expect([ines.troubles, tobin.troubles, pell.troubles]).toEqual([[], [], []])
  })

  it('on a phone the client reads the same', async () => {
    await pell.page.setViewportSize(PHONE.viewport)
    await pell.page.getByRole('article', { name: 'Lock 1' }).getByText('As locked').waitFor()
    const widest = await pell.page.evaluate(() => document.querySelector('.full-page-body')!.scrollWidth)
    expect(widest).toBeLessThanOrEqual(PHONE.viewport.width)
  })
})
