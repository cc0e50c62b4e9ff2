import { expect, describe, it, afterAll, beforeAll } from 'vitest'
import type { BrowserContext } from 'playwright-core'
import { axeFaults } from './axeFaults.ts'
import { BoardPage } from './boardPage.ts'
import { demoJob } from './demoJob.ts'

describe('links by which people are asked in', () => {
  const job = demoJob()
  const contexts: BrowserContext[] = []
  beforeAll(async () => {
    for (let i = 0; i < 2; i++) contexts.push(await job.newContext())
  })
  afterAll(async () => {
    for (const context of contexts) await context.close()
  })

  it('are made, seat somebody, are listed with who came, and put them out at once when withdrawn', async () => {
    const ines = await BoardPage.join(contexts[0]!, job.server.links.photographer, 'Ines')
    await ines.live()
    const invite = ines.page.getByRole('dialog', { name: 'Ask somebody in' })
    const open = async () => {
      await ines.page.getByRole('button', { name: /here$|^Only you$/ }).click()
      await ines.page.getByRole('button', { name: 'Ask somebody in' }).click()
      await invite.waitFor()
    }
    await open()
    await invite.getByRole('radio', { name: '1 day' }).click()
    await invite.getByRole('button', { name: 'Make a link' }).click()
    const url = await invite.getByRole('textbox', { name: "The assistant's link" }).inputValue()
    expect(new URL(url).origin).toBe(job.server.origin)
    await invite.getByText('nobody came by it yet').first().waitFor()
    expect(await axeFaults(ines.page, '[role="dialog"]')).toEqual([])

    const tobin = await BoardPage.join(contexts[1]!, url, 'Tobin')
    await tobin.live()
    await ines.page.keyboard.press('Escape')
    await open()
    const row = invite.getByRole('list', { name: 'Links that are good' }).getByRole('listitem').filter({ hasText: 'Tobin' })
    await row.getByRole('button', { name: /^Withdraw the assistant link/ }).click()
    await row.getByRole('button', { name: 'Withdraw it: Tobin is out' }).click()
    await invite.getByText('That link is withdrawn').waitFor()
    await tobin.page.getByText('This link was withdrawn').first().waitFor()
    await expect.poll(() => row.count()).toBe(0)
    expect(ines.troubles).toEqual([])
  })
})
