import type { BrowserContext, Locator } from 'playwright-core'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { axeFaults } from './axeFaults.ts'
import { BoardPage } from './boardPage.ts'
import { demoJob } from './demoJob.ts'

describe('spill is cured, and what must not drift is said', () => {
  const job = demoJob()
  let context: BrowserContext
  let ines: BoardPage
  let snags: Locator
  beforeAll(async () => {
    context = await job.newContext()
    ines = await BoardPage.join(context, job.server.links.photographer, 'Ines')
    await ines.live()
    snags = ines.page.getByRole('region', { name: 'Snags' })
  })
  afterEach(async () => {
    expect(ines.troubles).toEqual([])
  })
  afterAll(async () => {
    await context?.close()
  })

  it('a cure is found, looked at and applied: its line goes quiet, and speaks again after one undo', async () => {
    const { page } = ines
    const find = snags.getByRole('button', { name: /^Find a cure: Camera-right cheek: A’s clear light/ })
    const line = snags.getByText(/^Camera-right cheek: A’s clear light is \d\.\d under C, wants 3\.0/)
    await find.click()
    const cure = snags.locator('.spill-cure').first()
    const look = cure.getByRole('button', { name: /^Look at it: / }).first()
    await look.waitFor()
    const [, from, to] = /(\d\.\d) under → (gone|\d\.\d)/.exec(await cure.innerText())!
    if (to !== 'gone') expect(Number(to)).toBeGreaterThanOrEqual(3)
    expect(Number(from)).toBeLessThan(3)
    expect(await axeFaults(page, '.snags')).toEqual([])
    // While it is looked at the board has it, and the line stays, so that the look can be ended where it began.
    const cheekSays = () => page.locator('.ladder [data-area="cheek-right"]').getAttribute('aria-valuetext')
    const before = await cheekSays()
    await look.click()
    await expect.poll(() => cheekSays()).not.toBe(before)
    await page.waitForTimeout(500)
    expect(await look.getAttribute('aria-pressed')).toBe('true')
    expect(await cheekSays()).not.toBe(before)
    await look.click()
    await expect.poll(() => cheekSays()).toBe(before)
    await line.waitFor()
    await cure.locator('.spill-apply').first().click()
    await line.waitFor({ state: 'detached' })
    await ines.undo()
    await line.waitFor()
    expect(await page.getByRole('button', { name: 'Undo' }).getAttribute('aria-disabled')).toBe('true')
  })

  it('a light’s line shows its two tightest measures, its sheet all of them in the same order', async () => {
    const { page } = ines
    await ines.tape('A').click()
    const line = page.locator('.detail-line-words')
    await line.filter({ hasText: /· \S+ (more than )?±[^,]+, \S+ (more than )?±/ }).waitFor()
    const short = /· ([^·]+)$/.exec(await line.innerText())![1]!.split(', ')
    await page.getByRole('button', { name: 'Details' }).click()
    const matters = page.getByRole('region', { name: 'What matters' })
    await matters.getByRole('listitem').first().waitFor()
    const all = await matters.getByRole('listitem').locator('span:first-child').allInnerTexts()
    expect(all.slice(0, 2)).toEqual(short)
    // Taped when a light is rigged: distance, two ways across, two turns, and its power (common practice, no source).
    expect(all.map((words) => words.split(' ')[0]).sort()).toEqual(['distance', 'height', 'power', 'sideways', 'tilt', 'turn'])
    expect(await axeFaults(page, '.drift')).toEqual([])
  })
})
