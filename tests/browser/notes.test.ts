import type { BrowserContext, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { axeFaults } from './axeFaults.ts'
import { BoardPage } from './boardPage.ts'
import { demoJob, KEPT, LAPTOP, PHONE } from './demoJob.ts'

interface Place { readonly x: number; readonly y: number }

/** The middle of what is there, on the page. */
async function middleOf(page: Page, selector: string): Promise<Place> {
  const box = (await page.locator(selector).first().boundingBox())!
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 }
}

async function drawn(page: Page): Promise<void> {
  await page.locator('.frame canvas[data-picture="drawn"]').waitFor()
}

async function takePencil(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Pencil', exact: true }).click()
}

/** Writes into the note that was begun, and pins it. */
async function write(page: Page, text: string): Promise<void> {
  await page.getByRole('dialog', { name: /^Note on / }).getByRole('textbox').fill(text)
  await page.keyboard.press('Enter')
  await page.getByRole('dialog', { name: /^Note on / }).waitFor({ state: 'detached' })
}

const CHEEK = '.area-marks [data-area="cheek-left"]'
const notesButton = (page: Page) => page.getByRole('button', { name: /^Notes/ })
const sheet = (page: Page) => page.getByRole('complementary', { name: 'Notes' })
const row = (page: Page, text: string) => sheet(page).getByRole('button', { name: text })

/** Two people on two machines: a cookie jar and a store of their own each. */
describe('notes in pencil', () => {
  const job = demoJob()
  let contexts: BrowserContext[]
  let ines: BoardPage
  let pell: BoardPage

  beforeAll(async () => {
    contexts = await Promise.all([job.newContext({ ...LAPTOP, ...KEPT }), job.newContext({ ...LAPTOP, ...KEPT })])
    const joined = await Promise.all([
      BoardPage.join(contexts[0]!, job.server.links.photographer, 'Ines'), BoardPage.join(contexts[1]!, job.server.links.client, 'Pell'),
    ])
    ines = joined[0]
    pell = joined[1]
    await Promise.all([ines.live(), pell.live(), drawn(ines.page), drawn(pell.page)])
  })
  afterAll(async () => {
    await Promise.all(contexts.map((context) => context.close()))
    expect([...ines.troubles, ...pell.troubles]).toEqual([])
  })

  /** How far the mark is from where the numbers' own camera puts the cheek, which knows nothing of pins. */
  async function awayFromCheek(page: Page): Promise<number> {
    const [mark, cheek] = [await middleOf(page, '[data-note-place]'), await middleOf(page, CHEEK)]
    return Math.hypot(mark.x - cheek.x, mark.y - cheek.y)
  }

  async function setSubject(label: string, value: string): Promise<void> {
    const panel = ines.page.getByRole('complementary', { name: 'Details' })
    // Pressed while it is picked, the word would let go of it.
    if (await panel.getByLabel('Head turned besides').count() === 0) await ines.page.getByRole('button', { name: 'Subject', exact: true }).click()
    if (await panel.count() === 0) await ines.page.getByRole('button', { name: 'Details' }).click()
    await ines.page.getByLabel(label).fill(value)
    await ines.page.keyboard.press('Enter')
  }

  it('a client’s note on a cheek stays on the cheek through camera, pose and aspect; it is answered and closed', async () => {
    await takePencil(pell.page)
    const cheek = await middleOf(pell.page, CHEEK)
    await pell.page.mouse.click(cheek.x, cheek.y)
    await write(pell.page, 'Could this be more plum?')
    expect(await awayFromCheek(pell.page)).toBeLessThan(3)
    await notesButton(ines.page).filter({ hasText: '1 unread' }).waitFor()
    await ines.page.locator('[data-note-place]').waitFor()
    // No light was touched by the client's press.
    expect(await ines.numbers('A')).toBe(await pell.numbers('A'))

    const before = await middleOf(ines.page, '[data-note-place]')
    await setSubject('Head turned besides', '14')
    await ines.page.waitForTimeout(400)
    const turned = await middleOf(ines.page, '[data-note-place]')
    expect(Math.hypot(turned.x - before.x, turned.y - before.y)).toBeGreaterThan(3)
    expect(await awayFromCheek(ines.page)).toBeLessThan(3)
    await setSubject('Off the T, to camera right', '0.12')
    await ines.page.waitForTimeout(400)
    expect(await awayFromCheek(ines.page)).toBeLessThan(3)
    await ines.page.getByRole('button', { name: 'Camera', exact: true }).click()
    await ines.page.getByLabel('Focal length').fill('70')
    await ines.page.keyboard.press('Enter')
    await ines.page.getByLabel('Sensor wide, as held').fill('36')
    await ines.page.keyboard.press('Enter')
    await ines.page.waitForTimeout(600)
    expect(await awayFromCheek(ines.page)).toBeLessThan(3)

    await setSubject('Body turned, left is minus', '-120')
    await ines.page.locator('[data-note-place]').waitFor({ state: 'detached' })
    await notesButton(ines.page).click()
    await row(ines.page, 'Could this be more plum?').getByText(/behind/).waitFor()
    await row(ines.page, 'Could this be more plum?').getByText('Unread').waitFor()
    await row(ines.page, 'Could this be more plum?').click()
    await ines.page.getByLabel('Reply to note 1').fill('Tomorrow, with a deeper violet')
    await ines.page.keyboard.press('Enter')
    await sheet(ines.page).getByRole('button', { name: 'Answered' }).click()
    expect(await axeFaults(ines.page, '#notes-sheet')).toEqual([])
    await ines.page.getByRole('button', { name: 'All notes' }).click()
    expect(await axeFaults(ines.page, '#notes-sheet')).toEqual([])

    // Hers is unread for Pell now, and for Ines nothing is.
    await notesButton(pell.page).filter({ hasText: '1 unread' }).waitFor()
    expect(await notesButton(ines.page).textContent()).toBe('Notes')
    await notesButton(pell.page).click()
    await row(pell.page, 'Could this be more plum?').click()
    await sheet(pell.page).getByText('Tomorrow, with a deeper violet').waitFor()
    await sheet(pell.page).getByRole('button', { name: 'Close' }).click()
    await pell.page.getByRole('button', { name: 'All notes' }).click()
    await sheet(pell.page).getByText('1 closed').waitFor()
    await pell.page.reload()
    await pell.ready()
    await notesButton(pell.page).waitFor()
    expect(await notesButton(pell.page).textContent()).toBe('Notes')
    if (await sheet(ines.page).isVisible()) await notesButton(ines.page).click()
    await sheet(ines.page).waitFor({ state: 'detached' })
  })

  it('notes and strokes that two people make offline are whole on both once they are back', async () => {
    await Promise.all(contexts.map((context) => context.setOffline(true)))
    for (const [board, words] of [[ines, 'Written by Ines offline'], [pell, 'Written by Pell offline']] as const) {
      const { page } = board
      await takePencil(page)
      const print = (await page.locator('.frame-print').boundingBox())!
      await page.mouse.click(print.x + print.width * 0.2, print.y + print.height * 0.15)
      await write(page, words)
      await page.mouse.move(print.x + 40, print.y + 60)
      await page.mouse.down()
      for (let i = 1; i <= 12; i++) await page.mouse.move(print.x + 40 + 6 * i, print.y + 60 + 3 * i)
      await page.mouse.up()
      await notesButton(page).click()
      await row(page, words).getByText(/on its way/).waitFor()
    }
    await Promise.all(contexts.map((context) => context.setOffline(false)))
    for (const { page } of [ines, pell]) {
      for (const words of ['Written by Ines offline', 'Written by Pell offline']) await row(page, words).waitFor()
      await page.waitForFunction(() => !document.querySelector('#notes-sheet')!.textContent.includes('on its way'))
      await page.waitForFunction(() => document.querySelectorAll('[data-stroke]').length === 2)
    }
    // Each rubs out one's own and no other.
    await pell.page.getByRole('button', { name: 'Rub out my last stroke' }).click()
    for (const { page } of [ines, pell]) await page.waitForFunction(() => document.querySelectorAll('[data-stroke]').length === 1)
    await pell.page.getByRole('button', { name: 'Rub out my last stroke' }).waitFor({ state: 'detached' })
    await ines.page.getByRole('button', { name: 'Rub out my last stroke' }).waitFor()
  })
})

describe('notes by keyboard', () => {
  const job = demoJob()

  it('by keyboard alone: on the Frame, on a light, through the list, and out again', async () => {
    const context = await job.newContext()
    const ines = await BoardPage.join(context, job.server.links.photographer, 'Ines')
    const { page } = ines
    await drawn(page)
    await page.keyboard.press('n')
    await page.waitForFunction(() => document.activeElement?.classList.contains('pencil-surface'))
    for (const key of ['ArrowUp', 'ArrowUp', 'ArrowRight', 'Shift+ArrowLeft', 'Enter']) await page.keyboard.press(key)
    await page.getByRole('dialog', { name: /^Note on / }).waitFor()
    expect(await axeFaults(page, '.note-composer')).toEqual([])
    await page.keyboard.type('By key on the Frame')
    await page.keyboard.press('Enter')
    await page.waitForFunction(() => document.activeElement?.classList.contains('pencil-surface'))
    expect(await axeFaults(page, '.frame')).toEqual([])

    const power = await ines.numbers('C')
    await ines.ladder('C').focus()
    await page.keyboard.press('Enter')
    await page.getByRole('dialog', { name: 'Note on light C' }).waitFor()
    await page.keyboard.type('Not this one')
    await page.keyboard.press('Escape')
    await page.getByRole('dialog').waitFor({ state: 'detached' })
    await page.keyboard.press('Enter')
    await page.keyboard.type('By key on C')
    await page.keyboard.press('Enter')
    await page.keyboard.press('Escape')
    await page.locator('.pencil-surface').first().waitFor({ state: 'detached' })
    expect(await ines.numbers('C')).toBe(power)

    await page.keyboard.press('Shift+N')
    const focused = () => page.evaluate(() => document.activeElement?.textContent ?? '')
    await page.waitForFunction(() => document.activeElement?.classList.contains('note-row'))
    expect(await focused()).toContain('By key on C')
    await page.keyboard.press('ArrowDown')
    expect(await focused()).toContain('By key on the Frame')
    await page.keyboard.press('Enter')
    await page.waitForFunction(() => document.querySelector('.thread-card')?.contains(document.activeElement) === true)
    await page.keyboard.press('ArrowLeft')
    await sheet(page).getByText('By key on C').waitFor()
    await page.keyboard.press('Escape')
    await page.keyboard.press('Escape')
    await sheet(page).waitFor({ state: 'detached' })
    expect(ines.troubles).toEqual([])
    await context.close()
  })
})

describe('a note about a colour', () => {
  const job = demoJob()

  it('asks to be re-read once the colour has visibly changed, and no longer once it is back', async () => {
    const context = await job.newContext()
    const ines = await BoardPage.join(context, job.server.links.photographer, 'Ines')
    const { page } = ines
    await drawn(page)
    await takePencil(page)
    await page.locator('.ladder [data-area="lips"]').focus()
    await page.keyboard.press('Enter')
    await write(page, 'Exactly this red')
    const nose = await middleOf(page, '.area-marks [data-area="nose"]')
    await page.mouse.click(nose.x, nose.y)
    await write(page, 'And this skin')
    await takePencil(page)
    await notesButton(page).click()
    const changed = (text: string) => row(page, text).getByText('Its colour has changed since')
    await page.waitForTimeout(900)
    expect(await changed('Exactly this red').count() + await changed('And this skin').count()).toBe(0)
    for (const letter of ['A', 'C']) await ines.stepPower(letter, 10)
    await changed('Exactly this red').waitFor()
    await changed('And this skin').waitFor()
    for (const letter of ['A', 'C']) await ines.stepPower(letter, -10)
    await changed('Exactly this red').waitFor({ state: 'detached' })
    await changed('And this skin').waitFor({ state: 'detached' })
    expect(ines.troubles).toEqual([])
    await context.close()
  })
})

describe('notes on a phone', () => {
  const job = demoJob()

  it('with one thumb: pinned, listed and read, with targets a thumb can meet', async () => {
    const context = await job.newContext(PHONE)
    const page = await context.newPage()
    await page.goto(job.server.links.client)
    await page.getByLabel('Your name').fill('Pell')
    await page.getByRole('button', { name: 'Come in' }).tap()
    await page.getByRole('button', { name: 'Show the numbers' }).tap()
    await drawn(page)
    await page.getByRole('button', { name: 'Pencil', exact: true }).tap()
    const cheek = await middleOf(page, CHEEK)
    await page.touchscreen.tap(cheek.x, cheek.y)
    await page.getByRole('dialog', { name: 'Note on camera-left cheek' }).getByRole('textbox').fill('Softer here')
    await page.getByRole('button', { name: 'Pin it' }).tap()
    await page.getByRole('button', { name: 'Pencil', exact: true }).tap()
    await page.locator('.frame-marks .note-mark').tap()
    await sheet(page).getByText('Softer here').waitFor()
    const small = await page.locator('.note-mark:is(button), .pencil-toggle, .thread-card button, .notes-sheet-line button').evaluateAll((buttons) => buttons
      .map((button) => button.getBoundingClientRect()).filter(({ width, height }) => Math.min(width, height) < 44).map(({ width, height }) => `${width} x ${height}`))
    expect(small).toEqual([])
    expect(await axeFaults(page, '#notes-sheet')).toEqual([])
    await page.getByRole('button', { name: 'Put away' }).tap()
    await page.getByRole('button', { name: 'Job', exact: true }).tap()
    await notesButton(page).tap()
    await row(page, 'Softer here').waitFor()
    await context.close()
  })
})
