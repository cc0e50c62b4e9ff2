import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { axeFaults } from './axeFaults.ts'
import { BoardPage } from './boardPage.ts'
import { demoJob, KEPT, LAPTOP, PHONE } from './demoJob.ts'

describe('the rig sheet on two phones in a basement', () => {
  const job = demoJob()

  it('is built without a network and merges whole, and a late move is shown on the stand it touches', async () => {
    const ines = await BoardPage.join(await job.newContext(LAPTOP), job.server.links.photographer, 'Ines')
    const [tobin, yara] = await Promise.all(['Tobin', 'Yara'].map(async (name) => {
      const context = await job.newContext({ ...PHONE, ...KEPT })
      const page = await openedOnPhone(await context.newPage(), job.server.links.assistant, name)
      await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined))
      // Kept on the device: otherwise the sheet would say that it cannot be opened again without a network.
      expect(await page.getByText('cannot be opened again without').count()).toBe(0)
      return { context, page }
    })) as [{ context: Awaited<ReturnType<typeof job.newContext>>; page: Page }, { context: Awaited<ReturnType<typeof job.newContext>>; page: Page }]
    expect(await axeFaults(tobin.page, '.full-page')).toEqual([])

    await Promise.all([tobin.context.setOffline(true), yara.context.setOffline(true)])
    await Promise.all([tobin.page.reload(), yara.page.reload()])
    await Promise.all([openRigSheet(tobin.page), openRigSheet(yara.page)])
    for (const stand of ['Marks', 'D', 'B']) await tobin.page.getByRole('button', { name: `${stand} done` }).tap()
    for (const stand of ['C', 'A']) {
      await yara.page.getByRole('button', { name: `To build: ${stand}` }).tap()
      await yara.page.getByRole('button', { name: `${stand} done` }).tap()
    }
    await tobin.page.getByText('3 of 6 done').waitFor()
    await yara.page.getByText('2 of 6 done').waitFor()

    // Meanwhile, in the office: B goes to camera left, and up a stop.
    await ines.tape('B').focus()
    await ines.page.keyboard.press('Shift+ArrowLeft')
    await ines.stepPower('B', 10)

    // What was built is still there when a phone wakes without a network.
    await tobin.page.reload()
    await openRigSheet(tobin.page)
    await tobin.page.getByText('3 of 6 done').waitFor()

    await Promise.all([tobin.context.setOffline(false), yara.context.setOffline(false)])
    await Promise.all([tobin.page.getByText('5 of 6 done').waitFor(), yara.page.getByText('5 of 6 done').waitFor()])
    for (const { page } of [tobin, yara]) {
      await page.getByRole('button', { name: 'Done: B' }).tap()
      const since = page.getByRole('region', { name: 'Changed since it was built' })
      await since.getByText('to camera left').waitFor()
      await since.getByText(/^power \+1\.0, to /).waitFor()
      await since.getByText('Done by Tobin').waitFor()
    }
    await yara.page.getByRole('button', { name: 'Done as it is now' }).tap()
    await tobin.page.getByText('Done by Yara').waitFor()
    expect(await tobin.page.getByRole('region', { name: 'Changed since it was built' }).count()).toBe(0)

    // A stand that nothing was done to says nothing.
    await tobin.page.getByRole('button', { name: 'Done: D' }).tap()
    await tobin.page.getByText('Done by Tobin').waitFor()
    expect(await tobin.page.getByRole('region', { name: 'Changed since it was built' }).count()).toBe(0)
    expect(ines.troubles).toEqual([])
  })
})

async function openedOnPhone(page: Page, link: string, name: string): Promise<Page> {
  await page.goto(link)
  await page.getByLabel('Your name').fill(name)
  await page.getByRole('button', { name: 'Come in' }).tap()
  await openRigSheet(page)
  return page
}

async function openRigSheet(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Job', exact: true }).tap()
  await page.getByRole('button', { name: /^Rig sheet/ }).tap()
  await page.getByRole('dialog', { name: 'Rig sheet' }).waitFor()
}
