import type { BrowserContext, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { BoardPage } from './boardPage.ts'
import { demoJob, PHONE } from './demoJob.ts'

const FRAME = '.frame-print > canvas[data-picture="drawn"]'

describe('what is read off the Frame', () => {
  const job = demoJob()
  let context: BrowserContext
  let ines: BoardPage
  let page: Page
  /** How bright the Frame is as the job begins. */
  let start: number

  beforeAll(async () => {
    context = await job.newContext()
    ines = await BoardPage.join(context, job.server.links.photographer, 'Ines')
    page = ines.page
    await page.locator(FRAME).waitFor()
    start = await rested(page)
  })
  afterAll(async () => {
    await context?.close()
  })

  it('names whose light a place is, all of it, and follows the picture', async () => {
    await pointAt(page, 0.5, 0.4)
    await expect.poll(async () => sum(await percents(page))).toBe(100)
    const before = await percents(page)
    expect(before.map(([letter]) => letter).sort()).toEqual(['A', 'B', 'C', 'D'])
    await page.getByRole('button', { name: /^Lift out A/ }).click()
    await pointAt(page, 0.5, 0.4)
    await expect.poll(async () => (await percents(page)).map(([letter]) => letter).sort()).toEqual(['B', 'C', 'D'])
    expect(sum(await percents(page))).toBe(100)
    await page.getByRole('button', { name: /^Put back A/ }).click()
    await pointAt(page, 0.5, 0.4)
    await expect.poll(() => percents(page)).toEqual(before)
  })

  it('shows the colour that the picture has there', async () => {
    for (const [x, y] of [[0.2, 0.2], [0.5, 0.75], [0.5, 0.45]] as const) {
      await pointAt(page, x, y)
      await page.locator('.frame-reading').waitFor()
      const [swatch, pixel] = [await colourOfSwatch(page), await colourOfPixel(page, x, y)]
      // The lens's stray light lies over the picture and not over a spot reading, and lifts the dark by a few levels.
      for (let k = 0; k < 3; k++) expect(Math.abs(swatch[k]! - pixel[k]!)).toBeLessThan(16)
    }
  })

  it('goes with the arrow keys, and is read out', async () => {
    await page.mouse.move(5, 5)
    await page.getByRole('button', { name: /^nose, / }).focus()
    await page.keyboard.press('ArrowDown')
    await page.locator('.frame-print [role="status"]').getByText(/from mid-grey.*Lit by .*%/).waitFor({ state: 'attached' })
    const first = await page.locator('.reading-mark').boundingBox()
    await page.keyboard.press('Shift+ArrowRight')
    await expect.poll(async () => (await page.locator('.reading-mark').boundingBox())!.x).toBeGreaterThan(first!.x + 3)
    await page.keyboard.press('Escape')
    await page.locator('.reading-mark').waitFor({ state: 'detached' })
  })

  it('has a view of who lights what, with letters on its parts and a key', async () => {
    await page.getByRole('radio', { name: 'Who lights what' }).click()
    const letters = page.locator('.picture-letter')
    await expect.poll(() => letters.count()).toBeGreaterThan(2)
    const written = new Set(await letters.allTextContents())
    for (const letter of written) expect(['A', 'B', 'C', 'D']).toContain(letter)
    expect(await page.getByRole('list', { name: 'Which light gives most, by letter' }).locator('b').allTextContents()).toEqual(['A', 'B', 'C', 'D'])

    // Where a letter stands, the reading names the same light first.
    const text = (await letters.first().textContent())!
    const box = (await letters.first().boundingBox())!
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2)
    await expect.poll(async () => (await percents(page))[0]?.[0]).toBe(text)
  })

  it('writes on what clips which channels clip', async () => {
    await page.getByRole('radio', { name: 'Clipping' }).click()
    await ines.stepPower('A', 30)
    await expect.poll(() => page.locator('.picture-letter').count()).toBeGreaterThan(0)
    for (const text of await page.locator('.picture-letter').allTextContents()) expect(text).toMatch(/^(R|G|B|RG|RB|GB|white)$/)
    await ines.stepPower('A', -30)
    await page.getByRole('radio', { name: 'Picture' }).click()
    await page.locator('.picture-letter').first().waitFor({ state: 'detached' })
    await expect.poll(async () => Math.abs(await brightness(page) - start)).toBeLessThan(0.01)
  })

  it('shows the Frame before the last change while a key is held, or a button', async () => {
    const before = start
    await page.getByRole('button', { name: /^Lift out A/ }).click()
    await expect.poll(() => brightness(page)).toBeLessThan(before - 5)
    const after = await rested(page)
    await page.keyboard.down(',')
    await expect.poll(async () => Math.abs(await brightness(page) - before)).toBeLessThan(0.01)
    await page.keyboard.up(',')
    await expect.poll(async () => Math.abs(await brightness(page) - after)).toBeLessThan(0.01)

    await page.getByRole('button', { name: 'Keep this as Before' }).click()
    await page.getByRole('button', { name: /^Put back A/ }).click()
    await expect.poll(async () => Math.abs(await brightness(page) - before)).toBeLessThan(0.01)
    await ines.stepPower('C', 2)
    await ines.stepPower('C', -2)
    const hold = (await page.getByRole('button', { name: 'Before', exact: true }).boundingBox())!
    await page.mouse.move(hold.x + hold.width / 2, hold.y + hold.height / 2)
    await page.mouse.down()
    await expect.poll(async () => Math.abs(await brightness(page) - after)).toBeLessThan(0.01)
    await page.mouse.up()
    await expect.poll(async () => Math.abs(await brightness(page) - before)).toBeLessThan(0.01)
    await page.getByRole('button', { name: 'Keep this as Before' }).click()
  })

  it('has the eyes enlarged in a corner, off the face', async () => {
    await page.getByRole('button', { name: 'Eyes', exact: true }).click()
    const inset = page.locator('.eye-inset canvas[data-picture="drawn"]')
    await inset.waitFor()
    const eyes = (await page.locator('.eye-inset').boundingBox())!
    for (const name of [/^nose, /, /^lips, /, /^camera-left cheek, /, /^camera-right cheek, /, /^hair, /]) {
      const face = (await page.getByRole('button', { name }).boundingBox())!
      const [x, y] = [face.x + face.width / 2, face.y + face.height / 2]
      expect(x > eyes.x && x < eyes.x + eyes.width && y > eyes.y && y < eyes.y + eyes.height).toBe(false)
    }
    // Catchlights: what an eye mirrors is brighter than any eye white, in either half.
    const brightest = await inset.evaluate((canvas: HTMLCanvasElement) => [0, 0.5].map((from) => {
      const half = canvas.width / 2
      const { data } = canvas.getContext('2d')!.getImageData(from * canvas.width, 0, half, canvas.height)
      let most = 0
      for (let i = 0; i < data.length; i += 4) most = Math.max(most, Math.min(data[i]!, data[i + 1]!))
      return most
    }))
    for (const level of brightest) expect(level).toBeGreaterThan(120)
    await page.getByRole('button', { name: 'Eyes', exact: true }).click()
    expect(ines.troubles).toEqual([])
  })

  it('follows a light dragged in the side view, and one dragged on the Ladder', async () => {
    await page.getByRole('radio', { name: 'From the side' }).click()
    await ines.tape('A').waitFor()
    const from = await ines.grabOnFloor('A')
    await page.mouse.move(from.x, from.y - 40, { steps: 6 })
    await expect.poll(async () => Math.abs(await brightness(page) - start)).toBeGreaterThan(0.3)
    await page.mouse.up()
    await ines.undo()
    await expect.poll(async () => Math.abs(await brightness(page) - start)).toBeLessThan(0.01)

    const marker = (await ines.ladder('A').boundingBox())!
    await page.mouse.move(marker.x + marker.width / 2, marker.y + marker.height / 2)
    await page.mouse.down()
    await page.mouse.move(marker.x + marker.width / 2, marker.y + marker.height / 2 - 50, { steps: 6 })
    await expect.poll(() => brightness(page)).toBeGreaterThan(start + 3)
    await page.mouse.up()
    await ines.undo()
    await expect.poll(async () => Math.abs(await brightness(page) - start)).toBeLessThan(0.01)
  })
})

describe('what is read off the Frame on a phone', () => {
  const job = demoJob()

  it('comes with a long press, above the finger, and stays until another touch', async () => {
    const context = await job.newContext(PHONE)
    const page = await context.newPage()
    await page.goto(job.server.links.photographer)
    await page.getByLabel('Your name').fill('Ines')
    await page.getByRole('button', { name: 'Come in' }).click()
    await page.locator(FRAME).waitFor()
    const box = (await page.locator('.frame-print').boundingBox())!
    const finger = { x: box.x + 0.5 * box.width, y: box.y + 0.6 * box.height }
    const touch = await context.newCDPSession(page)
    await touch.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [finger] })
    await page.locator('.frame-reading').waitFor()
    await expect.poll(async () => sum(await percents(page))).toBe(100)
    await touch.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] })
    const mark = (await page.locator('.reading-mark').boundingBox())!
    expect(mark.y + mark.height).toBeLessThan(finger.y - 30)
    expect(Math.abs(mark.x + mark.width / 2 - finger.x)).toBeLessThan(2)
    await page.touchscreen.tap(20, box.y + box.height + 30)
    await page.locator('.frame-reading').waitFor({ state: 'detached' })
    await context.close()
  })
})

async function pointAt(page: Page, x: number, y: number): Promise<void> {
  const box = (await page.locator('.frame-print').boundingBox())!
  await page.mouse.move(box.x + box.width * x, box.y + box.height * y)
}

/** Letters and whole percents of the reading, the greatest first. */
function percents(page: Page): Promise<(readonly [string, number])[]> {
  return page.locator('.frame-reading-light').evaluateAll((lights) =>
    lights.map((light) => [light.getAttribute('data-letter')!, Number(light.getAttribute('data-percent'))] as const))
}

function sum(shares: readonly (readonly [string, number])[]): number {
  return shares.reduce((total, [, percent]) => total + percent, 0)
}

/** Mean of the Frame's pixels on the screen, 0-255. */
function brightness(page: Page): Promise<number> {
  return page.locator(FRAME).evaluate((canvas: HTMLCanvasElement) => {
    const { data } = canvas.getContext('2d')!.getImageData(0, 0, canvas.width, canvas.height)
    let total = 0
    for (let i = 0; i < data.length; i += 4) total += data[i]! + data[i + 1]! + data[i + 2]!
    return total / (data.length / 4) / 3
  })
}

/** The same once fades are over. */
async function rested(page: Page): Promise<number> {
  for (let last = NaN; ;) {
    const now = await brightness(page)
    if (now === last) return now
    last = now
    await page.waitForTimeout(250)
  }
}

async function colourOfSwatch(page: Page): Promise<readonly number[]> {
  const css = await page.locator('.frame-reading-patch').evaluate((patch) => getComputedStyle(patch).backgroundColor)
  return css.match(/\d+/g)!.slice(0, 3).map(Number)
}

function colourOfPixel(page: Page, x: number, y: number): Promise<readonly number[]> {
  return page.locator(FRAME).evaluate((canvas: HTMLCanvasElement, [frameX, frameY]) => {
    const place = [Math.floor(frameX * canvas.width), Math.floor(frameY * canvas.height)] as const
    return [...canvas.getContext('2d')!.getImageData(place[0], place[1], 1, 1).data.slice(0, 3)]
  }, [x, y] as const)
}
