import { readFileSync } from 'node:fs'
import { decode } from 'fast-png'
import type { BrowserContext } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { BoardPage } from './boardPage.ts'
import { demoJob } from './demoJob.ts'

describe('the predicted picture on the board', () => {
  const job = demoJob()
  let context: BrowserContext
  let ines: BoardPage

  beforeAll(async () => {
    context = await job.newContext()
    ines = await BoardPage.join(context, job.server.links.photographer, 'Ines')
    await ines.page.locator('.frame-print canvas[data-picture="drawn"]').waitFor()
  })
  afterAll(async () => {
    await context?.close()
  })

  /** Mean of the Frame's pixels on the screen, 0-255. */
  const brightness = (): Promise<number> => ines.page.evaluate(() => {
    const canvas = document.querySelector<HTMLCanvasElement>('.frame-print canvas[data-picture="drawn"]')!
    const { data } = canvas.getContext('2d')!.getImageData(0, 0, canvas.width, canvas.height)
    let sum = 0
    for (let i = 0; i < data.length; i += 4) sum += data[i]! + data[i + 1]! + data[i + 2]!
    return sum / (data.length / 4) / 3
  })

  it('is drawn, and so is every Single', async () => {
    await expect.poll(() => ines.page.locator('.single canvas[data-picture="drawn"]').count()).toBe(4)
    expect(await brightness()).toBeGreaterThan(20)
  })

  it('a light lifted out darkens it, and put back it is as it was', async () => {
    const before = await brightness()
    await ines.page.getByRole('button', { name: /^Lift out A/ }).click()
    await expect.poll(brightness).toBeLessThan(before - 5)
    await ines.page.getByRole('button', { name: /^Put back A/ }).click()
    await expect.poll(async () => Math.abs(await brightness() - before)).toBeLessThan(0.01)
  })

  it('more power brightens it, and the numbers do not wait for it', async () => {
    const before = await brightness()
    const numbers = await ines.numbers('A')
    await ines.stepPower('A', 10)
    await ines.numbersAfter('A', numbers)
    await expect.poll(brightness).toBeGreaterThan(before + 5)
    await ines.stepPower('A', -10)
    await expect.poll(async () => Math.abs(await brightness() - before)).toBeLessThan(0.01)
  })

  it('a light seen alone is that light', async () => {
    const before = await brightness()
    await ines.page.getByRole('button', { name: 'Light D: ', exact: false }).first().focus()
    await ines.page.keyboard.down('Space')
    await expect.poll(brightness).toBeLessThan(before * 0.7)
    await ines.page.keyboard.up('Space')
    await expect.poll(async () => Math.abs(await brightness() - before)).toBeLessThan(0.01)
  })

  it('reads stops and colour under the pointer', async () => {
    const box = (await ines.page.locator('.frame-print').boundingBox())!
    await ines.page.mouse.move(box.x + box.width * 0.5, box.y + box.height * 0.4)
    await ines.page.locator('.frame-reading').getByText(/[+−]\d\.\d from mid-grey/).waitFor()
  })

  it('is saved as a file that says what it is', async () => {
    await ines.page.getByRole('button', { name: 'Job' }).click()
    const [download] = await Promise.all([
      ines.page.waitForEvent('download'),
      ines.page.getByRole('button', { name: 'Save the Frame' }).click(),
    ])
    const png = decode(readFileSync(await download.path()))
    expect([png.width, png.height]).toEqual([1_000, 1_500])
    expect(png.text['Title']).toBe('Late Harvest: Look 1, Dusk in an orchard')
    expect(png.text['Software']).toBe('Halfstop')
    await ines.page.keyboard.press('Escape')
    expect(ines.troubles).toEqual([])
  })
})
