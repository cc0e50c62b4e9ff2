import { readFileSync } from 'node:fs'
import type { BrowserContext, Locator, Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { applyEdit } from '../../shared-core/plan/edit.ts'
import { LookPicture } from '../../shared-core/predict/lookPicture.ts'
import { predict } from '../../shared-core/predict/predict.ts'
import { decodeSubject } from '../../shared-core/subject/asset/decode.ts'
import { axeFaults } from './axeFaults.ts'
import { BoardPage } from './boardPage.ts'
import { demoJob } from './demoJob.ts'

const LOOK_ID = 'dusk-draft-1'
const KNOWN_GEL = 'green'
const [WIDTH, HEIGHT] = [440, 660]

/** An uncompressed 24-bit bitmap file (BITMAPINFOHEADER: rows from the bottom, blue first, filled up to four bytes). */
function bitmapFile(width: number, height: number, rgbAt: (x: number, y: number) => readonly [number, number, number]): Buffer {
  const rowBytes = Math.ceil((width * 3) / 4) * 4
  const file = Buffer.alloc(54 + rowBytes * height)
  file.write('BM', 0, 'latin1')
  file.writeUInt32LE(file.length, 2)
  file.writeUInt32LE(54, 10)
  file.writeUInt32LE(40, 14)
  file.writeInt32LE(width, 18)
  file.writeInt32LE(height, 22)
  file.writeUInt16LE(1, 26)
  file.writeUInt16LE(24, 28)
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) file.set([...rgbAt(x, y)].reverse(), 54 + (height - 1 - y) * rowBytes + 3 * x)
  }
  return file
}

/** The demo's first draft as the picture has it with another sheet on C. */
function pictureWith(gelId: string): Buffer {
  const plan = applyEdit(demoPlan, { name: 'test', changes: [{ path: ['looks', LOOK_ID, 'lights', 'c', 'gelIds'], set: [gelId] }] })
  const subject = decodeSubject(readFileSync(new URL('../../shared-core/subject/asset/subject.bin', import.meta.url)))
  const { width, height, rgba } = new LookPicture(subject).draw(plan, LOOK_ID, { width: WIDTH, height: HEIGHT, soloLightId: null, coarse: false })
  return bitmapFile(width, height, (x, y) => {
    const at = 4 * (y * width + x)
    return [rgba[at]!, rgba[at + 1]!, rgba[at + 2]!]
  })
}

const match = (page: Page): Locator => page.getByRole('region', { name: 'Match a reference' })
const nearest = (page: Page): Locator => match(page).getByRole('list', { name: 'Nearest first' }).getByRole('listitem').first()

async function drop(page: Page, name: string, type: string, bytes: Buffer): Promise<void> {
  const data = await page.evaluateHandle(({ named, typed, base64 }) => {
    const transfer = new DataTransfer()
    transfer.items.add(new File([Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0))], named, { type: typed }))
    return transfer
  }, { named: name, typed: type, base64: bytes.toString('base64') })
  await match(page).locator('.match').dispatchEvent('drop', { dataTransfer: data })
}

describe('a reference is matched', () => {
  const job = demoJob()
  let context: BrowserContext
  let ines: BoardPage
  let page: Page
  beforeAll(async () => {
    context = await job.newContext()
    ines = await BoardPage.join(context, job.server.links.photographer, 'Ines')
    await ines.live()
    ;({ page } = ines)
    await page.getByRole('button', { name: /^Look: .*Change look$/ }).click()
    await page.getByRole('dialog', { name: 'Looks of this job' }).getByRole('button', { name: 'Look 1, draft 1', exact: true }).click()
    await page.locator('.ladder [data-area="cheek-right"]').click()
    await page.getByRole('button', { name: 'Details' }).click()
    await match(page).getByRole('button', { name: 'Match a reference' }).click()
    await match(page).getByText(/It stays on this device/).waitFor()
  })
  afterEach(async () => {
    expect(ines.troubles).toEqual([])
  })
  afterAll(async () => {
    await context?.close()
  })

  it('a colour is taken off the Frame by mouse or by keys, and Escape leaves it', async () => {
    const take = match(page).getByRole('button', { name: 'From the Frame' })
    const mark = page.getByRole('button', { name: /^Take a colour from the Frame/ })
    await take.click()
    await mark.waitFor()
    await page.keyboard.press('Escape')
    await mark.waitFor({ state: 'detached' })
    expect(await match(page).getByText(/^Wanted:/).count()).toBe(0)
    await take.press('Enter')
    await page.keyboard.press('Shift+ArrowUp')
    await page.keyboard.press('Enter')
    await match(page).getByText('from the Frame', { exact: true }).waitFor()
    await nearest(page).waitFor()
  })

  it('a picture made with a known sheet: dropped, the colour of the cheek taken, that sheet comes first; applied, undone', async () => {
    await drop(page, 'mood.bmp', 'image/bmp', pictureWith(KNOWN_GEL))
    const canvas = match(page).getByRole('img', { name: 'Reference: mood.bmp' })
    await canvas.scrollIntoViewIfNeeded()
    const box = (await canvas.boundingBox())!
    const cheek = predict(demoPlan, LOOK_ID).areas.find(({ id }) => id === 'cheek-right')!
    await page.mouse.click(box.x + cheek.frameX * box.width, box.y + cheek.frameY * box.height)
    await match(page).getByRole('switch', { name: /^A picture this board made/ }).click()
    await nearest(page).filter({ hasText: new RegExp(`^${KNOWN_GEL}`, 'i') }).waitFor()
    // A step that is seen at a glance is some 2 to 3 (common practice, no source).
    expect(Number(/off by (\d+\.\d)/.exec(await nearest(page).innerText())![1])).toBeLessThan(3)
    expect(await axeFaults(page, '.match-here')).toEqual([])

    const before = await ines.numbers('C')
    await nearest(page).getByRole('button').first().click()
    await ines.numbersAfter('C', before)
    await nearest(page).getByRole('button', { name: 'Apply' }).click()
    await page.getByRole('region', { name: 'What the last edit did' }).getByText(new RegExp(KNOWN_GEL, 'i')).waitFor()
    await ines.undo()
    await ines.untilNumbers('C', before)
  })

  it('a colour that no light and sheet gives is left to paint or retouch; the eye-dropper goes by keys', async () => {
    // The left half is the display's own green, which lips, that throw back little of it, are under no sheet.
    await drop(page, 'screen.bmp', 'image/bmp', bitmapFile(200, 100, (x) => (x < 100 ? [0, 255, 0] : [170, 90, 85])))
    await match(page).getByRole('combobox', { name: 'on' }).selectOption('lips')
    const dropper = match(page).getByRole('button', { name: /^Eye-dropper at/ })
    await dropper.focus()
    for (let i = 0; i < 3; i++) await page.keyboard.press('Shift+ArrowLeft')
    await match(page).getByText(/only paint or retouch would do it/).waitFor()
    for (let i = 0; i < 6; i++) await page.keyboard.press('Shift+ArrowRight')
    expect(await dropper.getAttribute('aria-label')).toMatch(/^Eye-dropper at 62 % from the left/)
    await match(page).getByText(/only paint or retouch would do it/).waitFor({ state: 'detached' })
  })

  it('what is no picture is said to be none, and what was there stays', async () => {
    await drop(page, 'notes.txt', 'text/plain', Buffer.from('not a picture'))
    await match(page).getByText(/“notes\.txt” is no picture/).waitFor()
    const picture = bitmapFile(60, 60, () => [120, 60, 140])
    await drop(page, 'half.bmp', 'image/bmp', picture.subarray(0, 40))
    await match(page).getByText(/“half\.bmp” is no picture/).waitFor()
    await drop(page, 'whole.bmp', 'image/bmp', picture)
    await match(page).getByRole('img', { name: 'Reference: whole.bmp' }).waitFor()
    expect(await match(page).getByText(/is no picture/).count()).toBe(0)
  })
})
