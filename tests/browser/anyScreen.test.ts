import type { BrowserContextOptions, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { demoJob, LAPTOP, PHONE } from './demoJob.ts'

const TABLET = { width: 1024, height: 1366 } as const
const ON_ITS_SIDE = { width: 844, height: 390 } as const

describe('the board on any screen', () => {
  const job = demoJob()
  let desk: Page
  let phone: Page
  beforeAll(async () => {
    [desk, phone] = await Promise.all([boardOn(LAPTOP), boardOn(PHONE)])
  })
  afterAll(async () => {
    for (const page of [desk, phone]) await page?.context().close()
  })

  /** The photographer's board on such a screen, as its first picture is drawn. */
  async function boardOn(screen: BrowserContextOptions): Promise<Page> {
    const page = await (await job.newContext(screen)).newPage()
    await page.goto(job.server.links.photographer)
    await page.getByLabel('Your name').fill('Ines')
    await page.getByRole('button', { name: 'Come in' }).click()
    await page.locator('.frame-print canvas[data-picture="drawn"]').waitFor({ timeout: 15_000 })
    return page
  }

  async function turnedTo(page: Page, viewport: { readonly width: number; readonly height: number }): Promise<Page> {
    await page.setViewportSize(viewport)
    await page.locator('.frame-print canvas[data-picture="drawn"]').waitFor()
    return page
  }

  it('keeps the picture in its place while a light is seen alone, and the whole of the Ladder’s words', async () => {
    const page = desk
    const before = await page.locator('.frame-print').boundingBox()
    for (const single of await page.locator('.single-picture').all()) {
      await single.focus()
      await page.keyboard.down('Space')
      await page.locator('.frame-words').getByText(/^[A-D] alone: /).waitFor()
      expect(await page.locator('.frame-print').boundingBox()).toEqual(before)
      await page.keyboard.up('Space')
    }
    const cutOff = () => page.locator('.ladder-readout > span').evaluateAll((lines) => lines.filter((line) => line.scrollWidth > line.clientWidth).map((line) => line.textContent))
    expect(await cutOff()).toEqual([])
    for (const letter of ['A', 'B', 'C', 'D']) {
      await page.keyboard.press(letter)
      await page.locator('.ladder-readout').getByText(`${letter} · `).waitFor()
      expect(await cutOff()).toEqual([])
    }
  })

  it('picks on a phone what the finger is nearest to, and keeps the size of the picture', async () => {
    const page = phone
    const size = async () => {
      const { width, height } = (await page.locator('.frame-print').boundingBox())!
      return { width, height }
    }
    const before = await size()
    const details = page.locator('.detail-line-name')
    for (const [mark, name] of [['nose', 'nose'], ['lips', 'lips'], ['cheek-left', 'camera-left cheek'], ['jaw-right', 'camera-right jaw']] as const) {
      // Where a finger's marks overlap, the nearest is the one meant.
      const box = (await page.locator(`.area-marks [data-area="${mark}"]`).boundingBox())!
      await page.touchscreen.tap(box.x + box.width / 2, box.y + box.height / 2)
      await details.getByText(name, { exact: false }).waitFor()
      expect(await size()).toEqual(before)
    }
    // The middle of the background lies behind the chin: a press there means the subject.
    const behind = (await page.locator('.area-marks [data-area="background-centre"]').boundingBox())!
    await page.touchscreen.tap(behind.x + behind.width / 2, behind.y + behind.height / 2)
    await details.getByText(/^(lips|neck)$/).waitFor()
    // The pencil, too, pins to what is nearest.
    await page.getByRole('button', { name: 'Pencil', exact: true }).tap()
    const lips = (await page.locator('.area-marks [data-area="lips"]').boundingBox())!
    await page.touchscreen.tap(lips.x + lips.width / 2, lips.y + lips.height / 2)
    await page.locator('.note-composer').filter({ hasText: /lips/i }).waitFor()
  })

  it('gives the picture most of the height of a phone held on its side', async () => {
    const page = await turnedTo(phone, ON_ITS_SIDE)
    const print = (await page.locator('.frame-print').boundingBox())!
    expect(print.height).toBeGreaterThan(ON_ITS_SIDE.height * 0.6)
    for (const flip of ['Ladder', 'Floor', 'Job']) {
      await page.getByRole('button', { name: flip, exact: true }).tap()
      await page.getByRole('main', { name: flip }).waitFor()
    }
  })

  it('lays no word of the top bar over another on a tablet held upright', async () => {
    const page = await turnedTo(desk, TABLET)
    const boxes = await page.locator('.top-bar :is(h1, button, input)').evaluateAll((all) =>
      all.map((each) => each.getBoundingClientRect()).filter(({ width }) => width > 0).map(({ left, right }) => [left, right] as const).sort((a, b) => a[0] - b[0]))
    expect(boxes.length).toBeGreaterThan(8)
    boxes.slice(1).forEach(([left], i) => expect(left).toBeGreaterThanOrEqual(boxes[i]![1] - 0.5))
    expect(boxes.at(-1)![1]).toBeLessThanOrEqual(TABLET.width)
  })
})
