import { describe, expect, it } from 'vitest'
import { axeFaults } from './axeFaults.ts'
import { BoardPage } from './boardPage.ts'
import { demoJob } from './demoJob.ts'

describe('the notebook of a device', () => {
  const job = demoJob()

  it('keeps a look over a reload, finds it by its colour, and builds it again as a look of the job', async () => {
    const ines = await BoardPage.join(await job.newContext(), job.server.links.photographer, 'Ines')
    const { page } = ines
    const open = async () => {
      await page.getByRole('button', { name: 'Set day' }).click()
      await page.getByRole('button', { name: /^Notebook/ }).click()
      await page.getByRole('dialog', { name: 'Notebook' }).waitFor()
    }
    await open()
    await page.getByRole('button', { name: /^Keep “Look 1/ }).click()
    await page.getByRole('article', { name: /^Look 1/ }).waitFor()

    await page.reload()
    await ines.ready()
    await open()
    await page.getByRole('article', { name: /^Look 1/ }).waitFor()
    expect(await axeFaults(page, '.full-page')).toEqual([])
    const search = page.getByRole('searchbox')
    await search.fill('pistachio')
    await page.getByText('No page has all these words.').waitFor()
    await search.fill('viol')
    await page.getByRole('button', { name: 'Rebuild in this job…' }).click()
    await page.getByText(/^Every area is within 0\.2 stop/).waitFor()
    await page.getByText('Nothing: it stands as it stood.').waitFor()
    await page.getByRole('button', { name: 'Add as a look' }).click()
    await page.getByRole('dialog').waitFor({ state: 'detached' })
    await page.getByRole('button', { name: /^Look/ }).first().click()
    await page.getByText(/Look 1, Dusk in an orchard, rebuilt/).first().waitFor()
    expect(ines.troubles).toEqual([])
  })
})
